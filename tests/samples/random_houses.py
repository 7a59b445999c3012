"""Draws random houses: `random_houses.py OUTDIR --first SEED --count N`.

For each seed: house-SEED.dxf, drawn with ezdxf on the drawing convention; house-SEED.toml, its job
file; house-SEED.json, what is true of it (its `_about` says how to read it) and the habits it was
drawn with. The same seed gives the same bytes.
"""

from __future__ import annotations

import argparse
import json
import logging
from pathlib import Path

from ezdxf import options

import cad
import furnish
import habits
import shells
import truth
from design import INCHES, Elevation, Sample, box
from dice import Dice
from untidy import UntidyPen


def house(seed: int) -> tuple[Sample, habits.Habits, str]:
    """A design, the habits it is drawn with, and its job file."""
    dice = Dice(seed)
    metric = dice.chance(0.4)
    step = 1 / 25.4 if metric else dice.pick([1.0, 0.5, 1 / 16])
    m = shells.measures(dice, step)
    whole = dice.chance(0.6)
    level = whole or dice.chance(0.6)
    if not level:
        m.eave, m.base = m.eave - m.base, 0.0  # without a level line the lowest wall point is 0
    views = shells.house(dice, m) if whole else [shells.row(dice, m)]
    for view in views:
        furnish.furnish(dice, view, m, metric)
        if not level:
            view.level = None
    if dice.chance(0.6):
        furnish.add_grade(dice, views, m)
    h = habits.habits(dice, len(views), level)
    arrange(dice, views, h)
    about = f"Random house {seed}"
    sample = Sample(f"house-{seed:05}", about, h.version, h.unit, views, {}, insunits=h.insunits)
    return sample, h, habits.job_file(h, seed, dice)


def arrange(dice: Dice, views: list[Elevation], h: habits.Habits) -> None:
    """Places the views side by side in drawing units, with frames and titles as the habit is."""
    unit = 1 / INCHES[h.unit]
    x, y = dice.whole(-2000, 2000), dice.whole(-2000, 2000)
    rise = 0 if dice.chance(0.6) else 40
    for view in views:
        points = [p for w in [*view.walls, *view.bare, *[r.outline for r in view.roofs]] for p in w]
        low = min(min(p[1] for p in points), *[p[1] for p in view.grade], 0.0)
        left, right, top = min(p[0] for p in points), max(p[0] for p in points), max(p[1] for p in points)
        view.texture = h.texture
        if h.views == "bare":
            view.title = None
        elif h.views == "framed":
            view.frame = box(left - 90, low - 100, right + 90, top + 60)
            view.title_at = (left, low - 80)
        else:
            view.title_at = ((left + right) / 2 - 60, low - 60)
        if view.grade or dice.chance(0.5):
            view.dims = [((left, low - 12), (right, low - 12), 14)]
        view.origin = (round((x - left) * unit, 6), round((y + dice.whole(0, rise)) * unit, 6))
        x += right - left + 300
        y += dice.whole(0, rise)


def draw(sample: Sample, h: habits.Habits, seed: int, binary: bool) -> bytes:
    options.write_fixed_meta_data_for_testing = True
    dice = Dice(seed + 1_000_000)
    doc = cad.new_document(sample, h.names)
    for view in sample.elevations:
        pen = UntidyPen(doc, sample, view, h, dice)
        cad.draw_elevation(pen, view)
        pen.leave_dirt(view)
    cad.set_extents(doc, sample)
    if binary:
        return cad.bytes_of(doc, binary=True)
    text = cad.bytes_of(doc)
    return text.replace(b"\n", b"\r\n") if h.crlf else text


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("outdir", type=Path)
    parser.add_argument("--first", type=int, default=1, help="first seed")
    parser.add_argument("--count", type=int, default=50, help="how many houses")
    parser.add_argument("--binary", action="store_true", help="write binary DXF")
    args = parser.parse_args()
    logging.getLogger("ezdxf").setLevel(logging.ERROR)
    args.outdir.mkdir(parents=True, exist_ok=True)
    for seed in range(args.first, args.first + args.count):
        sample, h, job = house(seed)
        known = {"_about": truth.ABOUT, "seed": seed, "habits": h.said(), **truth.sample_truth(sample)}
        path = args.outdir / sample.stem
        path.with_suffix(".dxf").write_bytes(draw(sample, h, seed, args.binary))
        path.with_suffix(".toml").write_bytes(job.encode("utf-8"))
        path.with_suffix(".json").write_bytes((json.dumps(known, indent=1) + "\n").encode("utf-8"))
    print(f"{args.count} houses from seed {args.first}")


if __name__ == "__main__":
    main()
