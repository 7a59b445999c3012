"""A layout's areas by shapely: net areas, and the union of pieces against the field.

usage: areas.py LAYOUT.JSON
"""

import json
import sys

from shapely.geometry import Polygon
from shapely.ops import unary_union

layout = json.load(open(sys.argv[1]))
gap = layout["elevations"][0]["walls"][0]["courses"][0]["runs"][0]["gap"]
problems = []


def even_odd(rings):
    shape = Polygon()
    for ring in rings:
        shape = shape.symmetric_difference(Polygon(ring).buffer(0))
    return shape


for elevation in layout["elevations"]:
    for wall in elevation["walls"]:
        holes = unary_union([Polygon(o["outline"]) for o in wall["openings"]] or [Polygon()])
        outline = Polygon(wall["outline"])
        # What gets no siding: net area holds none of it.
        bare = [b for b in wall.get("bare", []) if b["by"] != "behind-roof"]
        for b in wall.get("bare", []):
            if abs(b["area"] - even_odd(b["outline"]).area / 144) > 1e-4 * b["area"] + 0.001:
                problems.append(f"{wall['id']}: bare area is off")
        unsided = unary_union([even_odd(b["outline"]) for b in bare] or [Polygon()])
        # Gross area leaves what is drawn bare and roofs out: net differs from it by openings in the
        # rest, and by what gets no siding.
        if wall["gross_area"] > outline.area / 144 + 0.01:
            problems.append(f"{wall['id']}: gross area over the outline's")
        if abs(wall["gross_area"] - wall["net_area"] - unsided.union(holes.intersection(outline)).area / 144) > 1e-4 * wall["gross_area"] + 0.01:
            problems.append(f"{wall['id']}: net area is off")
        field = even_odd(wall["field"])
        pieces = []
        for course in wall["courses"]:
            for run in course["runs"]:
                for p in run["pieces"]:
                    shape = Polygon(p["outline"], p.get("holes", []))
                    pieces += [shape] + [Polygon(r) for r in p.get("more", [])]
        laid = unary_union(pieces)
        beyond = laid.difference(field.buffer(0.01)).area
        if beyond > 0.5:
            problems.append(f"{wall['id']}: pieces reach {beyond:.2f} sq in out of the field")
        # What is not covered lies within a clearance of the field's boundary, obstacles' included.
        blocks = [Polygon(o["outline"]).buffer(0.3, join_style="mitre") for o in wall["obstacles"]]
        inner = field.buffer(-(2 ** 0.5) * (gap + 0.26), join_style="mitre").difference(unary_union(blocks or [Polygon()]))
        open_area = inner.difference(laid).area
        if open_area > 0.5:
            problems.append(f"{wall['id']}: {open_area:.2f} sq in are not covered")
print("; ".join(problems) or "ok")
