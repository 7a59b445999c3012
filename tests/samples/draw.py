#!/usr/bin/env python3
"""Draws the sample drawings with ezdxf, and writes what they hold by construction.

usage: draw.py OUTDIR            the same bytes on every run with the pinned ezdxf
"""

import json
import math
import os
import sys
from pathlib import Path

if os.environ.get("PYTHONHASHSEED") != "0":  # the library writes some objects in hash order
    os.execve(sys.executable, [sys.executable, *sys.argv], {**os.environ, "PYTHONHASHSEED": "0"})

import ezdxf
from shapely.geometry import Polygon
from shapely.ops import unary_union

import house

ezdxf.options.write_fixed_meta_data_for_testing = True

LAYERS = [  # name, color, role
    ("A-WALL-OTLN", 7), ("A-WALL-BASE", 8), ("A-GLAZ", 4), ("A-DOOR", 3), ("A-ROOF-OTLN", 1),
    ("A-ELEV-MBLK", 6), ("A-ELEV-OBST", 6), ("A-FLOR-LEVL", 2), ("C-TOPO-PROF", 34),
    ("A-WALL-CNRI", 5), ("A-WALL-IDEN", 7), ("A-ELEV-FRAM", 8), ("A-ELEV-IDEN", 7),
    ("A-ELEV-PATT", 9), ("A-ANNO-DIMS", 2), ("A-ANNO-NOTE", 7),
]


def new(version, insunits):
    # R12 dimension styles of the library hold what strict readers take for broken handles.
    doc = ezdxf.new(version, setup=False if version == "R12" else ["styles", "dimstyles"])
    doc.header["$INSUNITS"] = insunits
    doc.header["$MEASUREMENT"] = 0 if insunits in (1, 2) else 1
    for name, color in LAYERS:
        doc.layers.add(name, color=color)
    return doc


class Pen:
    """Draws in one view's own coordinates, moved to (dx, dy) and scaled to the drawing's unit."""

    def __init__(self, doc, dx=0.0, dy=0.0, unit=1.0):
        self.doc, self.msp, self.dx, self.dy, self.unit = doc, doc.modelspace(), dx, dy, unit
        self.old = doc.dxfversion == "AC1009"

    def at(self, p):
        return ((p[0] + self.dx) * self.unit, (p[1] + self.dy) * self.unit)

    def ring(self, points, layer):
        pts = [self.at(p) for p in points]
        if self.old:
            self.msp.add_polyline2d(pts, close=True, dxfattribs={"layer": layer})
        else:
            self.msp.add_lwpolyline(pts, close=True, dxfattribs={"layer": layer})

    def chain(self, points, layer):
        pts = [self.at(p) for p in points]
        if self.old:
            self.msp.add_polyline2d(pts, dxfattribs={"layer": layer})
        else:
            self.msp.add_lwpolyline(pts, dxfattribs={"layer": layer})

    def line(self, a, b, layer):
        self.msp.add_line(self.at(a), self.at(b), dxfattribs={"layer": layer})

    def text(self, s, at, height, layer):
        self.msp.add_text(s, height=height * self.unit, dxfattribs={"layer": layer, "insert": self.at(at)})

    def block(self, o):
        """The opening's block: frame, glass and bars on layer 0, so that they take the insert's layer."""
        name = o["block"]
        if name not in self.doc.blocks:
            b = self.doc.blocks.new(name)
            u, w, h = self.unit, o["w"], o["h"]
            if o.get("round"):
                spring = h - w / 2
                frame = [(0, 0, 0), (w, 0, 0), (w, spring, 1), (0, spring, 0)]
                b.add_lwpolyline([(x * u, y * u, k) for x, y, k in frame], format="xyb", close=True)
                b.add_line((0, spring * u), (w * u, spring * u))
            else:
                rings = [(0, 0, w, h), (2, 2, w - 2, h - 2)]
                for x0, y0, x1, y1 in rings:
                    pts = [(x * u, y * u) for x, y in house.box(x0, y0, x1, y1)]
                    if self.old:
                        b.add_polyline2d(pts, close=True)
                    else:
                        b.add_lwpolyline(pts, close=True)
                if o["kind"] == "window":
                    b.add_line((2 * u, h / 2 * u), ((w - 2) * u, h / 2 * u))
                elif o["kind"] == "overhead-door":
                    for k in (1, 2, 3):
                        b.add_line((2 * u, k * h / 4 * u), ((w - 2) * u, k * h / 4 * u))
                else:
                    b.add_circle(((w - 5) * u, 36 * u), 1.5 * u)
        layer = "A-GLAZ" if o["kind"] == "window" else "A-DOOR"
        self.msp.add_blockref(name, self.at((o["x"], o["sill"])), dxfattribs={"layer": layer})

    def dimension(self, p1, p2, base, angle=0):
        style = {"dimtxt": 6 * self.unit, "dimasz": 4 * self.unit, "dimexe": 3 * self.unit, "dimexo": 3 * self.unit}
        dim = self.msp.add_linear_dim(base=self.at(base), p1=self.at(p1), p2=self.at(p2), angle=angle,
                                      override=style, dxfattribs={"layer": "A-ANNO-DIMS"})
        dim.render()

    def texture(self, points, spacing):
        """Drawn siding: a level line family at an artist's spacing, never the course layout."""
        hatch = self.msp.add_hatch(color=9, dxfattribs={"layer": "A-ELEV-PATT"})
        hatch.set_pattern_fill("SIDING-LOOK", definition=[[0.0, self.at((0, 0)), (0.0, spacing * self.unit), []]])
        hatch.paths.add_polyline_path([self.at(p) for p in points], is_closed=True)


