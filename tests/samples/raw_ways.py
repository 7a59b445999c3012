"""Drawings without wall outlines, as offices send them: siding hatches with titles on a sheet, and
loose lines with drawn courses and no titles. Everything in them is invented here.

    python raw_ways.py OUTDIR

writes hatched.dxf, lines_sjis.dxf, metres.dxf and truth.json (areas in square feet by shapely).
"""

import json
import sys
from pathlib import Path

import ezdxf
from ezdxf import units
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

SQFT = 144.0


def face(width, height, gable, openings):
    """A wall with an optional gable, and its openings less their area."""
    ring = [(0, 0), (width, 0), (width, height)]
    if gable:
        ring.append((width / 2, height + gable))
    ring.append((0, height))
    wall = Polygon(ring)
    holes = unary_union([box(x - 3.5, y - (0 if y == 0 else 3.5), x + w + 3.5, y + h + 3.5) for x, y, w, h in openings])
    return ring, wall, wall.difference(holes)


SIDES = {
    "NORTH": (360.0, 108.0, 0.0, [(40, 36, 36, 48), (160, 0, 36, 80), (260, 36, 48, 48)]),
    "EAST": (240.0, 108.0, 60.0, [(60, 36, 36, 48), (150, 36, 36, 48)]),
    "SOUTH": (360.0, 108.0, 0.0, [(30, 0, 72, 80), (180, 40, 60, 36), (290, 40, 24, 36)]),
    "WEST": (240.0, 108.0, 60.0, [(100, 36, 40, 48)]),
}


def hatched(path):
    """Four faces: siding as hatches with holes, notches or keyhole slits; windows as blocks; titles
    in paper space under their windows."""
    doc = ezdxf.new("R2010", setup=True)
    doc.units = units.IN
    msp = doc.modelspace()
    for name in ("A-WALL-PATT", "A-GLAZ", "A-DOOR", "A-ANNO-TEXT"):
        doc.layers.add(name)
    sheet = doc.layout("Layout1")
    truth = {}
    for i, (name, (width, height, gable, openings)) in enumerate(SIDES.items()):
        ox, oy = 700.0 * i, 200.0
        ring, wall, net = face(width, height, gable, openings)
        hatch = msp.add_hatch(dxfattribs={"layer": "A-WALL-PATT"})
        hatch.set_pattern_fill("LAPS", definition=[(0.0, (0, 0), (0.0, 6.0), [])], scale=1.0)
        keyhole = name == "EAST"
        outer = [(x + ox, y + oy) for x, y in net.exterior.coords[:-1]]
        if keyhole:
            hole = list(net.interiors[0].coords[:-1])
            hx, hy = min(hole)
            start = hole.index((hx, hy))
            hole = hole[start:] + hole[:start] + [hole[start]]
            outer = [(ox, oy), (ox + hx, oy)] + [(x + ox, y + oy) for x, y in hole] + [(ox + hx, oy)] + [
                (x + ox, y + oy) for x, y in ring[1:]]
            inner = net.interiors[1:]
        else:
            inner = net.interiors
        hatch.paths.add_polyline_path(outer, is_closed=True, flags=1)
        for r in inner:
            hatch.paths.add_polyline_path([(x + ox, y + oy) for x, y in r.coords[:-1]], is_closed=True, flags=16)
        for k, (x, y, w, h) in enumerate(openings):
            block = doc.blocks.new(f"{name}_{k}_OPENING")
            block.add_lwpolyline([(0, 0), (w, 0), (w, h), (0, h)], close=True)
            block.add_lwpolyline([(2, 2), (w - 2, 2), (w - 2, h - 2), (2, h - 2)], close=True)
            layer = "A-DOOR" if y == 0 else "A-GLAZ"
            msp.add_blockref(block.name, (x + ox, y + oy), dxfattribs={"layer": layer})
        # Ground, roof edge and corner boards: lines that are no wall.
        msp.add_line((ox - 60, oy), (ox + width + 60, oy), dxfattribs={"layer": "0"})
        cx, cy = 4.0 + 6.0 * i, 5.0
        view = sheet.add_viewport((cx, cy), (5.5, 4.0), (ox + width / 2, oy + 60), 4.0 * 96)
        view.dxf.status = 2
        sheet.add_text(f"{name} ELEVATION", height=0.25, dxfattribs={"insert": (cx - 1.5, cy - 2.4)})
        sheet.add_text("SCALE 1:96", height=0.1, dxfattribs={"insert": (cx - 1.5, cy - 2.7)})
        truth[f"{name} ELEVATION"] = {
            "net": net.area / SQFT, "gross": wall.area / SQFT, "openings": len(openings)}
    # A plan below, with floor boards hatched level: to be left alone by its title.
    for k in range(4):
        floor = msp.add_hatch(dxfattribs={"layer": "0"})
        floor.set_pattern_fill("BOARDS", definition=[(0.0, (0, 0), (0.0, 5.0), [])])
        floor.paths.add_polyline_path([(200 * k, -900), (200 * k + 180, -900), (200 * k + 180, -700), (200 * k, -700)])
    msp.add_text("FLOOR PLAN", height=12, dxfattribs={"insert": (300, -960), "layer": "A-ANNO-TEXT"})
    for k in range(12):
        msp.add_text("oak boards", height=4, dxfattribs={"insert": (40 * k, -800), "layer": "A-ANNO-TEXT"})
    doc.saveas(path)
    return truth


