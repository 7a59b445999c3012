"""Draws a second set, apart from sample-drawings/: `second_set.py OUTDIR`.

A two-story house and six one-question drawings, each STEM.dxf with STEM.toml, its job file, and
STEM.json, what is true of it. The same bytes on every run.
"""

from __future__ import annotations

import argparse
import json
import logging
from pathlib import Path

import cad
import tarnhollow
import job
import small
import truth


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("outdir", type=Path)
    args = parser.parse_args()
    logging.getLogger("ezdxf").setLevel(logging.ERROR)
    args.outdir.mkdir(parents=True, exist_ok=True)
    for sample in [tarnhollow.sample(), *small.samples()]:
        known = {"_about": truth.ABOUT, **truth.sample_truth(sample)}
        truth.assert_corners_meet(sample.stem, known)
        path = args.outdir / sample.stem
        path.with_suffix(".dxf").write_bytes(cad.draw(sample))
        path.with_suffix(".toml").write_bytes(job.text_of(sample).encode("utf-8"))
        path.with_suffix(".json").write_bytes((json.dumps(known, indent=1) + "\n").encode("utf-8"))


if __name__ == "__main__":
    main()
