"""Puts random roofs, stone, openings, fixtures and grade on shells, so that openings never overlap
one another, a roof or a wall's edge."""

from __future__ import annotations

from shapely.geometry import Polygon
from shapely.ops import unary_union

from design import Elevation, Obstacle, Opening, Ring, Roof, box
from dice import Dice
from shells import Measures
from truth import face_of

CALL_SIZES = [
    (24, 36), (30, 36), (30, 48), (32, 48), (32, 60), (36, 36), (36, 48), (36, 60), (36, 72), (48, 36),
    (48, 48), (48, 60), (60, 48), (72, 48), (72, 60),
]
"""Windows by call size (TakeoffFact::CallSizes)."""
DOORS = [(32, 80), (36, 80), (72, 80)]
OVERHEAD = [(108, 84), (192, 84)]
EDGE, GAP = 4.0, 4.0
"""Least distance of an opening from a wall's edge, and between openings and fixtures."""


class Wall:
    """A wall being furnished."""

    def __init__(self, view: Elevation, index: int) -> None:
        self.view, self.ring = view, view.walls[index]
        self.outline = Polygon(self.ring)
        self.taken: list[Polygon] = []
        self.left, self.bottom, self.right, self.top = self.outline.bounds
        self.refresh()

    def refresh(self) -> None:
        self.face = face_of(self.view, self.ring)
        self.room = self.face.buffer(-EDGE, join_style="mitre")
        hides = [Polygon(r.outline) for r in self.view.roofs]
        self.roofs = unary_union(hides).buffer(EDGE) if hides else Polygon()

    def free(self, shape: Polygon) -> bool:
        return all(shape.distance(other) >= GAP for other in self.taken)

    def takes(self, ring: Ring, at_base: bool, over_stone: bool) -> bool:
        shape = Polygon(ring)
        if not self.free(shape):
            return False
        if at_base:
            (left, bottom), (right, _), (_, top) = ring[0], ring[1], ring[2]
            return self.face.covers(Polygon(box(left - EDGE, bottom, right + EDGE, top + EDGE)))
        if self.room.covers(shape):
            return True
        in_wall = self.outline.buffer(-EDGE, join_style="mitre").covers(shape)
        half_sided = self.face.intersection(shape).area > 0.6 * shape.area
        return over_stone and in_wall and half_sided and self.roofs.disjoint(shape)


def furnish(dice: Dice, view: Elevation, m: Measures, metric: bool) -> None:
    for index in range(len(view.walls)):
        if dice.chance(0.25):
            add_roof(dice, view, index, m)
        if dice.chance(0.35):
            add_stone(dice, view, index, m)
    for index in range(len(view.walls)):
        wall = Wall(view, index)
        add_openings(dice, wall, m, metric)
        for _ in range(dice.weighted([(0, 3), (1, 3), (2, 2), (4, 1)])):
            add_fixture(dice, wall, m)


def add_roof(dice: Dice, view: Elevation, index: int, m: Measures) -> None:
    """A porch seen from the front, one that dies into the wall from a side, or a small gable."""
    left, bottom, right, top = Polygon(view.walls[index]).bounds
    span, low = right - left, dice.length(84, 96, m.step)
    if top - low < 60 or span < 144:
        return
    kind, high = dice.pick(["band", "end", "gable"]), low + dice.length(16, 30, m.step)
    if kind == "band":
        a, b = dice.pick([(left, right), (left, left + span / 2), (left + 24, right - 24)])
        ring = box(a, low, b, high)
    elif kind == "end":
        reach = dice.length(48, min(120, span - 24), m.step)
        if dice.chance(0.5):
            ring = [(left, low), (left + reach, low), (left + reach, low + 8), (left, high + 4)]
        else:
            ring = [(right - reach, low), (right, low), (right, high + 4), (right - reach, low + 8)]
    else:
        middle, half = left + span / 2, dice.length(36, min(72, span / 2 - 12), m.step)
        ring = [(middle - half, low), (middle + half, low), (middle, low + half / 2)]
    taken = Polygon(ring).intersection(Polygon(view.walls[index])).area
    others = [Polygon(w) for i, w in enumerate(view.walls) if i != index]
    if taken > 0.9 * Polygon(ring).area and all(o.intersection(Polygon(ring)).area == 0 for o in others):
        view.roofs.append(Roof(ring, covers=True))


def add_stone(dice: Dice, view: Elevation, index: int, m: Measures) -> None:
    """A base, part of one, a band, a chimney that stands above the wall, or a panel."""
    ring = view.walls[index]
    left, bottom, right, top = Polygon(ring).bounds
    span, up = right - left, dice.length(16, 40, m.step)
    base = [x for x, y in ring if y == bottom]
    kind = dice.pick(["base", "part", "band", "chimney", "panel"])
    if kind == "base":
        stone = box(min(base), bottom, max(base), bottom + up)
    elif kind == "part":
        stone = box(left, bottom, left + dice.length(24, span / 2, m.step), bottom + up)
    elif kind == "band":
        at = dice.length(bottom + 48, bottom + 72, m.step)
        stone = box(left, at, right, at + 10)
    elif kind == "chimney":
        at = left + dice.length(24, span - 72, m.step)
        stone = box(at, bottom, at + 42, top + 36)
    else:
        at = left + dice.length(16, span - 64, m.step)
        stone = box(at, bottom + 24, at + 40, bottom + 60)
    others = [Polygon(w) for i, w in enumerate(view.walls) if i != index]
    roofs = [Polygon(r.outline) for r in view.roofs]
    if all(o.intersection(Polygon(stone)).area == 0 for o in others) and all(
        r.disjoint(Polygon(stone).buffer(8)) for r in roofs
    ):
        view.bare.append(stone)