def outline(o):
    """The opening's outline in its elevation, arcs in 256 chords."""
    x, s, w, h = o["x"], o["sill"], o["w"], o["h"]
    if not o.get("round"):
        return house.box(x, s, x + w, s + h)
    spring, r = s + h - w / 2, w / 2
    arc = [(x + r + r * math.cos(math.pi * i / 256), spring + r * math.sin(math.pi * i / 256)) for i in range(257)]
    return [(x, s), (x + w, s)] + arc


def known(e):
    """What an elevation holds by construction; areas by shapely, square feet."""
    x0 = min(x for w in e["walls"] for x, _ in w)
    off = [Polygon(p) for p in e.get("bare", []) + e.get("roofs", [])]
    holes = [Polygon(outline(o)) for o in e.get("openings", [])]
    walls = []
    for w in sorted(e["walls"], key=lambda w: min(x for x, _ in w)):
        face = Polygon(w).difference(unary_union(off)) if off else Polygon(w)
        net = face.difference(unary_union(holes)) if holes else face
        walls.append({"outline_area": Polygon(w).area / 144, "gross_area": face.area / 144, "net_area": net.area / 144})
    openings = [{"kind": o["kind"], "left": o["x"] - x0, "right": o["x"] + o["w"] - x0, "sill": o["sill"], "head": o["sill"] + o["h"]}
                for o in e.get("openings", [])]
    openings.sort(key=lambda o: (o["left"], o["sill"]))
    return {"name": e["title"], "walls": walls, "openings": openings,
            "pitches": e.get("pitches", []), "mounting_blocks": len(e.get("mounting_blocks", [])), "obstacles": len(e.get("obstacles", []))}


