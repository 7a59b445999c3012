"""Draws a design to DXF with ezdxf, on the drawing convention's layers."""

from __future__ import annotations

import io

import ezdxf
from ezdxf import options
from ezdxf.document import Drawing

import blocks
from design import INCHES, INSUNITS, Corner, Elevation, Obstacle, Opening, Point, Ring, Sample
from truth import face_of, parts, ring_of, upright_span

WALL, BARE, WINDOW, DOOR = "A-WALL-OTLN", "A-WALL-BASE", "A-GLAZ", "A-DOOR"
ROOF, MOUNT, OBSTACLE = "A-ROOF-OTLN", "A-ELEV-MBLK", "A-ELEV-OBST"
LEVEL, GRADE, INSIDE, TAG = "A-FLOR-LEVL", "C-TOPO-PROF", "A-WALL-CNRI", "A-WALL-IDEN"
FRAME, TITLE, TEXTURE = "A-ELEV-FRAM", "A-ELEV-IDEN", "A-ELEV-PATT"
DIMS, NOTE, TRIM, BELOW = "A-ANNO-DIMS", "A-ANNO-NOTE", "A-ELEV-TRIM", "S-FNDN-HDLN"

LAYERS = {
    WALL: (7, 50), BARE: (32, 35), WINDOW: (5, 25), DOOR: (6, 25), ROOF: (1, 35),
    MOUNT: (3, 25), OBSTACLE: (30, 25), LEVEL: (4, 18), GRADE: (34, 70), INSIDE: (2, 18),
    TAG: (7, 18), FRAME: (8, 13), TITLE: (7, 35), TEXTURE: (9, 13), DIMS: (8, 18),
    NOTE: (7, 18), TRIM: (8, 18), BELOW: (8, 18),
}
"""Color and line weight (1/100 mm) of each layer; the weights are the usual drawing widths
(DrawingFact::FederalWidths), grade the heaviest (DrawingFact::GradeLine)."""

NOTE_HEIGHT, TITLE_HEIGHT, TAG_HEIGHT = 6.0, 14.0, 7.0
"""Text heights; 6 in is 1/8 in on a sheet at 1/4 in to the foot, over the least of 3/32 (DrawingFact::TextHeight)."""


class Pen:
    """Draws elevation inches into a drawing's model space."""

    def __init__(self, doc: Drawing, sample: Sample, elevation: Elevation) -> None:
        self.doc, self.space = doc, doc.modelspace()
        self.names: dict[str, str] = {}
        self.r12 = sample.version == "R12"
        self.closing = sample.closing
        self.scale = 1 / INCHES[sample.unit]
        self.origin = elevation.origin

    def at(self, p: Point) -> Point:
        """Drawing units, rounded to what a CAD program would keep."""
        x, y = (o + self.scale * c for o, c in zip(self.origin, p))
        return (round(x, 10), round(y, 10))

    def on(self, layer: str) -> dict[str, str]:
        """Attributes that put an entity on a layer of the convention, by the name it has here."""
        return {"layer": self.names.get(layer, layer)}

    def line(self, layer: str, points: Ring) -> None:
        """An open polyline, a LINE where it has two points."""
        where = [self.at(p) for p in points]
        attribs = self.on(layer)
        if len(where) == 2:
            self.space.add_line(*where, dxfattribs=attribs)
        elif self.r12:
            self.space.add_polyline2d(where, dxfattribs=attribs)
        else:
            self.space.add_lwpolyline(where, dxfattribs=attribs)

    def ring(self, layer: str, points: Ring) -> None:
        """A closed polyline."""
        where = [self.at(p) for p in points]
        attribs = self.on(layer)
        if not self.r12:
            self.space.add_lwpolyline(where, close=True, dxfattribs=attribs)
        elif self.closing == "repeat":
            self.space.add_polyline2d([*where, where[0]], dxfattribs=attribs)
        else:
            self.space.add_polyline2d(where, close=True, dxfattribs=attribs)

    def text(self, layer: str, p: Point, content: str, height: float) -> None:
        attribs = {**self.on(layer), "height": height * self.scale, "insert": self.at(p)}
        self.space.add_text(content, dxfattribs={**attribs, "style": "OFFICE"})

    def insert(self, layer: str, name: str, p: Point, mirrored: bool = False) -> None:
        across = -self.scale if mirrored else self.scale
        scale = {"xscale": across, "yscale": self.scale, "zscale": self.scale}
        self.space.add_blockref(name, self.at(p), dxfattribs={**self.on(layer), **scale})

    def bulged(self, layer: str, points: list[tuple[Point, float]]) -> None:
        """A closed polyline with arcs."""
        where = [(*self.at(p), bulge) for p, bulge in points]
        add = self.space.add_polyline2d if self.r12 else self.space.add_lwpolyline
        add(where, format="xyb", close=True, dxfattribs=self.on(layer))

    def opening(self, layer: str, o: Opening) -> None:
        """A window or door as a block or a loop."""
        if o.drawn == "loop":
            self.bulged(layer, blocks.outline(o)) if o.round_top else self.ring(layer, ring_of(o))
            return
        name = blocks.ensure(self.doc, o, self.r12)
        corner = (o.right if o.drawn == "mirrored" else o.left, o.sill)
        self.insert(layer, name, corner, o.drawn == "mirrored")

    def circle(self, layer: str, centre: Point, radius: float) -> None:
        self.space.add_circle(self.at(centre), radius * self.scale, dxfattribs=self.on(layer))


