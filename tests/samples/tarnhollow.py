"""Tarnhollow House: an invented two-story L-shaped house on ground that falls to the rear.

Plan, inches, x to the right and y back as seen from the street. Main block 0..528 by 0..336, ridge
along x at 8 in 12. Garage wing 288..528 by -144..0 at the front, ridge along y at 6 in 12. The wing's
right side runs flush with the main block's. Heights from the first floor: eaves 216, siding's
bottom -12 at the front, -36 elsewhere, main peak 328, wing peak 276.

    C6 +--------------------------+ C5         C1 C3 C4 C5 C6 outside corners, C2 inside
       |          main            |
    C1 +------------+ C2          |
          porch     |   wing      |
                 C3 +-------------+ C4
                       street

A porch roof (3 in 12, boxed with a level ceiling) stands on the main front wall and dies into the
wing's left side: its level top meets the one, its slope cuts the other. Stone goes up to 24 in
along the front and the wing's left side and returns 24 in round C1 and C4; so at every corner
the siding starts at one height in both elevations.
"""

from __future__ import annotations

from design import Corner, Elevation, Obstacle, Opening, Roof, Sample, box

EAVE, STONE, FRONT_BASE, BASE = 216.0, 24.0, -12.0, -36.0
MAIN_PEAK, WING_PEAK = 328.0, 276.0
FASCIA, MAIN_RIDGE, WING_RIDGE = 222.0, 342.0, 288.0
"""Roof edges: 12 in overhangs, so 342 = 222 + 180 x 8/12 and 288 = 222 + 132 x 6/12."""
PORCH_EAVE, PORCH_EDGE, PORCH_TOP = 91.0, 99.0, 120.0
"""The porch's level ceiling, its fascia's top, and its top: 120 - 84 x 3/12 = 99."""
FRONT_GRADE, REAR_GRADE = -20.0, -44.0

FLOOR = "FIRST FLOOR"

TEXTURE = 6.0
"""Not the job's exposure: a texture must not be laid out from (LayoutFact::HatchIsNoLayout)."""


def window(left: float, sill: float, width: float, height: float, **more) -> Opening:
    return Opening("window", left, sill, width, height, **more)


def door(left: float, sill: float, width: float, **more) -> Opening:
    return Opening("door", left, sill, width, 80.0, **more)


def frame(right: float) -> list:
    return box(-96.0, -150.0, right + 96.0, 390.0)


def gable(left: float, bottom: float, right: float, peak: float) -> list:
    middle = (left + right) / 2
    return [(left, bottom), (right, bottom), (right, EAVE), (middle, peak), (left, EAVE)]


def front() -> Elevation:
    main, wing = box(0, FRONT_BASE, 288, EAVE), gable(288, FRONT_BASE, 528, WING_PEAK)
    stone = [
        (0, FRONT_BASE), (288, FRONT_BASE), (288, STONE), (156, STONE),
        (156, 0), (120, 0), (120, STONE), (0, STONE),
    ]
    return Elevation(
        title="FRONT ELEVATION",
        walls=[main, wing],
        level=(-60, 600),
        frame=frame(528),
        bare=[stone, box(288, FRONT_BASE, 312, STONE), box(504, FRONT_BASE, 528, STONE)],
        roofs=[
            Roof([(-12, EAVE), (276, EAVE), (276, FASCIA), (408, WING_RIDGE), (540, FASCIA),
                  (540, MAIN_RIDGE), (-12, MAIN_RIDGE)]),
            Roof([(276, EAVE), (288, EAVE), (408, WING_PEAK), (528, EAVE), (540, EAVE), (540, FASCIA),
                  (408, WING_RIDGE), (276, FASCIA)]),
            Roof(box(-12, PORCH_EAVE, 288, PORCH_TOP), covers=True),
        ],
        openings=[
            window(42, 36, 36, 48),
            door(120, 0, 36, drawn="mirrored"),
            window(192, 36, 72, 48),
            window(42, 144, 36, 48),
            window(198, 144, 60, 48),
            Opening("overhead-door", 312, FRONT_BASE, 192, 84),
            window(372, 144, 72, 48),
            window(396, 216, 24, 36, round_top=True),
        ],
        obstacles=[Obstacle("lamp", True, outline=box(100, 58, 108, 70))],
        corners=[
            Corner("C1", False, 0, 0), Corner("C2", True, 288, 0, marked=True),
            Corner("C3", False, 288, 1), Corner("C4", False, 528, 1),
        ],
        grade=[(-60, FRONT_GRADE), (276, FRONT_GRADE), (300, -13), (516, -13), (540, FRONT_GRADE),
               (588, FRONT_GRADE)],
        trims=[
            [(-12, PORCH_EDGE), (288, PORCH_EDGE)],
            [(-4, -12), (-4, PORCH_EAVE)], [(4, STONE), (4, PORCH_EAVE)],
            [(-12, FASCIA), (276, FASCIA)],
            [(108, -6), (168, -6)], [(108, -12), (168, -12)],
            [(0, 208), (288, 208)],
        ],
        dashed=[[(0, -20), (0, -68), (528, -68), (528, -20)]],
        dims=[((0, -72), (288, -72), 20), ((288, -72), (528, -72), 20), ((0, -72), (528, -72), 38),
              ((-20, 0), (-20, 216), 30)],
        slopes=[((470, 278), 6)],
        notes=[((545, 4), FLOOR), ((30, 300), "SHINGLE ROOF"), ((190, 6), "STONE TO 2'-0\"")],
        texture=TEXTURE,
    )


