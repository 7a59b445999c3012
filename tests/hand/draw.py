"""Writes the three drawings beside it: closed polylines of whole inches as plain R12 DXF."""

from pathlib import Path


def rect(x0, y0, x1, y1):
    return [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]


DRAWINGS = {
    "a-window": [
        ("A-WALL-OTLN", 1, rect(0, 0, 144, 100)),
        ("A-GLAZ", 1, rect(54, 30, 90, 78)),
    ],
    "b-gable": [
        ("A-WALL-OTLN", 1, [(0, 0), (288, 0), (288, 40), (144, 88), (0, 40)]),
    ],
    "c-step": [
        ("A-WALL-OTLN", 1, rect(0, 0, 144, 96)),
        ("A-DOOR", 1, rect(98, 4, 134, 84)),
        ("A-ELEV-OBST", 1, rect(40, 42, 46, 46)),
        ("C-TOPO-PROF", 0, [(-12, -8), (72, -8), (72, 1), (156, 1)]),
    ],
}


def dxf(shapes):
    out = ["0", "SECTION", "2", "ENTITIES"]
    for layer, closed, points in shapes:
        out += ["0", "POLYLINE", "8", layer, "66", "1", "70", str(closed)]
        for x, y in points:
            out += ["0", "VERTEX", "8", layer, "10", f"{x:.1f}", "20", f"{y:.1f}"]
        out += ["0", "SEQEND"]
    return "\n".join([*out, "0", "ENDSEC", "0", "EOF", ""])


if __name__ == "__main__":
    for name, shapes in DRAWINGS.items():
        (Path(__file__).parent / f"{name}.dxf").write_text(dxf(shapes))
