"""One-question drawings: each asks a reader one thing, with a figure from outside the project."""

from __future__ import annotations

from design import Elevation, Opening, Sample, box


def titled(project: str, number: str) -> dict:
    return {
        "title": {
            "project": project,
            "client": "Plover Bank Joinery",
            "address": "Plot 6, Dunlin Rise, Wadersby",
            "number": number,
            "date": "2026-11-25",
            "drawn_by": "Curlew Row Drawing Office",
        },
    }


def one_wall() -> Sample:
    wall = Elevation(
        title=None, walls=[box(0, 0, 300, 96)], level=(-24, 324), origin=(0.0, 0.0),
        dims=[((0, -4), (300, -4), 20), ((-4, 0), (-4, 96), 24)],
    )
    return Sample(
        "one-wall", "A wall 25 ft 0 in by 8 ft 0 in: two 12 ft 6 in panels fall half an inch short "
        "(own check value), and 8 in courses fill it exactly (a siding shop's measuring page)",
        "R2010", "inch", [wall], titled("One wall", "S-01"),
    )


def one_gable() -> Sample:
    gable = Elevation(
        title=None, walls=[[(0, 0), (288, 0), (144, 48)]], level=(-24, 312), origin=(1000.0, 500.0),
        dims=[((0, -4), (288, -4), 20)], slopes=[((228, 36), 4)],
    )
    return Sample(
        "one-gable", "A gable triangle, span 24 ft at 4 in 12: rise 48 in, 48 sq ft, six 8 in courses "
        "(own check value; rafter 12.649 in a foot, framing-square table)",
        "R2010", "inch", [gable], titled("One gable", "S-02"),
    )


def one_window() -> Sample:
    wall = Elevation(
        title="FRONT ELEVATION", walls=[box(0, 0, 240, 120)], level=(-24, 264), origin=(60.0, 120.0),
        frame=box(-60, -72, 300, 168), openings=[Opening("window", 96, 36, 48, 48)],
        dims=[((0, -4), (240, -4), 20), ((96, 36), (96, 84), 30)],
    )
    return Sample(
        "one-window", "A 4040 window with its sill at 36 in and head at 84 in: both fall on 8 in "
        "course lines when the datum moves by 4 in (own check value)",
        "R2010", "inch", [wall], titled("One window", "S-03"),
    )


def metric() -> Sample:
    def mm(*values: float) -> list[float]:
        return [v / 25.4 for v in values]

    width, eave, peak, below = mm(8400, 2440, 2440 + 1750, -300)
    left, sill, wide, high = mm(2400, 900, 1200, 1200)
    door_left, door_wide, door_high = mm(5600, 900, 2040)
    wall = Elevation(
        title="FRONT ELEVATION",
        walls=[[(0, below), (width, below), (width, eave), (width / 2, peak), (0, eave)]],
        level=(mm(-600)[0], mm(9000)[0]), origin=(2000.0, 3000.0),
        frame=box(*mm(-1500, -2100, 9900, 5000)),
        openings=[
            Opening("window", left, sill, wide, high, block="WIN-1200X1200"),
            Opening("door", door_left, 0.0, door_wide, door_high, block="DOOR-900X2040"),
        ],
        dims=[((0, below), (width, below), mm(700)[0])],
        slopes=[((mm(6700)[0], mm(3700)[0]), 5)],
    )
    return Sample(
        "metric", "In millimetres ($INSUNITS 4): a wall 8400 wide with a gable at 5 in 12 "
        "(4200 x 5 / 12 = 1750); blocks drawn in inches and inserted at 25.4",
        "R2010", "mm", [wall], titled("Metric", "S-04"),
    )


def r12() -> Sample:
    wall = Elevation(
        title=None, walls=[[(0, -12), (192, -12), (192, 96), (96, 192), (0, 96)]],
        level=(-24, 216), origin=(24.0, 36.0),
        openings=[
            Opening("window", 84, 108, 24, 36, round_top=True),
            Opening("door", 30, 0, 36, 80),
            Opening("window", 120, 36, 36, 48, drawn="loop"),
        ],
    )
    return Sample(
        "r12", "Release 12: POLYLINEs closed by a repeated first point, no handles, no unit; a gable at "
        "12 in 12 and a round-topped window",
        "R12", "inch", [wall], titled("Release 12", "S-05"), closing="repeat",
    )


def r2018() -> Sample:
    wall = Elevation(
        title="REAR ELEVATION",
        walls=[box(0, -8, 336, 109)], level=(-24, 360), origin=(-500.0, -250.0),
        frame=box(-60, -80, 396, 170), grade=[(-36, -20), (372, -20)],
        openings=[
            Opening("window", 36, 36, 36, 48), Opening("door", 120, 0, 72, 80),
            Opening("window", 240, 48, 60, 36),
        ],
        notes=[((24, 130), "TERRASSE \u2013 C\u00d4T\u00c9 JARDIN \u00b1 0")],
    )
    return Sample(
        "r2018", "Release 2018 (AC1032): text in UTF-8, a wall west and south of the origin",
        "R2018", "inch", [wall], titled("Release 2018", "S-06"),
    )


def samples() -> list[Sample]:
    return [one_wall(), one_gable(), one_window(), metric(), r12(), r2018()]