def right() -> Elevation:
    wall = [(0, BASE), (480, BASE), (480, EAVE), (312, MAIN_PEAK), (144, EAVE), (0, EAVE)]
    return Elevation(
        title="RIGHT ELEVATION",
        walls=[wall],
        level=(-60, 552),
        frame=frame(480),
        bare=[box(0, BASE, 24, STONE)],
        roofs=[
            Roof([(144, EAVE), (312, MAIN_PEAK), (480, EAVE), (492, EAVE), (492, FASCIA),
                  (312, MAIN_RIDGE), (132, FASCIA)]),
            Roof([(-12, EAVE), (144, EAVE), (132, FASCIA), (231, WING_RIDGE), (-12, WING_RIDGE)]),
        ],
        openings=[
            window(54, 48, 36, 36, drawn="loop"),
            window(240, 36, 48, 48),
            window(297, 144, 30, 48),
        ],
        obstacles=[Obstacle("vent", False, circle=(384, 10, 4))],
        corners=[Corner("C4", False, 0, 0), Corner("C5", False, 480, 0)],
        grade=[(-60, FRONT_GRADE), (0, FRONT_GRADE), (480, REAR_GRADE), (540, REAR_GRADE)],
        trims=[[(-12, FASCIA), (132, FASCIA)]],
        dashed=[[(0, -20), (0, -92), (480, -92), (480, REAR_GRADE)]],
        dims=[((0, -96), (144, -96), 16), ((144, -96), (480, -96), 16), ((-20, 0), (-20, 216), 30)],
        slopes=[((420, 280), 8)],
        notes=[((497, 4), FLOOR), ((150, -64), "GRADE FALLS 2'-0\"")],
        texture=TEXTURE,
    )


def rear() -> Elevation:
    return Elevation(
        title="REAR ELEVATION",
        walls=[box(0, BASE, 528, EAVE)],
        level=(-60, 600),
        frame=frame(528),
        roofs=[Roof(box(-12, EAVE, 540, MAIN_RIDGE))],
        openings=[
            door(108, 0, 72),
            window(264, 36, 60, 48),
            window(432, 48, 30, 36),
            window(60, 144, 36, 48),
            window(432, 144, 32, 48),
        ],
        obstacles=[Obstacle("hose tap", True, outline=box(216, -16, 222, -8), block="TAP-0608")],
        corners=[Corner("C5", False, 0, 0), Corner("C6", False, 528, 0)],
        grade=[(-60, REAR_GRADE), (588, REAR_GRADE)],
        trims=[
            [(-12, FASCIA), (540, FASCIA)], [(0, 208), (528, 208)],
            [(96, -2), (192, -2)], [(96, -8), (96, -2)], [(192, -8), (192, -2)], [(96, -8), (192, -8)],
        ],
        dashed=[[(0, REAR_GRADE), (0, -92), (528, -92), (528, REAR_GRADE)]],
        dims=[((0, -96), (528, -96), 16), ((-20, 0), (-20, 216), 30)],
        notes=[((545, 4), FLOOR), ((30, 300), "SHINGLE ROOF")],
        texture=TEXTURE,
    )


def left() -> Elevation:
    return Elevation(
        title="LEFT ELEVATION",
        walls=[gable(0, BASE, 336, MAIN_PEAK), box(336, FRONT_BASE, 480, EAVE)],
        level=(-60, 552),
        frame=frame(480),
        bare=[box(312, BASE, 336, STONE), box(336, FRONT_BASE, 480, STONE)],
        roofs=[
            Roof([(-12, EAVE), (0, EAVE), (168, MAIN_PEAK), (336, EAVE), (348, EAVE), (348, FASCIA),
                  (168, MAIN_RIDGE), (-12, FASCIA)]),
            Roof([(348, EAVE), (492, EAVE), (492, WING_RIDGE), (249, WING_RIDGE), (348, FASCIA)]),
            Roof([(336, PORCH_EAVE), (420, PORCH_EAVE), (420, PORCH_EDGE), (336, PORCH_TOP)], covers=True),
        ],
        openings=[
            window(60, 36, 36, 48),
            window(210, 36, 36, 60),
            window(153, 144, 30, 48),
            window(438, 144, 24, 36),
        ],
        corners=[
            Corner("C6", False, 0, 0), Corner("C1", False, 336, 0),
            Corner("C2", True, 336, 1, marked=True), Corner("C3", False, 480, 1),
        ],
        grade=[(-60, REAR_GRADE), (0, REAR_GRADE), (336, FRONT_GRADE), (540, FRONT_GRADE)],
        trims=[
            [(400, -12), (400, PORCH_EAVE)], [(408, -12), (408, PORCH_EAVE)],
            [(348, FASCIA), (492, FASCIA)],
        ],
        dashed=[[(0, REAR_GRADE), (0, -92), (480, -92), (480, FRONT_GRADE)]],
        dims=[((0, -96), (336, -96), 16), ((336, -96), (480, -96), 16), ((-20, 0), (-20, 216), 30)],
        slopes=[((36, 280), 8)],
        notes=[((497, 4), FLOOR), ((120, -64), "GRADE FALLS 2'-0\"")],
        texture=TEXTURE,
    )


def sample() -> Sample:
    elevations, x = [front(), right(), rear(), left()], 120.0
    for e in elevations:
        e.origin = (x + 96.0, 600.0)
        x += max(p[0] for p in e.frame) + 96.0 + 72.0
    return Sample(
        stem="tarnhollow",
        about="Four elevations of an L-shaped house in one model space",
        version="R2010",
        unit="inch",
        elevations=elevations,
        job={
            "title": {
                "project": "Tarnhollow House",
                "client": "M. Sandling and R. Teale",
                "address": "14 Tern Lane, Wadersby",
                "number": "2611-A",
                "date": "2026-11-25",
                "drawn_by": "Curlew Row Drawing Office",
            },
        },
    )
