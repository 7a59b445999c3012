"""What ezdxf finds in other people's drawings.  usage: corpus.py DRAWING...

Prints, by file name: model space counted by type and layer, for the types that are read; or why
ezdxf refuses the file; and the areas of hatches whose pattern is one level family of whole lines,
by shapely, in square drawing units.
"""

import json
import sys
from collections import Counter
from pathlib import Path

import ezdxf
from ezdxf import path, recover
from ezdxf.lldxf.encoding import decode_dxf_unicode
from shapely.geometry import Polygon

READ = set(
    "LINE LWPOLYLINE POLYLINE ARC CIRCLE ELLIPSE SPLINE INSERT HATCH SOLID TRACE 3DFACE TEXT MTEXT DIMENSION POINT".split()
)


def loaded(file):
    try:
        return ezdxf.readfile(file), False
    except (ezdxf.DXFError, UnicodeError, ValueError):
        return recover.readfile(file)[0], True


def level(hatch):
    lines = hatch.pattern.lines if hatch.pattern else []
    return len(lines) == 1 and lines[0].angle % 180 == 0 and not lines[0].dash_length_items


def area(hatch):
    shape = Polygon()
    for loop in path.from_hatch(hatch):
        ring = [(v.x, v.y) for v in loop.flattening(0.001)]
        if len(ring) > 2:
            shape = shape.symmetric_difference(Polygon(ring).buffer(0))
    return shape.area


def read(e):
    """Whether the program means to read it; what it leaves out, and why."""
    kind = e.dxftype()
    if kind == "DIMENSION":
        # Radii and angles state no length of a wall.
        return e.dimtype in (0, 1)
    if kind == "POLYLINE":
        # Meshes are surfaces, not lines.
        return not (e.is_poly_face_mesh or e.is_polygon_mesh)
    if kind == "INSERT":
        # An insertion of nothing but attributes is a text.
        block = e.block()
        return block is None or not e.attribs or any(x.dxftype() != "ATTDEF" for x in block)
    if kind == "CIRCLE":
        # Without a radius there is no circle.
        return e.dxf.radius > 0
    return kind in READ


def layer(name):
    # Names of old files escape letters beyond their code page; ezdxf leaves them so.
    return decode_dxf_unicode(name).upper()


out = {}
for file in sys.argv[1:]:
    name = Path(file).name
    try:
        doc, mended = loaded(file)
    except Exception as e:  # whatever it is, the reader refused the file
        out[name] = {"refused": f"{type(e).__name__}: {e}"}
        continue
    space = doc.modelspace()
    count = Counter()
    for e in space:
        if read(e):
            count[f"{e.dxftype()} {layer(e.dxf.get('layer', '0'))}"] += 1
        for a in getattr(e, "attribs", []):
            # A text on layer 0 takes its insert's layer.
            on = a.dxf.get("layer", "0")
            on = e.dxf.get("layer", "0") if on == "0" else on
            count[f"ATTRIB {layer(on)}"] += 1
    hatches = [area(h) for h in space.query("HATCH") if not h.dxf.solid_fill and level(h)]
    out[name] = {"mended": mended, "counts": count, "level_hatches": sorted(hatches)}
print(json.dumps(out))
