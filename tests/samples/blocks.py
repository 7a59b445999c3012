"""Blocks of windows, doors and fixtures, drawn on layer 0 so that an insert's layer takes hold."""

from __future__ import annotations

from dataclasses import dataclass

from ezdxf.document import Drawing
from shapely.geometry import Point as ShapelyPoint

from design import Opening, Point


def centre(x: float, y: float) -> ShapelyPoint:
    return ShapelyPoint(x, y)


def outline(o: Opening) -> list[tuple[Point, float]]:
    """The opening's outline as points with bulges, counter-clockwise from its lower left corner.

    Bulge = tan(included angle / 4): 1 is the half circle from right spring to left spring
    (DXF reference; DrawingFact::Bulge)."""
    if not o.round_top:
        ring = [(o.left, o.sill), (o.right, o.sill), (o.right, o.head), (o.left, o.head)]
        return [(p, 0.0) for p in ring]
    spring = o.head - o.width / 2
    ring = [(o.left, o.sill), (o.right, o.sill), (o.right, spring), (o.left, spring)]
    return list(zip(ring, [0.0, 0.0, 1.0, 0.0]))


def call_size(o: Opening) -> str:
    """Feet and inches run together: 36 x 48 in is 3040 (TakeoffFact::CallSizes)."""
    w, h = round(o.width), round(o.height)
    return f"{w // 12}{w % 12}{h // 12}{h % 12}"


def name_of(o: Opening) -> str:
    if o.block:
        return o.block
    stem = {"window": "WIN", "door": "DOOR", "overhead-door": "OHD"}[o.kind]
    return f"{stem}-{'RT-' if o.round_top else ''}{call_size(o)}"


def ensure(doc: Drawing, o: Opening, r12: bool, place: Place | None = None) -> str:
    """The name of the block of this opening, made when it is first asked for: in inches from its
    lower left corner, or placed otherwise."""
    place = place or Place()
    name = name_of(o) + place.suffix
    if name not in doc.blocks:
        block = Block(doc, name, r12, place)
        at_zero = Opening(o.kind, 0.0, 0.0, o.width, o.height, round_top=o.round_top)
        block.ring(outline(at_zero))
        {"window": window, "door": door, "overhead-door": overhead}[o.kind](block, at_zero)
    return name


def ensure_fixture(doc: Drawing, name: str, width: float, height: float, r12: bool) -> None:
    """A mounting block with a tap on it."""
    if name not in doc.blocks:
        block = Block(doc, name, r12)
        block.box(0, 0, width, height)
        block.circle(width / 2, height / 2, min(width, height) / 4)
        block.line((width / 2, height / 4), (width / 2, 1.0))


@dataclass(frozen=True)
class Place:
    """How a block's inches become its own coordinates: turned, scaled, moved, in that order."""

    scale: float = 1.0
    at: Point = (0.0, 0.0)
    lying: bool = False
    """A quarter turn clockwise; the insert turns it back."""
    suffix: str = ""
    """Tells this block's name from that of one placed otherwise."""

    def of(self, p: Point) -> Point:
        x, y = (p[1], -p[0]) if self.lying else p
        return (round(self.at[0] + self.scale * x, 10), round(self.at[1] + self.scale * y, 10))


class Block:
    """A block definition being drawn."""

    def __init__(self, doc: Drawing, name: str, r12: bool, place: Place = Place()) -> None:
        self.doc, self.r12, self.place = doc, r12, place
        self.block = doc.blocks.new(name)

    def ring(self, points: list[tuple[Point, float]]) -> None:
        where = [(*self.place.of(p), b) for p, b in points]
        attribs = {"layer": "0"}
        if self.r12:
            self.block.add_polyline2d(where, format="xyb", close=True, dxfattribs=attribs)
        else:
            self.block.add_lwpolyline(where, format="xyb", close=True, dxfattribs=attribs)

    def box(self, left: float, bottom: float, right: float, top: float) -> None:
        ring = [(left, bottom), (right, bottom), (right, top), (left, top)]
        self.ring([(p, 0.0) for p in ring])

    def line(self, a: Point, b: Point) -> None:
        self.block.add_line(self.place.of(a), self.place.of(b), dxfattribs={"layer": "0"})

    def circle(self, x: float, y: float, radius: float) -> None:
        at = self.place.of((x, y))
        self.block.add_circle(at, radius * self.place.scale, dxfattribs={"layer": "0"})

    def insert(self, name: str, p: Point) -> None:
        self.block.add_blockref(name, self.place.of(p), dxfattribs={"layer": "0"})


FRAME = 2.0


def window(block: Block, o: Opening) -> None:
    """Frame, glass and mullions. Wide ones are two sashes side by side, each a block within the
    block; the others have a meeting rail."""
    if o.round_top:
        spring = o.head - o.width / 2
        inner = Opening(o.kind, FRAME, FRAME, o.width - 2 * FRAME, o.height - 2 * FRAME, round_top=True)
        block.ring(outline(inner))
        block.line((FRAME, spring), (o.width - FRAME, spring))
        block.line((o.width / 2, FRAME), (o.width / 2, spring))
    elif o.width >= 48:
        half = (o.width - 3 * FRAME) / 2
        name = sash(block, half, o.height - 2 * FRAME)
        block.insert(name, (FRAME, FRAME))
        block.insert(name, (2 * FRAME + half, FRAME))
    else:
        middle = o.height / 2
        block.box(FRAME, FRAME, o.width - FRAME, middle)
        block.box(FRAME, middle, o.width - FRAME, o.height - FRAME)
        block.line((o.width / 2, middle), (o.width / 2, o.height - FRAME))


def sash(block: Block, width: float, height: float) -> str:
    p = block.place
    name = f"SASH-{width:g}X{height:g}{p.suffix}".replace(".", "P")
    if name not in block.doc.blocks:
        inner = Block(block.doc, name, block.r12, Place(p.scale, lying=p.lying))
        inner.box(0, 0, width, height)
        inner.box(1.5, 1.5, width - 1.5, height - 1.5)
        inner.line((1.5, height * 2 / 3), (width - 1.5, height * 2 / 3))
        inner.line((width / 2, height * 2 / 3), (width / 2, height - 1.5))
    return name


def door(block: Block, o: Opening) -> None:
    """One leaf with panels and a knob; a wide one is two glazed leaves."""
    if o.width >= 60:
        half = o.width / 2
        for left in (FRAME, half + 1):
            block.box(left, 1, left + half - FRAME - 1, o.height - FRAME)
            block.box(left + 4, 8, left + half - FRAME - 5, o.height - FRAME - 4)
        return
    block.box(FRAME, 1, o.width - FRAME, o.height - FRAME)
    for bottom, top in ((8, 32), (42, 72)):
        block.box(8, bottom, o.width / 2 - 2, top)
        block.box(o.width / 2 + 2, bottom, o.width - 8, top)
    block.circle(o.width - 5, 37, 1.25)


def overhead(block: Block, o: Opening) -> None:
    """Four sections, a row of lights in the top one."""
    rise = o.height / 4
    for k in (1, 2, 3):
        block.line((0, k * rise), (o.width, k * rise))
    count = max(2, round(o.width / 24))
    step = o.width / count
    for k in range(count):
        block.box(k * step + 3, 3 * rise + 4, (k + 1) * step - 3, o.height - 4)
