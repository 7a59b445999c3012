"""Saves a drawing in other versions of the format.  usage: versions.py DRAWING OUTDIR"""

import sys
from pathlib import Path

import ezdxf
from ezdxf.addons import r12export

doc = ezdxf.readfile(sys.argv[1])
out = Path(sys.argv[2])
for version in ("R2000", "R2010", "R2018"):
    doc.dxfversion = version
    doc.saveas(out / f"{version}.dxf")
r12export.saveas(ezdxf.readfile(sys.argv[1]), out / "R12.dxf")
