"""Counts model space by type and layer, as the program means them.  usage: census.py DRAWING

DIMENSION and HATCH are counted as they stand; what is inserted is counted as one INSERT.
"""

import json
import sys
from collections import Counter

import ezdxf

doc = ezdxf.readfile(sys.argv[1])
names = {layer.dxf.name.upper(): layer.dxf.name for layer in doc.layers}
count = Counter(f"{e.dxftype()} {names.get(e.dxf.layer.upper(), e.dxf.layer)}" for e in doc.modelspace())
print(json.dumps(count))
