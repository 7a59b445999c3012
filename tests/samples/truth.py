"""What a reader must find in a design, worked out with shapely 2.x from the design alone."""

from __future__ import annotations

import math

from shapely.geometry import LineString, Polygon
from shapely.geometry.polygon import orient
from shapely.ops import unary_union

from design import Elevation, Obstacle, Opening, Ring, Sample

ARC_STEPS = 4096
"""Chords in a half circle: the area error is under 4e-7 of the half circle's."""

SQUARE_FOOT = 144.0


def ring_of(opening: Opening) -> Ring:
    """The opening's outline with its round top as chords."""
    o = opening
    if not o.round_top:
        return [(o.left, o.sill), (o.right, o.sill), (o.right, o.head), (o.left, o.head)]
    radius = o.width / 2
    cx, spring = o.left + radius, o.head - radius
    arc = [
        (cx + radius * math.cos(math.pi * k / ARC_STEPS), spring + radius * math.sin(math.pi * k / ARC_STEPS))
        for k in range(ARC_STEPS + 1)
    ]
    return [(o.left, o.sill), (o.right, o.sill)] + arc


def box_of(obstacle: Obstacle) -> tuple[float, float, float, float]:
    """Left, bottom, right, top."""
    if obstacle.circle:
        x, y, r = obstacle.circle
        return (x - r, y - r, x + r, y + r)
    xs, ys = zip(*obstacle.outline)
    return (min(xs), min(ys), max(xs), max(ys))


def parts(shape) -> list[Polygon]:
    """The polygons of a shape, left to right, then bottom to top."""
    found = [shape] if shape.geom_type == "Polygon" else list(getattr(shape, "geoms", []))
    found = [p for p in found if p.geom_type == "Polygon" and p.area > 1e-6]
    return sorted(found, key=lambda p: (round(p.bounds[0], 6), round(p.bounds[1], 6)))


def face_of(elevation: Elevation, wall: Ring):
    """The wall less bare areas and the roofs that hide it."""
    away = [Polygon(b) for b in elevation.bare]
    away += [Polygon(r.outline) for r in elevation.roofs if r.covers]
    return Polygon(wall).difference(unary_union(away)) if away else Polygon(wall)


def sides(shape):
    """Sides of a shape's polygons with the inside on the left hand."""
    for polygon in parts(shape):
        polygon = orient(polygon)
        for ring in [polygon.exterior, *polygon.interiors]:
            points = list(ring.coords)
            yield from zip(points, points[1:])


def lies_on(side, ring: Ring) -> bool:
    edge = Polygon(ring).exterior
    return edge.distance(LineString(side).interpolate(0.5, normalized=True)) < 1e-6


def rakes(wall: Ring) -> list[dict]:
    """Sloped tops of a wall, right to left as a counter-clockwise ring has them."""
    found = []
    for a, b in sides(Polygon(wall)):
        dx, dy = b[0] - a[0], b[1] - a[1]
        if dx < -1e-9 and abs(dy) > 1e-9:
            found.append({"from": list(a), "to": list(b), "pitch": round(12 * abs(dy / dx), 9)})
    return found


def lower_roofs(elevation: Elevation, wall: Ring, face) -> list[dict]:
    """Sides of a wall's faces that lie on a roof, and which side of the roof the siding is. A roof
    that only touches the wall's outline from outside hides nothing of it."""
    hides = [r.outline for r in elevation.roofs if r.covers]
    covering = [r for r in hides if Polygon(r).intersection(Polygon(wall)).area > 1e-6]
    found = []
    for a, b in sides(face):
        if not any(lies_on((a, b), roof) for roof in covering):
            continue
        dx, dy = b[0] - a[0], b[1] - a[1]
        where = "beside" if abs(dx) < 1e-9 else "above" if dx > 0 else "below"
        pitch = None if abs(dx) < 1e-9 else round(12 * abs(dy / dx), 9)
        found.append({"siding": where, "from": list(a), "to": list(b), "pitch": pitch})
    return found


def starter(elevation: Elevation, wall: Ring, net) -> dict:
    """Level bottoms that siding starts from: on the wall's own base, and on a bare area's top."""
    base = bare_top = 0.0
    for a, b in sides(net):
        level = abs(b[1] - a[1]) < 1e-9 and b[0] > a[0]
        if not level:
            continue
        if any(lies_on((a, b), ring) for ring in elevation.bare):
            bare_top += b[0] - a[0]
        elif lies_on((a, b), wall):
            base += b[0] - a[0]
    return {"base": round(base, 6), "bare_top": round(bare_top, 6)}


def upright_span(face, x: float) -> tuple[float, float] | None:
    """Lowest and highest point of a wall's faces along an upright line; None where stone or a roof
    hides all of it."""
    ys = [y for a, b in sides(face) if abs(a[0] - x) < 1e-6 and abs(b[0] - x) < 1e-6 for y in (a[1], b[1])]
    return (min(ys), max(ys)) if ys else None


def opening_truth(opening: Opening, face) -> dict:
    in_siding = parts(face.intersection(Polygon(ring_of(opening))))
    return {
        "kind": opening.kind,
        "left": opening.left,
        "right": opening.right,
        "sill": opening.sill,
        "head": opening.head,
        "round_top": opening.round_top,
        "area": round(Polygon(ring_of(opening)).area / SQUARE_FOOT, 6),
        "in_siding": [[round(v, 6) for v in part.bounds] for part in in_siding],
    }


