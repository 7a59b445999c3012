"""Draws every sample: `draw.py [--drawings DIR] [--expected FILE]`.

Needs the packages of tests/reference/requirements.txt. Writes the same bytes on every run.
"""

from __future__ import annotations

import argparse
import json
import logging
from pathlib import Path

import cad
import heronsgate
import job
import small
import truth

HERE = Path(__file__).resolve().parent
ROOT = HERE.parent.parent


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--drawings", type=Path, default=ROOT / "sample-drawings")
    parser.add_argument("--expected", type=Path, default=HERE / "expected.json")
    parser.add_argument("--jobs", action="store_true", help="write the job files too, over what is there")
    args = parser.parse_args()
    logging.getLogger("ezdxf").setLevel(logging.ERROR)
    args.drawings.mkdir(parents=True, exist_ok=True)
    expected: dict = {"_about": truth.ABOUT, "samples": {}}
    for sample in [heronsgate.sample(), *small.samples()]:
        known = truth.sample_truth(sample)
        truth.assert_corners_meet(sample.stem, known)
        expected["samples"][sample.stem] = known
        (args.drawings / f"{sample.stem}.dxf").write_bytes(cad.draw(sample))
        if args.jobs:
            write_text(args.drawings / f"{sample.stem}.toml", job.text_of(sample))
    write_text(args.expected, json.dumps(expected, indent=1) + "\n")


def write_text(path: Path, content: str) -> None:
    path.write_bytes(content.encode("utf-8"))


if __name__ == "__main__":
    main()