def view(pen, e, frame=True, title=True, level=True):
    xs = [x for w in e["walls"] for x, _ in w]
    ys = [y for w in e["walls"] for _, y in w]
    left, right, top = min(xs), max(xs), max(ys)
    for w in e["walls"]:
        pen.ring(w, "A-WALL-OTLN")
    for p in e.get("bare", []):
        pen.ring(p, "A-WALL-BASE")
    for p in e.get("roofs", []):
        pen.ring(p, "A-ROOF-OTLN")
    if "main_roof" in e and not e.get("no_main_roof"):
        pen.ring(e["main_roof"], "A-ROOF-OTLN")
    for o in e.get("openings", []):
        pen.block(o)
    for p in e.get("mounting_blocks", []):
        pen.ring(p, "A-ELEV-MBLK")
    for x, y, r in e.get("obstacles", []):
        pen.msp.add_circle(pen.at((x, y)), r * pen.unit, dxfattribs={"layer": "A-ELEV-OBST"})
    for x, y0, y1 in e.get("inside", []):
        pen.line((x, y0), (x, y1), "A-WALL-CNRI")
    for tag, x, y in e.get("tags", []):
        pen.text(tag, (x, y), 6, "A-WALL-IDEN")
    if e.get("grade"):
        pen.chain(e["grade"], "C-TOPO-PROF")
    if level:
        pen.line((left - 30, 0), (right + 30, 0), "A-FLOR-LEVL")
    if frame:
        pen.ring(house.box(left - 60, -110, right + 60, top + 60), "A-ELEV-FRAM")
    if title:
        pen.text(e["title"], (left + (right - left) / 2 - 60, -92), 12, "A-ELEV-IDEN")


def write(doc, path):
    doc.saveas(path)


def cottage(out):
    doc = new("R2010", 1)
    dx = 0.0
    for e in house.ELEVATIONS:
        pen = Pen(doc, dx, 600.0)
        view(pen, e)
        width = max(x for w in e["walls"] for x, _ in w)
        pen.dimension((0, house.BOTTOM), (width, house.BOTTOM), (0, -60))
        pen.dimension((0, 0), (0, house.SOFFIT), (-40, 0), angle=90)
        pen.text("FIRST FLOOR", (width + 4, 3), 5, "A-ANNO-NOTE")
        dx += width + 240
    Pen(doc, 0, 600).texture(house.box(0, 28, 102, 108), 6.0)
    write(doc, out / "curlew-cottage.dxf")
    return [known(e) for e in house.ELEVATIONS]


def single(out, stem, e, version="R2010", insunits=1, unit=1.0, **how):
    doc = new(version, insunits)
    view(Pen(doc, 100, 50, unit), e, **how)
    write(doc, out / f"{stem}.dxf")
    return [known(e)]


def main(out):
    out = Path(out)
    out.mkdir(parents=True, exist_ok=True)
    everything = {"_about": "what each sample holds by construction: areas in square feet by shapely, lengths in inches; "
                            "x from the leftmost wall point, y from the level line (else the lowest wall point)"}
    everything["curlew-cottage"] = cottage(out)
    wall = {"title": "elevation", "walls": [house.box(0, 0, 300, 96)]}
    everything["one-wall"] = single(out, "one-wall", wall, frame=False, title=False, level=False)
    gable = {"title": "GABLE", "walls": [[(0, 0), (288, 0), (144, 48)]], "pitches": [4.0, 4.0]}
    everything["one-gable"] = single(out, "one-gable", gable)
    win = {"title": "WINDOW WALL", "walls": [house.box(0, 0, 240, 104)], "openings": [window_wy11()]}
    everything["one-window"] = single(out, "one-window", win)
    metric = {"title": "WEST ELEVATION", "walls": [[(0, 0), (330, 0), (330, 100), (165, 182.5), (0, 100)]],
              "openings": [house.window("3040", 60, 84), house.door("3068", 200, 0)], "pitches": [6.0, 6.0]}
    everything["metric"] = single(out, "metric", metric, insunits=4, unit=25.4)
    old = {"title": "EAST ELEVATION", "walls": [house.box(0, 0, 360, 108)], "openings": [house.window("4040", 120, 84)]}
    everything["r12"] = single(out, "r12", old, version="R12", insunits=1, frame=False)
    late = {"title": "elevation", "walls": [house.box(0, 0, 336, 96)], "openings": [house.window("3050", 96, 84)],
            "mounting_blocks": [house.box(200, 60, 206, 68)], "obstacles": [(250, 40, 2.0)]}
    everything["r2018"] = single(out, "r2018", late, version="R2018", frame=False, title=False)
    (out / "expected.json").write_text(json.dumps(everything, indent=1, sort_keys=True) + "\n")


def window_wy11():
    """Sill at 36, head at 84 above the start (the course-datum example)."""
    return house.window("3040", 100, 84)


if __name__ == "__main__":
    main(sys.argv[1])