def wall_truth(elevation: Elevation, index: int) -> dict:
    wall = elevation.walls[index]
    face = face_of(elevation, wall)
    outline = Polygon(wall)
    inside = [o for o in elevation.openings if outline.covers(Polygon(ring_of(o)))]
    net = face.difference(unary_union([Polygon(ring_of(o)) for o in inside])) if inside else face
    xs, ys = zip(*wall)
    obstacles = []
    for o in elevation.obstacles:
        left, bottom, right, top = box_of(o)
        if outline.covers(Polygon([(left, bottom), (right, bottom), (right, top), (left, top)])):
            obstacles.append(
                {"kind": o.kind, "mounting_block": o.mounting_block, "box": [left, bottom, right, top]}
            )
    corners = []
    for c in elevation.corners:
        span = upright_span(face, c.x) if c.wall == index else None
        if span:
            seen = {"tag": c.tag, "inside": c.inside, "x": c.x, "bottom": span[0], "top": span[1]}
            corners.append(seen)
    return {
        "left": min(xs),
        "right": max(xs),
        "bottom": min(ys),
        "top": max(ys),
        "outline": [list(p) for p in wall],
        "outline_area": round(outline.area / SQUARE_FOOT, 6),
        "gross_area": round(face.area / SQUARE_FOOT, 6),
        "net_area": round(net.area / SQUARE_FOOT, 6),
        "faces": len(parts(face)),
        "openings": [opening_truth(o, face) for o in sorted(inside, key=lambda o: (o.left, o.sill))],
        "obstacles": sorted(obstacles, key=lambda o: o["box"]),
        "rakes": rakes(wall),
        "lower_roofs": lower_roofs(elevation, wall, face),
        "corners": corners,
        "starter": starter(elevation, wall, net),
    }


def elevation_truth(elevation: Elevation) -> dict:
    order = sorted(range(len(elevation.walls)), key=lambda i: min(elevation.walls[i]))
    walls = [wall_truth(elevation, i) for i in order]
    for what in ("openings", "obstacles"):
        found = sum(len(w[what]) for w in walls)
        assert found == len(getattr(elevation, what)), f"{elevation.title}: {what} outside every wall"
    return {
        "name": elevation.title,
        "framed": elevation.frame is not None,
        "level_drawn": elevation.level is not None,
        "origin": list(elevation.origin),
        "walls": walls,
        "grade": [list(p) for p in elevation.grade],
        "starter": {
            key: round(sum(w["starter"][key] for w in walls), 6) for key in ("base", "bare_top")
        },
    }


def sample_truth(sample: Sample) -> dict:
    elevations = [elevation_truth(e) for e in sample.elevations]
    walls = [w for e in elevations for w in e["walls"]]
    return {
        "about": sample.about,
        "version": sample.version,
        "unit": sample.unit,
        "gross_area": round(sum(w["gross_area"] for w in walls), 6),
        "net_area": round(sum(w["net_area"] for w in walls), 6),
        "openings": sum(len(w["openings"]) for w in walls),
        "starter": {
            key: round(sum(e["starter"][key] for e in elevations), 6) for key in ("base", "bare_top")
        },
        "elevations": elevations,
    }


def assert_corners_meet(stem: str, truth: dict) -> None:
    """A corner is seen twice and has one height: a design that breaks this is no house."""
    tags: dict[str, list] = {}
    for e in truth["elevations"]:
        for w in e["walls"]:
            for c in w["corners"]:
                tags.setdefault(c["tag"], []).append((c["inside"], c["bottom"], c["top"]))
    for tag, seen in tags.items():
        assert len(set(seen)) == 1 and len(seen) == 2, f"{stem}: corner {tag} disagrees: {seen}"


ABOUT = [
    "What a reader must find in the drawing beside this file, worked out from the design (shapely for",
    "areas), never from the program's own output.",
    "Lengths are inches, areas square feet; unit is the drawing's true unit. In an elevation x runs",
    "right from its leftmost wall point and y up from the level line (the lowest wall point where",
    "none is drawn); origin is where that point falls, in drawing units.",
    "name is the title, null where the drawing has none.",
    "walls stand left to right. outline_area is the drawn outline's; gross_area is that less bare",
    "areas and the roofs that hide it, in `faces` separate parts; net_area is that less openings",
    "(not obstacles). A round top counts as its true half circle.",
    "openings: left, right, sill, head of the outline's box; in_siding: boxes of the parts of it that",
    "lie in the faces (left, bottom, right, top): where stone stands beside a door only the rest does.",
    "obstacles: box is left, bottom, right, top.",
    "rakes: sloped wall tops with pitch in 12. lower_roofs: sides of the faces on a roof; siding says",
    "whether the siding is above, below or beside the roof there.",
    "corners: lowest and highest point of the siding on an upright with a tag; in a sound design a tag",
    "seen in two elevations has the same in both.",
    "grade: finished grade, left to right.",
    "starter: level bottoms, less doors: base on the wall's own bottom line, bare_top on stone.",
    "starter of the whole is the perimeter's.",
]
