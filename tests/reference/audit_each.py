"""Loads DXF files strictly with ezdxf and audits them: `audit_each.py FILE...`.

Prints one JSON object: {file name: {"errors": [...], "fixes": [...], "entities": n}}. A file that
ezdxf refuses to load has its message as its one error.
"""

import json
import logging
import sys
from pathlib import Path

import ezdxf


def findings(path: Path) -> dict:
    try:
        doc = ezdxf.readfile(path)
    except (OSError, ezdxf.DXFError) as error:
        return {"errors": [f"not loaded: {error}"], "fixes": [], "entities": 0}
    auditor = doc.audit()
    return {
        "errors": [e.message for e in auditor.errors],
        "fixes": [e.message for e in auditor.fixes],
        "entities": len(doc.modelspace()),
    }


if __name__ == "__main__":
    logging.getLogger("ezdxf").setLevel(logging.ERROR)
    print(json.dumps({Path(p).name: findings(Path(p)) for p in sys.argv[1:]}, indent=1))
