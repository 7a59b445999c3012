"""Whether takeoff.xlsx holds what layout.json says, read with openpyxl: formulas, formats, print
set-up, and, where LibreOffice is named, what it works out of the formulas anew.

Arguments: takeoff.xlsx, layout.json, and maybe the same workbook as another program calculated it.
With `--bare`: takeoff.xlsx, and where to put it without the results of its formulas.
"""

import json
import math
import os
import sys

from openpyxl import load_workbook
from openpyxl.utils import range_boundaries


def rows(sheet):
    return [[c.value for c in r] for r in sheet.iter_rows()]


def main():
    if sys.argv[1] == "--bare":
        load_workbook(sys.argv[2]).save(sys.argv[3])
        return
    book, layout, *again = sys.argv[1:]
    with open(layout, encoding="utf-8") as f:
        layout = json.load(f)
    values = load_workbook(book, data_only=True)
    formulas = load_workbook(book)
    assert formulas.sheetnames == [
        "Summary", "Order", "Panels", "Trim", "Walls and openings", "Walls and gables", "Story pole",
        "Assumptions",
    ], formulas.sheetnames

    order = rows(values["Order"])
    head = next(i for i, r in enumerate(order) if r[0] == "Item")
    last = next(i for i, r in enumerate(order) if r[0] == "Total of the priced lines")
    listed = order[head + 1 : last]
    # Lengths are shown to the tenth of a millimeter, or the thousandth of an inch.
    scale = 25.4 if layout["job"]["sheet"]["lengths"] == "mm" else 1.0
    shown = 0.051 if scale > 1 else 0.00051
    # What a price list sells by multiples may leave no spare ones to buy; all else is the layout's.
    with open(os.path.join(os.path.dirname(sys.argv[2]), "takeoff.json"), encoding="utf-8") as f:
        takeoff = json.load(f)["lines"]
    assert len(listed) == len(takeoff) == len(layout["takeoff"])
    for line, own in zip(takeoff, layout["takeoff"]):
        assert line["id"] == own["id"] and abs(line["net"] - own["net"]) < shown, line["id"]
        # takeoff.json is rounded to four places.
        less = own["order"] - line["order"]
        spare = line["id"].startswith("spare-") and less > 0
        assert spare or abs(less) < 1e-4, line["id"]
    for line, own, r in zip(takeoff, layout["takeoff"], listed):
        assert r[0] and r[2], line["id"]
        assert abs(r[3] - own["net"]) < shown, line["id"]
        order = min(line["order"], own["order"]) if line["id"].startswith("spare-") else own["order"]
        assert abs((r[4] or 0) - order) < 1e-6, line["id"]

    panels = rows(values["Panels"])
    head = next(i for i, r in enumerate(panels) if r[0] == "Panel")
    total = next(i for i, r in enumerate(panels) if r[0] == "Total")
    pieces = [
        p
        for e in layout["elevations"]
        for w in e["walls"]
        for c in w["courses"]
        for run in c["runs"]
        for p in run["pieces"]
    ]
    listed = {r[2]: r for r in panels[head + 1 : total]}
    assert set(listed) == {p["mark"] for p in pieces}
    for p in pieces:
        # Told once for all: down to a sixteenth or a millimeter, but for 1/512 in of the grid's noise
        # (TakeoffFact::RoundedForSafety).
        marks = 16 if scale == 1 else scale
        told = math.floor((p["length"] + 1 / 512) * marks) / marks * scale
        assert abs(listed[p["mark"]][5] - told) < 1e-6, (p["mark"], listed[p["mark"]][5], told)
    assert panels[total][1] == len(layout["panels"])

    for sheet in formulas:
        # Frozen headers, one page wide, page numbers, a caution at the foot.
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        assert (sheet.page_setup.fitToWidth or 1) == 1, sheet.title
        # 11 x 17 in and A3 have some 10 in for text across, lying 16. A letter of 11 points is 7/96 in wide;
        # printed it must not fall under 7 points, the least of small print (common practice, no source).
        assert str(sheet.page_setup.paperSize) in ("3", "8"), sheet.title
        room = {"portrait": 10, "landscape": 16}[sheet.page_setup.orientation]
        area = sheet.print_area
        last = range_boundaries(area.split("!")[-1])[2] if area else sheet.max_column
        spans = [(c.min, min(c.max, last), c.width) for c in sheet.column_dimensions.values()]
        wide = sum(width * max(0, b - a + 1) for a, b, width in spans)
        assert 11 * room / (wide * 7 / 96) >= 7, (sheet.title, wide)
        assert "override" in sheet.oddFooter.left.text and sheet.oddFooter.right.text
        if sheet.title != "Summary":
            assert sheet.freeze_panes, sheet.title
            assert sheet.print_title_rows, sheet.title
            assert sheet.auto_filter.ref, sheet.title

    # Every formula has its result beside it; another program works out the same.
    seen = 0
    other = load_workbook(again[0], data_only=True) if again else values
    for sheet in formulas:
        for row in sheet.iter_rows():
            for cell in row:
                if cell.data_type != "f":
                    continue
                mine = values[sheet.title][cell.coordinate].value
                theirs = other[sheet.title][cell.coordinate].value
                assert isinstance(mine, (int, float)), (sheet.title, cell.coordinate)
                near = abs(mine - (theirs or 0)) <= 1e-6 * max(1, abs(mine))
                assert near, (sheet.title, cell.coordinate, cell.value, mine, theirs)
                seen += 1
    assert seen > 20, seen
    print(f"ok {seen}")


main()