def draw(sample: Sample) -> bytes:
    """The DXF file of a sample: the same bytes on every run."""
    options.write_fixed_meta_data_for_testing = True
    doc = new_document(sample)
    for elevation in sample.elevations:
        draw_elevation(Pen(doc, sample, elevation), elevation)
    set_extents(doc, sample)
    return bytes_of(doc)


def bytes_of(doc: Drawing, binary: bool = False) -> bytes:
    """The file. The library takes the CLASS entries from a set; sorted, they come in one order."""
    if doc.dxfversion > "AC1009":
        doc.classes.add_required_classes(doc.dxfversion)
        doc.classes.classes = dict(sorted(doc.classes.classes.items()))
    if binary:
        raw = io.BytesIO()
        doc.write(raw, fmt="bin")
        return raw.getvalue()
    stream = io.StringIO(newline="")
    doc.write(stream)
    return stream.getvalue().encode(doc.output_encoding, errors="dxfreplace")


def new_document(sample: Sample, names: dict[str, str] | None = None) -> Drawing:
    """An empty drawing with the convention's layers, under other names where `names` has them."""
    doc = ezdxf.new(sample.version)
    if sample.version == "R12":
        doc.header["$HANDLING"] = 0
    else:
        told = sample.insunits
        doc.header["$INSUNITS"] = INSUNITS[sample.unit] if told is None else told
    metric = sample.unit in ("mm", "cm", "m")
    doc.header["$MEASUREMENT"] = int(metric)
    doc.header["$LUNITS"] = 2 if metric else 4
    doc.header["$LTSCALE"] = 24.0 / INCHES[sample.unit]
    doc.linetypes.add("DASHED", [0.75, 0.5, -0.25], description="Dashed __ __ __")
    for name, (color, weight) in LAYERS.items():
        layer = doc.layers.add((names or {}).get(name, name), color=color)
        if sample.version != "R12":
            layer.dxf.lineweight = weight
        if name == BELOW:
            layer.dxf.linetype = "DASHED"
    doc.styles.add("OFFICE", font="txt")
    add_dimstyle(doc, 1 / INCHES[sample.unit], metric)
    return doc


def add_dimstyle(doc: Drawing, scale: float, metric: bool) -> None:
    """Ticks, text above the line, feet and inches where the drawing is not metric."""
    style = doc.dimstyles.new("ELEVATION").dxf
    style.dimtxsty, style.dimtad, style.dimtih, style.dimtoh = "OFFICE", 1, 0, 0
    style.dimtxt, style.dimtsz, style.dimexo = 6 * scale, 3 * scale, 4 * scale
    style.dimexe, style.dimgap, style.dimdle = 4 * scale, 2 * scale, 0.0
    style.dimclrt, style.dimzin, style.dimrnd = 7, 8, 0.0
    if doc.dxfversion > "AC1009":
        style.dimdec, style.dimlunit = (0, 2) if metric else (4, 4)


def draw_elevation(pen: Pen, e: Elevation) -> None:
    if e.texture:
        draw_texture(pen, e)
    for ring in e.walls:
        pen.ring(WALL, ring)
    for ring in e.bare:
        pen.ring(BARE, ring)
    for roof in e.roofs:
        pen.ring(ROOF, roof.outline)
    for points in e.trims:
        pen.line(TRIM, points)
    for points in e.dashed:
        pen.line(BELOW, points)
    for opening in e.openings:
        pen.opening(WINDOW if opening.kind == "window" else DOOR, opening)
    for obstacle in e.obstacles:
        draw_obstacle(pen, obstacle)
    if e.level:
        pen.line(LEVEL, [(e.level[0], 0.0), (e.level[1], 0.0)])
    if e.grade:
        pen.line(GRADE, e.grade)
    for corner in e.corners:
        draw_corner(pen, e, corner)
    draw_notes(pen, e)




def draw_obstacle(pen: Pen, o: Obstacle) -> None:
    layer = MOUNT if o.mounting_block else OBSTACLE
    if o.circle:
        pen.circle(layer, o.circle[:2], o.circle[2])
    elif o.block:
        xs, ys = zip(*o.outline)
        corner, width, height = (min(xs), min(ys)), max(xs) - min(xs), max(ys) - min(ys)
        blocks.ensure_fixture(pen.doc, o.block, width, height, pen.r12)
        pen.insert(layer, o.block, corner)
    else:
        pen.ring(layer, o.outline)


