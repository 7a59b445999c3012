"""The PDF read back: a page a sheet, every piece mark as text.  usage: pdf_text.py PDF LAYOUT.JSON"""

import json
import sys

from pypdf import PdfReader

reader = PdfReader(sys.argv[1])
layout = json.load(open(sys.argv[2]))
text = "\n".join(page.extract_text() for page in reader.pages)
words = set(text.split())
# Neighbors on a line, a mark and a height, are run together there, but not where places are kept.
for page in reader.pages:
    words.update(page.extract_text(extraction_mode="layout").split())
problems = []
marks = [p["mark"].split("-", 1)[1] for e in layout["elevations"] for w in e["walls"] for c in w["courses"] for r in c["runs"] for p in r["pieces"]]
missing = [m for m in marks if m not in words]
if missing:
    problems.append(f"marks not found: {missing[:10]}")
if len(reader.outline) != len(reader.pages):
    problems.append(f"{len(reader.outline)} bookmarks for {len(reader.pages)} pages")
if len(set(reader.page_labels)) != len(reader.pages) or reader.page_labels[0] != "01-cover":
    problems.append(f"page labels {reader.page_labels[:4]}")
about = reader.metadata
if not (about.title and about.subject and about.creator == "Lapwright"):
    problems.append(f"properties {about}")
if "override every figure" not in text:
    problems.append("no word of the maker's instructions")
fonts = {str(f.get_object()["/BaseFont"]) for p in reader.pages for f in p["/Resources"]["/Font"].values()}
if not fonts or any("Lapwright" not in f for f in fonts):
    problems.append(f"fonts {fonts}")
print("; ".join(problems) or "ok")
