"""Audits an overlay: no error and no fix beyond the source's own, and the source's entities stand; read
strictly, it is taken wherever the source is, with no more faults.

usage: audit.py SOURCE OVERLAY
"""

import sys

import ezdxf
from ezdxf import recover


def read(path):
    doc, auditor = recover.readfile(path)
    return doc, [str(e.code) for e in auditor.errors], [str(e.code) for e in auditor.fixes]


def strictly(path):
    """How many faults the audit of a strict reading finds; None where the file is refused."""
    try:
        auditor = ezdxf.readfile(path).audit()
    except (ezdxf.DXFError, OSError):
        return None
    return len(auditor.errors) + len(auditor.fixes)


source, own_errors, own_fixes = read(sys.argv[1])
overlay, errors, fixes = read(sys.argv[2])
own_faults, faults = strictly(sys.argv[1]), strictly(sys.argv[2])
ours = [e for e in overlay.modelspace() if e.dxf.layer.startswith("Z-ELEV-")]
kept = len(overlay.modelspace()) - len(ours)
problems = []
if len(errors) > len(own_errors):
    problems.append(f"errors {errors}")
if len(fixes) > len(own_fixes):
    problems.append(f"fixes {fixes}")
# A source without an end is refused; its overlay has one.
if faults is None or faults > (own_faults or 0):
    problems.append(f"read strictly {faults} faults, the source has {own_faults}")
if kept != len(source.modelspace()):
    problems.append(f"{kept} entities of {len(source.modelspace())} stand")
if len(ours) < 20:
    problems.append(f"only {len(ours)} entities of the overlay")
for d in (e for e in ours if e.dxftype() == "DIMENSION"):
    block = overlay.blocks.get(d.dxf.geometry)
    if block is None or not any(e.dxftype() == "TEXT" for e in block):
        problems.append(f"dimension {d.dxf.handle} shows nothing")
    if d.dxf.dimstyle not in overlay.dimstyles:
        problems.append(f"no dimension style {d.dxf.dimstyle}")
marks = [a for e in ours if e.dxftype() == "INSERT" for a in e.attribs if a.dxf.tag == "MARK"]
if not marks or len({a.dxf.text for a in marks}) != len(marks):
    problems.append(f"{len(marks)} marks, not all different")
handles = [e.dxf.handle for e in overlay.entitydb.values() if e.dxf.hasattr("handle")]
if len(handles) != len(set(handles)):
    problems.append("a handle stands twice")
print("; ".join(problems) or f"ok {len(ours)}")