def draw_corner(pen: Pen, e: Elevation, c: Corner) -> None:
    """The tag just above the siding's foot, 3 in off the corner, and the inside-corner line."""
    wall = e.walls[c.wall]
    span = upright_span(face_of(e, wall), c.x) or upright_of(wall, c.x)
    foot = span[0]
    inward = 1 if c.x == min(wall)[0] else -1
    wide = TAG_HEIGHT * len(c.tag)
    pen.text(TAG, (c.x + 3 if inward > 0 else c.x - 3 - wide, foot + 5), c.tag, TAG_HEIGHT)
    if c.marked:
        bottom, top = upright_of(wall, c.x)
        pen.line(INSIDE, [(c.x + 2 * inward, bottom), (c.x + 2 * inward, top)])


def upright_of(wall: Ring, x: float) -> tuple[float, float]:
    ys = [q[1] for q in wall if abs(q[0] - x) < 1e-6]
    return (min(ys), max(ys))


def draw_notes(pen: Pen, e: Elevation) -> None:
    if e.frame:
        pen.ring(FRAME, e.frame)
    if e.title:
        left, bottom = min(e.frame) if e.frame else (0.0, 0.0)
        pen.text(TITLE, e.title_at or (left + 24, bottom + 14), e.title, TITLE_HEIGHT)
    for p, content in e.notes:
        pen.text(NOTE, p, content, NOTE_HEIGHT)
    for p, rise in e.slopes:
        draw_slope(pen, p, rise)
    for a, b, offset in e.dims:
        draw_dimension(pen, a, b, offset)


def draw_slope(pen: Pen, p: Point, rise: float) -> None:
    """The roofer's triangle: run 12, the rise beside it (DrawingFact::SlopeTriangle), at twice that size."""
    x, y = p
    pen.line(NOTE, [(x, y), (x + 24, y), (x + 24, y + 2 * rise), (x, y)])
    pen.text(NOTE, (x + 7, y - 9), "12", NOTE_HEIGHT)
    pen.text(NOTE, (x + 27, y + rise - 3), f"{rise:g}", NOTE_HEIGHT)


def draw_dimension(pen: Pen, a: Point, b: Point, offset: float) -> None:
    """A real DIMENSION. Its block shows feet and inches; the entity itself has no override, so
    that what it measures is what it says."""
    upright = abs(a[0] - b[0]) < 1e-9
    base = (a[0] - offset, a[1]) if upright else (a[0], a[1] - offset)
    length = abs(b[1] - a[1]) if upright else abs(b[0] - a[0])
    whole = abs(length - round(length)) < 1e-9
    label = f"{length * pen.scale:.0f}" if pen.scale != 1 or not whole else feet_inches(round(length))
    made = pen.space.add_linear_dim(
        base=pen.at(base), p1=pen.at(a), p2=pen.at(b), angle=90 if upright else 0, text=label,
        dimstyle="ELEVATION", dxfattribs=pen.on(DIMS),
    )
    made.render()
    made.dimension.dxf.text = ""


def feet_inches(length: int) -> str:
    """12'-6" as draughtsmen write it (DrawingFact::FeetInches)."""
    return f"{length // 12}'-{length % 12}\""


def draw_texture(pen: Pen, e: Elevation) -> None:
    """A siding hatch: wall less bare, roofs and openings, one level family of lines."""
    for wall in e.walls:
        face = face_of(e, wall)
        for part in parts(face):
            hatch = pen.space.add_hatch(color=256, dxfattribs=pen.on(TEXTURE))
            lines = [[0, pen.at((0, 0)), (0, e.texture * pen.scale), []]]
            hatch.set_pattern_fill("LEVEL-LINES", color=256, definition=lines, style=0)
            add_loop(pen, hatch, part.exterior.coords[:-1], 1)
            for o in e.openings:
                cx, cy = (o.left + o.right) / 2, (o.sill + o.head) / 2
                if part.contains_properly(blocks.centre(cx, cy)):
                    add_opening_loop(pen, hatch, o)


def add_loop(pen: Pen, hatch, ring, flags: int) -> None:
    hatch.paths.add_polyline_path(tidy([pen.at(p) for p in ring]), is_closed=True, flags=flags)


def add_opening_loop(pen: Pen, hatch, o: Opening) -> None:
    points = [(*pen.at(p), b) for p, b in blocks.outline(o)]
    hatch.paths.add_polyline_path(points, is_closed=True, flags=16)


def tidy(ring: Ring) -> Ring:
    """Counter-clockwise as it comes, from its least point: no library's starting point shows."""
    first = ring.index(min(ring))
    return ring[first:] + ring[:first]


def set_extents(doc: Drawing, sample: Sample) -> None:
    points = []
    for e in sample.elevations:
        for ring in [*e.walls, *([e.frame] if e.frame else [])]:
            scale = 1 / INCHES[sample.unit]
            points += [(e.origin[0] + x * scale, e.origin[1] + y * scale) for x, y in ring]
    xs, ys = zip(*points)
    doc.header["$EXTMIN"] = (round(min(xs), 6), round(min(ys), 6), 0.0)
    doc.header["$EXTMAX"] = (round(max(xs), 6), round(max(ys), 6), 0.0)
    doc.header["$LIMMIN"] = (round(min(xs), 6), round(min(ys), 6))
    doc.header["$LIMMAX"] = (round(max(xs), 6), round(max(ys), 6))
