"""A pen with habits: draws what `cad.Pen` draws in the ways that people draw it."""

from __future__ import annotations

from dataclasses import replace

from ezdxf.document import Drawing

import blocks
import cad
from design import Elevation, Opening, Point, Ring, Sample
from dice import Dice
from habits import Habits
from truth import ring_of

AJAR = 0.001
"""How far ends that should meet may be apart, inches: what rounding in a CAD program leaves."""


class UntidyPen(cad.Pen):
    """Closed outlines come as flagged or repeated polylines, chains of LINEs or open polylines."""

    def __init__(self, doc: Drawing, sample: Sample, e: Elevation, h: Habits, dice: Dice) -> None:
        super().__init__(doc, sample, e)
        self.names, self.h, self.dice = h.names, h, dice
        self.chained = False

    def ring(self, layer: str, points: Ring) -> None:
        points = self.roughened(points) if layer not in (cad.FRAME, cad.WINDOW, cad.DOOR) else points
        style = self.dice.pick(["flag", "repeat", "both"])
        # Chains that touch each other would not say which line goes on into which.
        if layer == cad.WALL and self.h.chains and not self.chained and self.dice.chance(0.8):
            self.chained = True
            style = self.dice.pick(["lines", "pieces"])
        draw = {"lines": self.as_lines, "pieces": self.as_pieces}.get(style)
        if draw:
            draw(layer, points)
        else:
            for _ in range(2 if self.has("twice", 0.4) else 1):
                self.closed(layer, points, style)
        if layer == cad.WALL and "zero" in self.h.dirt:
            at = self.at(self.dice.pick(points))
            self.space.add_line(at, at, dxfattribs=self.on(layer))

    def has(self, dirt: str, share: float) -> bool:
        return dirt in self.h.dirt and self.dice.chance(share)

    def roughened(self, points: Ring) -> Ring:
        """Begun anywhere, either way round, with needless vertices."""
        first = self.dice.whole(0, len(points) - 1)
        points = points[first:] + points[:first]
        if self.dice.chance(0.5):
            points = points[::-1]
        rough: Ring = []
        for a, b in zip(points, points[1:] + points[:1]):
            rough.append(a)
            if self.has("again", 0.2):
                rough.append(a)
            if self.has("extra", 0.3):
                rough.append(((a[0] + b[0]) / 2, (a[1] + b[1]) / 2))
        return rough

    def closed(self, layer: str, points: Ring, style: str) -> None:
        where = [self.at(p) for p in points]
        if style in ("repeat", "both"):
            where.append(where[0])
        self.polyline(layer, where, close=style in ("flag", "both"))

    def polyline(self, layer: str, where: Ring, close: bool) -> None:
        attribs = self.on(layer)
        if self.has("flipped", 0.3):
            # Seen from behind: the object plane's x runs the other way.
            where = [(-x, y) for x, y in where]
            attribs["extrusion"] = (0, 0, -1)
        old = self.r12 or self.dice.chance(0.2)
        add = self.space.add_polyline2d if old else self.space.add_lwpolyline
        add(where, close=close, dxfattribs=attribs)

    def as_lines(self, layer: str, points: Ring) -> None:
        sides = [(a, b) for a, b in zip(points, points[1:] + points[:1]) if a != b]
        if self.has("twice", 1.0):
            a, b = self.dice.pick(sides)
            sides.append(self.dice.pick([(a, b), (b, a)]))
            ajar = False
        else:
            ajar = "ajar" in self.h.dirt
        for a, b in self.dice.shuffled(sides):
            if ajar:
                a, b = self.moved(a), self.moved(b)
            if self.dice.chance(0.5):
                a, b = b, a
            self.space.add_line(self.at(a), self.at(b), dxfattribs=self.on(layer))

    def as_pieces(self, layer: str, points: Ring) -> None:
        """Two or three open polylines that meet end to end."""
        ring = points + points[:1]
        cuts = sorted(self.dice.shuffled(range(1, len(points)))[: self.dice.whole(1, 2)])
        pieces = [ring[a : b + 1] for a, b in zip([0, *cuts], [*cuts, len(points)])]
        pieces = [p for p in pieces if len(set(p)) > 1]
        for piece in self.dice.shuffled(pieces):
            if "ajar" in self.h.dirt:
                piece = [self.moved(piece[0]), *piece[1:-1], self.moved(piece[-1])]
            if self.dice.chance(0.5):
                piece = piece[::-1]
            self.polyline(layer, [self.at(p) for p in piece], close=False)

    def moved(self, p: Point) -> Point:
        return tuple(c + self.dice.whole(-10, 10) / 10 * AJAR / 1.5 for c in p)

    def line(self, layer: str, points: Ring) -> None:
        super().line(layer, points)
        if layer in (cad.LEVEL, cad.GRADE, cad.INSIDE) and self.has("twice", 0.4):
            super().line(layer, points)

    def opening(self, layer: str, o: Opening) -> None:
        if o.drawn in ("loop", "panes"):
            self.loop(layer, o)
            return
        scale = self.scale if self.h.native_blocks or o.drawn == "absolute" else 1.0
        place = blocks.Place(scale, suffix="-N" if scale != 1.0 else "")
        size = self.scale / scale
        attribs = {**self.on(layer), "xscale": size, "yscale": size, "zscale": size}
        at = self.at((o.left, o.sill))
        if o.drawn == "mirrored":
            at, attribs["xscale"] = self.at((o.right, o.sill)), -size
        elif o.drawn == "turned":
            place, attribs["rotation"] = replace(place, lying=True, suffix=place.suffix + "-L"), 90.0
        elif o.drawn == "absolute":
            count = len(self.doc.blocks)
            place, at = replace(place, at=at, suffix=f"-AT{count}"), (0.0, 0.0)
            attribs["zscale"] = 0.0 if self.dice.chance(0.3) else size
        name = blocks.ensure(self.doc, o, self.r12, place)
        for _ in range(2 if self.has("twice", 0.1) else 1):
            self.space.add_blockref(name, at, dxfattribs=attribs)

    def loop(self, layer: str, o: Opening) -> None:
        if o.round_top:
            self.bulged(layer, blocks.outline(o))
        else:
            self.closed(layer, ring_of(o), self.dice.pick(["flag", "repeat"]))
        if o.drawn == "panes":
            inner = Opening(o.kind, o.left + 3, o.sill + 3, o.width - 6, o.height - 6, round_top=o.round_top)
            self.bulged(layer, blocks.outline(inner))

    def leave_dirt(self, e: Elevation) -> None:
        """Lines that mean nothing: on layer 0 far off, on a layer without a role, on a frozen one."""
        left, bottom = min(p for w in e.walls for p in w)
        if "far" in self.h.dirt:
            self.space.add_line((4e6, 4e6), (4e6 + 10, 4e6), dxfattribs={"layer": "0"})
        if "unmapped" in self.h.dirt:
            for k in range(3):
                a, b = self.at((left + 5, bottom + 20 * k + 5)), self.at((left + 60, bottom + 20 * k + 5))
                self.space.add_line(a, b, dxfattribs={"layer": "SKETCH"})
        if "hidden" in self.h.dirt:
            old = "EXT_WALL_OLD"
            if old not in self.doc.layers:
                self.doc.layers.add(old).freeze()
            where = [self.at(p) for p in ((left, bottom), (left + 99, bottom), (left + 99, bottom + 88))]
            add = self.space.add_polyline2d if self.r12 else self.space.add_lwpolyline
            add(where, close=True, dxfattribs={"layer": old})
