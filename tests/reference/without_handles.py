"""Small drawings of a wall and a window in which nothing, or only something, has a handle.

usage: without_handles.py FOLDER
"""

import pathlib
import sys

folder = pathlib.Path(sys.argv[1])


def pairs(*values):
    return "".join(f"{code:>3}\n{value}\n" for code, value in values)


def section(name, body=""):
    return pairs((0, "SECTION"), (2, name)) + body + pairs((0, "ENDSEC"))


def ring(layer, x0, y0, x1, y1):
    out = pairs((0, "POLYLINE"), (8, layer), (66, 1), (10, 0.0), (20, 0.0), (30, 0.0), (70, 1))
    for x, y in [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]:
        out += pairs((0, "VERTEX"), (8, layer), (10, float(x)), (20, float(y)), (30, 0.0))
    return out + pairs((0, "SEQEND"), (8, layer))


def table(name, *records):
    return pairs((0, "TABLE"), (2, name), (70, len(records))) + "".join(records) + pairs((0, "ENDTAB"))


def head(version, *more):
    return section("HEADER", pairs((9, "$ACADVER"), (1, version), *more))


entities = ring("A-WALL-OTLN", 0, 0, 240, 96) + ring("A-GLAZ", 60, 32, 96, 72)
entities += pairs((0, "TEXT"), (8, "A-ELEV-IDEN"), (10, 60.0), (20, -20.0), (40, 6.0), (1, "FRONT"))
line_types = table("LTYPE", pairs((0, "LTYPE"), (2, "CONTINUOUS"), (70, 64), (3, "Solid"), (72, 65), (73, 0), (40, 0.0)))
layers = table("LAYER", *(pairs((0, "LAYER"), (2, n), (70, 0), (62, 7), (6, "CONTINUOUS")) for n in ("0", "A-GLAZ")))
styles = table("STYLE", pairs((0, "STYLE"), (2, "STANDARD"), (70, 0), (40, 0.0), (41, 1.0), (50, 0.0), (71, 0), (42, 0.2), (3, "txt"), (4, "")))
block = pairs((0, "BLOCK"), (8, "0"), (2, "W"), (70, 0), (10, 0.0), (20, 0.0), (30, 0.0), (3, "W"))
block += pairs((0, "LINE"), (8, "0"), (10, 0.0), (20, 0.0), (11, 1.0), (21, 1.0)) + pairs((0, "ENDBLK"), (8, "0"))
insert = pairs((0, "INSERT"), (8, "0"), (2, "W"), (10, 300.0), (20, 0.0))
tables = section("TABLES", line_types + layers + styles)
plain, with_insert, end = section("ENTITIES", entities), section("ENTITIES", entities + insert), pairs((0, "EOF"))
# An export of points and lines as R12, with objects of later versions behind it.
dictionaries = "".join(pairs((0, "DICTIONARY"), (5, h)) for h in ("C", "D", "17", "1A"))
handle = pairs((5, "2A"))

drawings = {
    "entities-alone": plain + end,
    "no-end": head("AC1009") + plain,
    "no-tables": head("AC1009") + section("BLOCKS", block) + with_insert + end,
    "empty-tables": head("AC1009") + section("TABLES") + section("BLOCKS") + plain + end,
    "whole": head("AC1009") + tables + section("BLOCKS", block) + with_insert + end,
    "blocks-first": head("AC1009") + section("BLOCKS", block) + tables + with_insert + end,
    "handling-off": head("AC1009", (9, "$HANDLING"), (70, 0)) + tables + plain + end,
    "seed-alone": head("AC1009", (9, "$HANDLING"), (70, 1), (9, "$HANDSEED"), (5, "FF")) + tables + plain + end,
    "objects-behind": head("AC1009") + tables + section("BLOCKS") + plain + section("OBJECTS", dictionaries) + end,
    "one-text": head("AC1009") + tables + section("BLOCKS") + plain.replace("TEXT\n", "TEXT\n" + handle) + end,
    "one-of-many": head("AC1009") + tables + section("BLOCKS", block) + with_insert.replace("TEXT\n", "TEXT\n" + handle) + end,
    "one-layer": head("AC1009") + tables.replace("LAYER\n  2\n0\n", "LAYER\n" + handle + "  2\n0\n", 1) + plain + end,
    "older": head("AC1006") + tables + section("BLOCKS", block) + with_insert + end,
    "lines-of-windows": (head("AC1009") + tables + plain + end).replace("\n", "\r\n"),
}
for name, text in drawings.items():
    (folder / f"{name}.dxf").write_bytes(text.encode("ascii"))
print(len(drawings))
