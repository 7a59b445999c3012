"""A house's elevations as a designer means them: what is drawn and what is true of it.

A sample is designed once, in these nouns, and used twice: `cad.py` draws it to DXF, `truth.py`
works out what a reader must find. Lengths are inches; x runs right from the elevation's leftmost
wall point and y up from the level line, whatever unit and place it is drawn in.
"""

from __future__ import annotations

from dataclasses import dataclass, field

Point = tuple[float, float]
Ring = list[Point]

INCHES = {"inch": 1.0, "foot": 12.0, "mm": 1 / 25.4, "cm": 10 / 25.4, "m": 1000 / 25.4}
"""Inches in one drawing unit: 1 in = 25.4 mm by definition (DrawingFact::Inch)."""

INSUNITS = {"inch": 1, "foot": 2, "mm": 4, "cm": 5, "m": 6}
"""`$INSUNITS` codes (DXF reference; DrawingFact::UnitCodes)."""


def box(left: float, bottom: float, right: float, top: float) -> Ring:
    """A level rectangle, counter-clockwise."""
    return [(left, bottom), (right, bottom), (right, top), (left, top)]


@dataclass
class Opening:
    """A window or door, by the edge that siding stops at."""

    kind: str
    """`window`, `door` or `overhead-door`."""
    left: float
    sill: float
    width: float
    height: float
    """To the crown where the top is round."""
    drawn: str = "insert"
    """`insert`, `mirrored` (a block turned over left to right), `turned` (a block drawn lying down
    and turned upright), `absolute` (a block drawn in place and inserted at the origin), `loop`
    (a closed polyline) or `panes` (that and another inside it)."""
    round_top: bool = False
    """Whether the top is a half circle as wide as the window."""
    block: str | None = None
    """Block name; None takes the one its kind and call size give."""

    @property
    def right(self) -> float:
        return self.left + self.width

    @property
    def head(self) -> float:
        return self.sill + self.height


@dataclass
class Obstacle:
    """A lamp, tap or vent, by the edge that siding stops at."""

    kind: str
    mounting_block: bool
    outline: Ring | None = None
    circle: tuple[float, float, float] | None = None
    """Centre x, y and radius."""
    block: str | None = None
    """Inserted as this block, whose outline is `outline`."""


@dataclass
class Corner:
    """Where a wall's upright side meets the next wall of the house."""

    tag: str
    inside: bool
    x: float
    wall: int
    """Index of the wall that has it."""
    marked: bool = False
    """Whether an inside-corner line is drawn (2 in inside the wall)."""


@dataclass
class Roof:
    """A roof as seen; `covers` says whether it hides part of a wall."""

    outline: Ring
    covers: bool = False


@dataclass
class Elevation:
    """One face of the house."""

    title: str | None
    walls: list[Ring]
    level: tuple[float, float] | None
    """From and to in x of the level line at y = 0."""
    origin: Point = (0.0, 0.0)
    """Where x = 0, y = 0 falls, in drawing units."""
    frame: Ring | None = None
    title_at: Point | None = None
    """Where the title stands; None puts it in the frame's lower left corner."""
    bare: list[Ring] = field(default_factory=list)
    roofs: list[Roof] = field(default_factory=list)
    openings: list[Opening] = field(default_factory=list)
    obstacles: list[Obstacle] = field(default_factory=list)
    corners: list[Corner] = field(default_factory=list)
    grade: list[Point] = field(default_factory=list)
    trims: list[Ring] = field(default_factory=list)
    """Open lines of trim, posts and joints: looks only."""
    dashed: list[Ring] = field(default_factory=list)
    """Open lines below grade."""
    dims: list[tuple[Point, Point, float]] = field(default_factory=list)
    """From, to and offset of a dimension line: below for level ones, left for upright ones."""
    slopes: list[tuple[Point, float]] = field(default_factory=list)
    """Where a slope triangle stands and its rise in 12."""
    notes: list[tuple[Point, str]] = field(default_factory=list)
    texture: float | None = None
    """Line offset of the siding hatch, a texture at the draughtsman's spacing."""


@dataclass
class Sample:
    """One drawing file and the job file beside it."""

    stem: str
    about: str
    version: str
    unit: str
    elevations: list[Elevation]
    job: dict[str, dict[str, object]]
    closing: str = "flag"
    """How R12 rings are closed: by the closed flag or `repeat`, by the first point again."""
    insunits: int | None = None
    """What the header says the unit is; None says the truth."""