def loose(path):
    """Four fronts in a row by loose lines on layers with Japanese names, R12 in Shift-JIS, no titles."""
    doc = ezdxf.new("R12")
    doc.encoding = "cp932"
    doc.header["$DWGCODEPAGE"] = "ANSI_932"
    wall, glass, other = "外壁", "建具", "その他"
    for name in (wall, glass, other):
        doc.layers.add(name)
    msp = doc.modelspace()
    truth = []
    for i, (width, height, gable, openings) in enumerate(SIDES.values()):
        ox, oy = i * 12000.0, 0.0
        mm = 25.0
        W, H = width * mm, height * mm
        place = [(x * mm, y * mm, w * mm, h * mm) for x, y, w, h in openings]
        lines = [((0, 0), (W, 0)), ((0, 0), (0, H)), ((W, H), (W, 0))]
        lines += [((-600, H - 600 * gable / (width / 2)), (W / 2, H + gable * mm)),
                  ((W + 600, H - 600 * gable / (width / 2)), (W / 2, H + gable * mm))] if gable else [((-300, H), (W + 300, H))]
        for a, b in lines:
            msp.add_line((a[0] + ox, a[1] + oy), (b[0] + ox, b[1] + oy), dxfattribs={"layer": wall})
        for x, y, w, h in place:
            ring = [(x, y), (x + w, y), (x + w, y + h), (x, y + h), (x, y)]
            for a, b in zip(ring, ring[1:]):
                msp.add_line((a[0] + ox, a[1] + oy), (b[0] + ox, b[1] + oy), dxfattribs={"layer": glass})
        ring = [(0, 0), (W, 0), (W, H)] + ([(W / 2, H + gable * mm)] if gable else []) + [(0, H)]
        area = Polygon(ring)
        net = area.difference(unary_union([box(x, y, x + w, y + h) for x, y, w, h in place]))
        truth.append({"net": net.area / 25.4**2 / SQFT, "gross": area.area / 25.4**2 / SQFT, "openings": len(place)})
    doc.saveas(path, encoding="cp932")
    return truth


def metres(path):
    """Drawn in metres under a header that says inches."""
    doc = ezdxf.new("R2004")
    doc.units = units.IN
    msp = doc.modelspace()
    msp.add_lwpolyline([(0, 0), (9.2, 0), (9.2, 2.7), (0, 2.7)], close=True, dxfattribs={"layer": "A-WALL-OTLN"})
    msp.add_lwpolyline([(4, 0), (4.9, 0), (4.9, 2.05), (4, 2.05)], close=True, dxfattribs={"layer": "A-DOOR"})
    doc.saveas(path)


def main():
    out = Path(sys.argv[1])
    out.mkdir(parents=True, exist_ok=True)
    truth = {"hatched": hatched(out / "hatched.dxf"), "lines_sjis": loose(out / "lines_sjis.dxf")}
    metres(out / "metres.dxf")
    (out / "truth.json").write_text(json.dumps(truth, indent=1, ensure_ascii=False))


main()
