"""The overlay on a PDF read back by pypdf: the source's bytes first, layers listed and shown, the pages'
own content still there, and strokes drawn.  usage: pdf_layers.py SOURCE OVERLAY"""

import sys

from pypdf import PdfReader

source, overlay = (open(p, "rb").read() for p in sys.argv[1:3])
problems = []
if not overlay.startswith(source):
    problems.append("the source's bytes are not first")
before, after = (PdfReader(p, strict=True) for p in sys.argv[1:3])
properties = after.trailer["/Root"]["/OCProperties"]
names = [str(g.get_object()["/Name"]) for g in properties["/OCGs"]]
if "Z-ELEV-OTLN" not in names or "Z-ELEV-CRSE" not in names:
    problems.append(f"layers {names}")
order = [str(g.get_object()["/Name"]) for g in properties["/D"]["/Order"] if hasattr(g, "get_object")]
if not set(n for n in names if n.startswith("Z-")) <= set(order):
    problems.append(f"listed {order}")
if len(before.pages) != len(after.pages):
    problems.append("another count of pages")
drawn = 0
for old, new in zip(before.pages, after.pages):
    if old.mediabox != new.mediabox or old.rotation != new.rotation:
        problems.append("a page of another size or turn")
    if old.extract_text() not in new.extract_text() and not old.extract_text() == new.extract_text():
        if not set(old.extract_text().split()) <= set(new.extract_text().split()):
            problems.append("words of a page are gone")
    forms = new["/Resources"].get("/XObject", {})
    if "/LwOverlay" in forms:
        content = forms["/LwOverlay"].get_object().get_data()
        drawn += content.count(b"S\n") + content.count(b"s\n")
        if content.count(b"BDC") != content.count(b"EMC"):
            problems.append("layers that do not end")
if drawn < 20:
    problems.append(f"only {drawn} strokes")
print("; ".join(problems) or "ok")