def add_openings(dice: Dice, wall: Wall, m: Measures, metric: bool) -> None:
    if dice.chance(0.25):
        width, height = dice.pick(OVERHEAD)
        put(dice, wall, m, Opening("overhead-door", 0, wall.bottom, width, height), at_base=True)
    if dice.chance(0.5):
        width, height = dice.pick(DOORS)
        sill = wall.bottom if dice.chance(0.3) else 0.0
        put(dice, wall, m, Opening("door", 0, sill, width, height), at_base=sill == wall.bottom)
    for _ in range(dice.weighted([(0, 1), (3, 3), (6, 3), (12, 1)])):
        width, height = window_size(dice, metric)
        if dice.chance(0.7):
            sill = m.story * dice.whole(0, 2) + dice.pick([24, 30, 36, 42])
        else:
            sill = dice.length(wall.bottom + 8, wall.top, m.step)
        round_top = dice.chance(0.12) and height > width
        put(dice, wall, m, Opening("window", 0, sill, width, height, round_top=round_top))


def window_size(dice: Dice, metric: bool) -> tuple[float, float]:
    if metric:
        return (dice.whole(5, 20) * 100 / 25.4, dice.whole(5, 16) * 100 / 25.4)
    if dice.chance(0.2):
        return (dice.length(18, 90, 0.25), dice.length(18, 70, 0.25))
    return dice.pick(CALL_SIZES)


HOW = [("insert", 6), ("mirrored", 2), ("turned", 1), ("absolute", 1), ("loop", 3), ("panes", 1)]


def put(dice: Dice, wall: Wall, m: Measures, o: Opening, at_base: bool = False) -> None:
    """Tries a few places along the wall; gives up where there is no room."""
    o.drawn = dice.weighted(HOW)
    for _ in range(6):
        if wall.right - wall.left < o.width + 2 * EDGE:
            return
        o.left = wall.left + dice.length(EDGE, wall.right - wall.left - o.width - EDGE, m.step)
        ring = box(o.left, o.sill, o.right, o.head)
        if wall.takes(ring, at_base, over_stone=dice.chance(0.3)):
            wall.taken.append(Polygon(ring))
            o.block = f"{blocks_stem(o)}-{o.width:.4f}X{o.height:.4f}".replace(".", "P")
            wall.view.openings.append(o)
            return


def blocks_stem(o: Opening) -> str:
    stem = {"window": "WIN", "door": "DOOR", "overhead-door": "OHD"}[o.kind]
    return f"{stem}-RT" if o.round_top else stem


def add_fixture(dice: Dice, wall: Wall, m: Measures) -> None:
    """A lamp, tap or vent where there is room: a loop, a circle or a block."""
    width, height = dice.pick([(6, 8), (8, 12), (12, 12), (5, 5)])
    left = wall.left + dice.length(EDGE, wall.right - wall.left - width - EDGE, m.step)
    bottom = dice.length(wall.bottom + EDGE, wall.top - height - EDGE, m.step)
    ring = box(left, bottom, left + width, bottom + height)
    if not (wall.room.covers(Polygon(ring)) and wall.free(Polygon(ring))):
        return
    wall.taken.append(Polygon(ring))
    made = Obstacle(dice.pick(["lamp", "hose tap", "vent"]), dice.chance(0.6), outline=ring)
    shape = dice.pick(["loop", "circle", "block"])
    if shape == "circle":
        made = Obstacle(made.kind, made.mounting_block, circle=(left + width / 2, bottom + width / 2, width / 2))
    elif shape == "block":
        made.block = f"FIX-{width}X{height}"
    wall.view.obstacles.append(made)


def add_grade(dice: Dice, views: list[Elevation], m: Measures) -> None:
    """Grade that is one height at each corner of the plan, sloping or stepping between."""
    def height() -> float:
        return m.base - dice.length(-8, 30, m.step)

    heights = [height() for _ in views] if dice.chance(0.7) else [height()] * len(views)
    for i, v in enumerate(views):
        left, right = min(x for w in v.walls for x, _ in w), max(x for w in v.walls for x, _ in w)
        a, b = heights[i], heights[(i + 1) % len(views)] if len(views) > 1 else height()
        line = [(left - 48, a), (left, a), (right, b), (right + 48, b)]
        if dice.chance(0.3):
            line.insert(2, (left + (right - left) / 2, dice.length(min(a, b) - 1, max(a, b) + 1, m.step)))
        v.grade = line
