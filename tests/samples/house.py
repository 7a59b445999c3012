"""Curlew Cottage, the invented sample house: an L-shaped house with a garage wing.

Plan, seen from above, north up (all lengths inches; the level line is y = 0):

    main block 576 wide (48 ft) and 336 deep (28 ft), ridge left to right, 8 in 12;
    a garage wing 288 wide (24 ft) stands 144 (12 ft) out of its front, at the right, ridge front
    to back, 6 in 12. The wing's right side is flush with the main block's.

Walls stand from -8 to the soffit at 108. Every number below is this design's own.
"""

BOTTOM, SOFFIT = -8.0, 108.0
MAIN_W, MAIN_D, WING_W, WING_D = 576.0, 336.0, 288.0, 144.0
MAIN_PITCH, WING_PITCH = 8.0, 6.0
RIDGE = SOFFIT + MAIN_D / 2 * MAIN_PITCH / 12  # 220
WING_RIDGE = SOFFIT + WING_W / 2 * WING_PITCH / 12  # 180
SIDE_W = WING_D + MAIN_D  # 480


def box(x0, y0, x1, y1):
    return [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]


def window(call, x, head):
    """A window by its call size: feet and inches of width, then of height (3040 = 3-0 x 4-0)."""
    w = int(call[0]) * 12 + int(call[1])
    h = int(call[2]) * 12 + int(call[3])
    return {"block": f"WINDOW-{call}", "kind": "window", "w": w, "h": h, "x": x, "sill": head - h}


def door(call, x, sill, kind="door"):
    w = int(call[:-2][:-1]) * 12 + int(call[:-2][-1]) if len(call) == 5 else int(call[0]) * 12 + int(call[1])
    h = int(call[-2]) * 12 + int(call[-1])
    return {"block": f"{'OVERHEAD' if kind == 'overhead-door' else 'DOOR'}-{call}", "kind": kind,
            "w": w, "h": h, "x": x, "sill": sill}


FRONT = {
    "title": "FRONT ELEVATION",
    "walls": [
        box(0, BOTTOM, WING_W, SOFFIT),
        [(WING_W, BOTTOM), (MAIN_W, BOTTOM), (MAIN_W, SOFFIT), (WING_W + WING_W / 2, WING_RIDGE), (WING_W, SOFFIT)],
    ],
    # A stone base along the main front, open at the entry door.
    "bare": [[(0, BOTTOM), (288, BOTTOM), (288, 28), (186, 28), (186, 0), (150, 0), (150, 28), (0, 28)]],
    # The porch roof hides a band of the main front: fascia from 84, the roof meets the wall at 100.
    "roofs": [box(102, 84, 288, 100)],
    "openings": [
        window("3040", 42, 84), door("3068", 150, 0), window("3040", 222, 84),
        door("16070", 336, BOTTOM, "overhead-door"),
        {"block": "WINDOW-ROUND-36", "kind": "window", "w": 36, "h": 42, "x": 414, "sill": 112, "round": True},
    ],
    "mounting_blocks": [box(200, 56, 206, 64), box(308, 56, 314, 64)],
    "obstacles": [],
    "inside": [(286, BOTTOM, SOFFIT)],
    "tags": [("C1", 4, -5), ("C2", 276, -5), ("C3", 292, -5), ("C4", 562, -5)],
    "grade": [(-36, -24), (288, -26), (576, -34), (612, -34)],
    "main_roof": [(-12, SOFFIT), (0, SOFFIT), (288, SOFFIT), (432, WING_RIDGE), (576, SOFFIT), (588, SOFFIT), (588, RIDGE), (-12, RIDGE)],
}
RIGHT = {
    "title": "RIGHT ELEVATION",
    "walls": [[(0, BOTTOM), (SIDE_W, BOTTOM), (SIDE_W, SOFFIT), (WING_D + MAIN_D / 2, RIDGE), (WING_D, SOFFIT), (0, SOFFIT)]],
    "bare": [], "roofs": [],
    "openings": [
        window("2640", 36, 84), door("2868", 90, 0), window("3050", 180, 84), window("3050", 264, 84),
        window("4030", 372, 84), window("2030", 300, 176),
    ],
    "mounting_blocks": [], "obstacles": [(150, 22, 2.0)],
    "inside": [], "tags": [("C4", 4, -5), ("C5", 466, -5)],
    "grade": [(-36, -34), (0, -34), (480, -10), (516, -10)],
    "main_roof": [(0, SOFFIT), (WING_D, SOFFIT), (WING_D + MAIN_D / 2, RIDGE), (SIDE_W, SOFFIT), (SIDE_W + 14, SOFFIT - 9.333333), (WING_D + MAIN_D / 2, RIDGE + 8), (WING_D, SOFFIT + 8), (0, SOFFIT + 8)],
    "no_main_roof": True,
}
REAR = {
    "title": "REAR ELEVATION",
    "walls": [box(0, BOTTOM, MAIN_W, SOFFIT)],
    "bare": [], "roofs": [],
    "openings": [
        door("6068", 96, 0), window("3040", 216, 84), window("3040", 300, 84), window("2030", 492, 84),
    ],
    "mounting_blocks": [], "obstacles": [],
    "inside": [], "tags": [("C5", 4, -5), ("C6", 562, -5)],
    "grade": [(-36, -10), (0, -10), (200, -14), (576, -20), (612, -20)],
    "main_roof": [(-12, SOFFIT), (588, SOFFIT), (588, RIDGE), (-12, RIDGE)],
}
LEFT = {
    "title": "LEFT ELEVATION",
    "walls": [
        [(0, BOTTOM), (MAIN_D, BOTTOM), (MAIN_D, SOFFIT), (MAIN_D / 2, RIDGE), (0, SOFFIT)],
        box(MAIN_D, BOTTOM, SIDE_W, SOFFIT),
    ],
    "bare": [],
    # The porch roof against the wing's left side: 2 in 12, from 100 at the main front down to 88.
    "roofs": [[(336, 100), (408, 88), (408, 84), (336, 96)]],
    "openings": [
        window("3050", 60, 84), window("3050", 216, 84), window("2030", 156, 176), window("2640", 432, 84),
    ],
    "mounting_blocks": [], "obstacles": [],
    "inside": [(338, BOTTOM, SOFFIT)],
    "tags": [("C6", 4, -5), ("C1", 322, -5), ("C2", 341, -5), ("C3", 466, -5)],
    "grade": [(-36, -20), (480, -24), (516, -24)],
    "main_roof": [(336, SOFFIT), (480, SOFFIT), (480, SOFFIT + 8), (336, SOFFIT + 8)],
}
ELEVATIONS = [FRONT, RIGHT, REAR, LEFT]
