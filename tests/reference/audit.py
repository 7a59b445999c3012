"""Audits an overlay: no error and no fix beyond the source's own, and the source's entities stand.

usage: audit.py SOURCE OVERLAY
"""

import sys

from ezdxf import recover


def read(path):
    doc, auditor = recover.readfile(path)
    return doc, [str(e.code) for e in auditor.errors], [str(e.code) for e in auditor.fixes]


source, own_errors, own_fixes = read(sys.argv[1])
overlay, errors, fixes = read(sys.argv[2])
ours = [e for e in overlay.modelspace() if e.dxf.layer.startswith("Z-ELEV-")]
kept = len(overlay.modelspace()) - len(ours)
problems = []
if len(errors) > len(own_errors):
    problems.append(f"errors {errors}")
if len(fixes) > len(own_fixes):
    problems.append(f"fixes {fixes}")
if kept != len(source.modelspace()):
    problems.append(f"{kept} entities of {len(source.modelspace())} stand")
if len(ours) < 20:
    problems.append(f"only {len(ours)} entities of the overlay")
handles = [e.dxf.handle for e in overlay.entitydb.values() if e.dxf.hasattr("handle")]
if len(handles) != len(set(handles)):
    problems.append("a handle stands twice")
print("; ".join(problems) or f"ok {len(ours)}")
