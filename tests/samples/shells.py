"""Random shells of houses: walls, corners, main roofs. Lengths are inches; see `design.py`."""

from __future__ import annotations

from dataclasses import dataclass, replace

from design import Corner, Elevation, Ring, box
from dice import Dice

TITLES = ["FRONT ELEVATION", "RIGHT ELEVATION", "REAR ELEVATION", "LEFT ELEVATION"]


@dataclass
class Measures:
    """What every wall of a house shares."""

    base: float
    """Bottom of the siding; the first floor is 0."""
    eave: float
    story: float
    step: float
    """Lengths are multiples of it."""

    @property
    def rise(self) -> float:
        """Most that a gable may rise above the eave: no wall is over 46 ft 8 in high."""
        return min(260.0, 560.0 - (self.eave - self.base))


def measures(dice: Dice, step: float) -> Measures:
    story = dice.length(96, 120, step)
    return Measures(
        base=-dice.length(6, 40, step),
        eave=story * dice.whole(1, 3) - dice.length(0, 12, step),
        story=story,
        step=step,
    )


def gable(left: float, right: float, m: Measures, pitch: float) -> Ring:
    middle = (left + right) / 2
    peak = m.eave + (right - left) / 2 * pitch / 12
    return [(left, m.base), (right, m.base), (right, m.eave), (middle, peak), (left, m.eave)]


def pitch_for(dice: Dice, half_span: float, m: Measures) -> float:
    """A rise in 12, whole or not, that keeps the gable low enough."""
    pitch = dice.length(1, 18, 0.5) if dice.chance(0.8) else dice.length(1, 18, 0.01)
    return min(pitch, m.rise * 12 / half_span)


def house(dice: Dice, m: Measures) -> list[Elevation]:
    """Four elevations in wrap order: a block, or a block with a wing flush with one side."""
    width, depth = dice.length(240, 720, m.step), dice.length(240, 480, m.step)
    if dice.chance(0.5):
        shell = winged(dice, m, max(width, 336), depth)
        return mirrored(shell) if dice.chance(0.5) else shell
    return plain(dice, m, width, depth)


def plain(dice: Dice, m: Measures, width: float, depth: float) -> list[Elevation]:
    """A block whose roof is hipped, or gabled along either side."""
    form = dice.pick(["hip", "sides", "front"])
    spans = [width, depth, width, depth]
    gabled = {"hip": [], "sides": [1, 3], "front": [0, 2]}[form]
    pitch = pitch_for(dice, (depth if form == "sides" else width) / 2, m)
    views = []
    for i, span in enumerate(spans):
        ring = gable(0, span, m, pitch) if i in gabled else box(0, m.base, span, m.eave)
        corners = [Corner(f"C{i + 1}", False, 0, 0), Corner(f"C{(i + 1) % 4 + 1}", False, span, 0)]
        views.append(view(TITLES[i], [ring], corners))
    return views


def winged(dice: Dice, m: Measures, width: float, depth: float) -> list[Elevation]:
    """A block with a wing at the right of its front: one inside corner (C2)."""
    wing, out = dice.length(144, width * 0.6, m.step), dice.length(72, 240, m.step)
    joint, total = width - wing, depth + out
    side_pitch = pitch_for(dice, depth / 2, m) if dice.chance(0.7) else None
    wing_pitch = pitch_for(dice, wing / 2, m)
    right, left = box(0, m.base, total, m.eave), box(0, m.base, depth, m.eave)
    if side_pitch:
        left = gable(0, depth, m, side_pitch)
        peak = left[3][1]
        right = [(0, m.base), (total, m.base), (total, m.eave), (out + depth / 2, peak), (out, m.eave), (0, m.eave)]
    return [
        view(TITLES[0], [box(0, m.base, joint, m.eave), gable(joint, width, m, wing_pitch)], [
            Corner("C1", False, 0, 0), Corner("C2", True, joint, 0, marked=True),
            Corner("C3", False, joint, 1), Corner("C4", False, width, 1),
        ]),
        view(TITLES[1], [right], [Corner("C4", False, 0, 0), Corner("C5", False, total, 0)]),
        view(TITLES[2], [box(0, m.base, width, m.eave)],
             [Corner("C5", False, 0, 0), Corner("C6", False, width, 0)]),
        view(TITLES[3], [left, box(depth, m.base, total, m.eave)], [
            Corner("C6", False, 0, 0), Corner("C1", False, depth, 0),
            Corner("C2", True, depth, 1, marked=True), Corner("C3", False, total, 1),
        ]),
    ]


