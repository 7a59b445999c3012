"""Names read back from every page of a PDF.  usage: pdf_names.py PDF NAMES.TXT (a name a line)"""

import sys
import unicodedata

from pypdf import PdfReader

names = open(sys.argv[2], encoding="utf-8").read().split("\n")
problems = []
for number, page in enumerate(PdfReader(sys.argv[1]).pages, 1):
    # Letters and their marks may come apart or composed: both are one text by the Unicode Standard.
    text = unicodedata.normalize("NFC", page.extract_text())
    problems += [f"page {number}: no {name!a}" for name in names if name not in text]
print("; ".join(problems[:10]) or f"ok {len(names)}")
