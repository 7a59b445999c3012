"""The job file beside a sample: TOML with a comment on every line."""

from __future__ import annotations

from design import Sample

COMMENTS = {
    "project": "shown in the title block of every sheet",
    "client": "who it is for",
    "address": "where it stands",
    "number": "job number",
    "date": "date on the sheets; nothing is dated by the clock",
    "drawn_by": "who answers for the drawing",
}


def text_of(sample: Sample) -> str:
    lines = [f"# Job file of {sample.stem}.dxf. Everybody and everything named here is invented.", ""]
    lines += ["[title]  # what the sheets say about the job"]
    for key, comment in COMMENTS.items():
        lines.append(f'{key} = "{sample.job["title"][key]}"  # {comment}')
    lines += [
        "",
        "[product]  # the panel, inches; the maker's instructions say what yours is",
        "exposure = 8.0  # height of one course on the wall: a double 4",
        "length = 150.0  # stock panel, 12 ft 6 in",
        "lap = 1.25  # vinyl over vinyl at a seam: foam stops 5/8 short of both factory ends",
        "carton = 24  # panels in a carton: 24 x 12 ft 6 in x 8 in = 2 squares",
        "",
        "[weather]  # on the day of the work",
        "below_40f = false  # true leaves 3/8 in at each panel end instead of 1/4",
    ]
    return "\n".join(lines) + "\n"
