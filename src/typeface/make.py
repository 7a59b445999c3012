"""Cuts and joins the faces of the sheets. See README.md beside this file.

    python make.py FOLDER

FOLDER holds the fonts as they were published; both faces are written beside this file.
"""

import io
import pathlib
import sys

from fontTools import merge, subset
from fontTools.pens.transformPen import TransformPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont

HERE = pathlib.Path(__file__).parent
NAME = "Lapwright Sans"
# Height of capitals in the font's own unit, 1/1000 of its size.
CAPITALS = 714

# What shapes letters; look-alikes, small capitals and old figures are left out.
FEATURES = ["ccmp", "mark", "mkmk", "kern", "isol", "init", "medi", "fina", "rlig"]
HEIGHTS = {
    "hhea": ["ascent", "descent", "lineGap"],
    "OS/2": ["sTypoAscender", "sTypoDescender", "sTypoLineGap", "usWinAscent", "usWinDescent",
             "sxHeight", "sCapHeight", "xAvgCharWidth"],
}


def span(first, last):
    return range(first, last + 1)


# Each source with what is taken of it, and what the bold face takes it from. A letter is taken from
# the first that has it.
PARTS = [
    # Latin with all that Vietnamese needs, phonetics, combining marks, Greek with its old accents,
    # Cyrillic, punctuation, currency, letterlike signs, fractions, superscripts.
    ("NotoSans-{}", [
        span(0x20, 0x52F), span(0x1AB0, 0x1AFF), span(0x1C80, 0x1C8F), span(0x1D00, 0x218F),
        span(0x2C60, 0x2C7F), span(0xA640, 0xA69F), span(0xA720, 0xA7FF), span(0xAB30, 0xAB6F),
        span(0xFB00, 0xFB06), [0x25CC, 0xFFFD],
    ]),
    ("NotoSansArmenian-{}", [span(0x530, 0x58F), span(0xFB13, 0xFB17)]),
    ("NotoSansGeorgian-{}", [span(0x10A0, 0x10FF), span(0x1C90, 0x1CBF)]),
    ("NotoSansHebrew-{}", [span(0x590, 0x5FF), span(0xFB1D, 0xFB4F)]),
    ("NotoSansArabic-{}", [span(0x600, 0x6FF)]),
    # Arrows and signs of mathematics: these have one weight.
    ("NotoSansMath-Regular", [
        span(0x2190, 0x22FF), span(0x2300, 0x2335), span(0x27C0, 0x27FF), span(0x2900, 0x297F),
        [0x2A7D, 0x2A7E],
    ]),
    ("NotoSansSymbols-{}", [span(0x2150, 0x21FF), span(0x2300, 0x23FF), span(0x2460, 0x24FF)]),
    ("NotoSansSymbols2-Regular", [
        span(0x2190, 0x21FF), span(0x2300, 0x23FF), span(0x25A0, 0x25FF), span(0x2605, 0x2606),
        span(0x2610, 0x2612), span(0x2700, 0x27BF), span(0x2B00, 0x2BFF),
    ]),
]


def part(path, letters):
    """The letters of one source, without hints."""
    options = subset.Options(
        hinting=False, layout_features=FEATURES, notdef_outline=True, glyph_names=False,
        drop_tables=["DSIG", "FFTM", "MATH", "gasp"],
    )
    font = TTFont(path)
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=letters)
    cutter.subset(font)
    held = io.BytesIO()
    font.save(held)
    held.seek(0)
    return held


def box_with_question_mark(font):
    """What stands for a letter the face lacks: a mark that cannot be taken for one."""
    glyphs, cmap = font.getGlyphSet(), font.getBestCmap()
    pen = TTGlyphPen(glyphs)
    left, right, low, high, line = 60, 640, -60, 774, 60
    for ring in [
        [(left, low), (left, high), (right, high), (right, low)],
        [(left + line, low + line), (right - line, low + line), (right - line, high - line),
         (left + line, high - line)],
    ]:
        pen.moveTo(ring[0])
        for point in ring[1:]:
            pen.lineTo(point)
        pen.closePath()
    mark = cmap[ord("?")]
    width = font["hmtx"][mark][0]
    small = 0.78
    aside, up = (left + right - small * width) / 2, CAPITALS * (1 - small) / 2
    glyphs[mark].draw(TransformPen(pen, (small, 0, 0, small, aside, up)))
    name = cmap[0xFFFD]
    font["glyf"][name] = pen.glyph()
    font["hmtx"][name] = (right + left, left)


def face(folder, weight):
    """One face of the sheets."""
    taken, parts = set(), []
    for stem, spans in PARTS:
        path = folder / (stem.format(weight) + ".ttf")
        has = set(TTFont(path).getBestCmap())
        letters = {u for s in spans for u in s} & has - taken
        taken |= letters
        parts.append(part(path, letters))
    font = merge.Merger(merge.Options(drop_tables=["DSIG"])).merge(parts)
    box_with_question_mark(font)
    names = font["name"]
    names.names = [n for n in names.names if n.nameID in (0, 1, 2, 3, 4, 5, 6)]
    for record in names.names:
        full = NAME if weight == "Regular" else f"{NAME} {weight}"
        text = {1: NAME, 2: weight, 3: f"{NAME} {weight}", 4: full,
                6: f"{NAME.replace(' ', '')}-{weight}"}.get(record.nameID)
        if text:
            record.string = text
    # Heights are those of the first source: the merger takes the greatest of all.
    first = TTFont(folder / (PARTS[0][0].format(weight) + ".ttf"))
    for table, fields in HEIGHTS.items():
        for field in fields:
            setattr(font[table], field, getattr(first[table], field))
    # The same bytes whenever it is made.
    font["head"].created = first["head"].created
    font["head"].modified = first["head"].modified
    font.recalcTimestamp = False
    font["post"].formatType = 3.0
    font.save(HERE / f"sans-{weight}.ttf")
    print(weight, len(font.getBestCmap()), "letters", font["maxp"].numGlyphs, "glyphs")


if __name__ == "__main__":
    for each in ("Regular", "Bold"):
        face(pathlib.Path(sys.argv[1]), each)