def view(title: str | None, walls: list[Ring], corners: list[Corner]) -> Elevation:
    left, right = min(x for w in walls for x, _ in w), max(x for w in walls for x, _ in w)
    return Elevation(title, walls, level=(left - 30, right + 30), corners=corners)


def mirrored(views: list[Elevation]) -> list[Elevation]:
    """The house seen in a mirror: front and rear turned over, the sides turned over and swapped."""
    front, right, rear, left = [turned_over(v) for v in views]
    left.title, right.title = right.title, left.title
    return [front, left, rear, right]


def turned_over(v: Elevation) -> Elevation:
    width = max(x for w in v.walls for x, _ in w)
    return replace(
        v,
        walls=[[(width - x, y) for x, y in reversed(w)] for w in v.walls],
        corners=[replace(c, x=width - c.x) for c in v.corners],
    )


def row(dice: Dice, m: Measures) -> Elevation:
    """One view of one to four walls side by side, some sharing an upright side."""
    walls, x = [], 0.0
    for _ in range(dice.weighted([(1, 5), (2, 2), (3, 1), (4, 1)])):
        width = dice.length(120, 480, m.step)
        walls.append([(x + a, b) for a, b in single(dice, m, width)])
        x += width + (0.0 if dice.chance(0.5) else dice.length(24, 84, m.step))
    tags = []
    for i, ring in enumerate(walls):
        for at in (min(ring)[0], max(ring)[0]):
            upright = [p[1] for p in ring if p[0] == at]
            if dice.chance(0.3) and max(upright) - min(upright) > 24:
                tags.append(Corner(f"T{len(tags) + 1}", False, at, i))
    return view("WEST ELEVATION" if dice.chance(0.7) else None, walls, tags)


def single(dice: Dice, m: Measures, w: float) -> Ring:
    """A wall shape from x = 0 to w, counter-clockwise from its lower left corner."""
    b, e = m.base, m.eave
    rise = w / 2 * pitch_for(dice, w / 2, m) / 12
    ends = [(0.0, b), (w, b)]
    shape = dice.pick(["box", "gable", "uneven", "gambrel", "shed", "stepped", "triangle", "trapezium"])
    if shape == "gable":
        return [*ends, (w, e), (w / 2, e + rise), (0, e)]
    if shape == "uneven":
        ridge = dice.length(w / 4, w * 3 / 4, m.step)
        return [*ends, (w, e - dice.length(0, 24, m.step)), (ridge, e + max(rise, 12)), (0, e)]
    if shape == "gambrel":
        knee, low = dice.length(w / 10, w / 5, m.step), dice.length(36, 72, m.step)
        top = low + dice.length(12, 48, m.step)
        return [*ends, (w, e), (w - knee, e + low), (w / 2, e + top), (knee, e + low), (0, e)]
    if shape == "shed":
        return [*ends, (w, e), (0, e + max(12, rise / 2))]
    if shape == "stepped":
        joint, lower = dice.length(w / 3, w * 2 / 3, m.step), dice.length(24, e - b - 60, m.step)
        return [*ends, (w, e - lower), (joint, e - lower), (joint, e), (0, e)]
    if shape == "triangle":
        return [*ends, (w / 2, b + max(rise, 30))]
    if shape == "trapezium":
        inset = dice.length(12, w / 4, m.step)
        return [*ends, (w - inset, e), (inset, e)]
    return box(0, b, w, e)
