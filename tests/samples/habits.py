"""Habits of the people who draw: units and what the header says of them, layer names, views, how
outlines are put together, and dirt. A habit changes how a house is drawn, never what is true of it."""

from __future__ import annotations

from dataclasses import asdict, dataclass, field

import cad
from design import INSUNITS
from dice import Dice

VERSIONS = ["R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018"]

ROLES = {
    "wall": cad.WALL, "bare": cad.BARE, "window": cad.WINDOW, "door": cad.DOOR, "roof": cad.ROOF,
    "mounting-block": cad.MOUNT, "obstacle": cad.OBSTACLE, "level": cad.LEVEL, "grade": cad.GRADE,
    "inside-corner": cad.INSIDE, "corner-tag": cad.TAG, "frame": cad.FRAME, "title": cad.TITLE,
    "texture": cad.TEXTURE, "dimension": cad.DIMS,
}
"""Role and its agreed layer."""

OFFICE = {
    "wall": ("EXT_WALL_FACE", "ext_wall*"), "bare": ("EXT_STONE", "*stone"),
    "window": ("OPEN_WIN", "open_win"), "door": ("OPEN_DR", "OPEN_D?"), "roof": ("ROOF_EDGE", "roof_edge"),
    "mounting-block": ("FIX_BLOCK", "fix_block"), "obstacle": ("FIX_FLAT", "fix_flat"),
    "level": ("LINE_FLOOR", "*_floor"), "grade": ("LINE_EARTH", "line_earth"),
    "inside-corner": ("MARK_IN", "mark_in"), "corner-tag": ("MARK_TAG", "mark_tag"),
    "frame": ("VIEW_BOX", "view_box"), "title": ("VIEW_NAME", "view_name"),
    "texture": ("LOOKS", "looks"), "dimension": ("SIZES", "sizes"),
}
"""An office's own names, and the pattern its job file has for each."""

GERMAN = {
    "wall": "AUSSENWAND", "bare": "NATURSTEIN", "window": "FENSTER", "door": "T\u00dcREN", "roof": "DACHRAND",
    "mounting-block": "SOCKELPLATTE", "obstacle": "EINBAUTEN", "level": "H\u00d6HENLINIE", "grade": "GEL\u00c4NDE",
    "inside-corner": "INNENECKE", "corner-tag": "ECKE_NR", "frame": "RAHMEN", "title": "ANSICHT",
    "texture": "SCHRAFFUR", "dimension": "BEMASSUNG",
}


@dataclass
class Habits:
    """How one drawing is made."""

    version: str
    unit: str
    header: str
    """`right`, `absent` (none or code 0) or `wrong`."""
    insunits: int
    job_unit: str | None
    """What the job file says the unit is."""
    layers: str
    """`agreed`, `lower`, `bound`, `office`, `numbers` or `german`."""
    names: dict[str, str]
    """Layer names used, by agreed name."""
    layer_map: dict[str, list[str]]
    """The job file's patterns by role."""
    views: str
    """`framed`, `titled` (titles below the walls) or `bare`."""
    crlf: bool
    native_blocks: bool
    """Blocks are in drawing units rather than inserted scaled."""
    texture: float | None
    chains: bool
    """Wall outlines may be LINEs or open POLYLINEs that meet."""
    dirt: list[str] = field(default_factory=list)
    """`twice` (exact duplicates), `zero` (lines of no length), `ajar` (ends up to 0.001 in apart),
    `extra` (vertices along straight sides), `again` (a vertex twice), `flipped` (drawn from behind),
    `far` (a stray line far off), `hidden` (an old wall on a frozen layer), `unmapped` (lines on a
    layer without a role)."""

    def said(self) -> dict:
        """For the truth file: what to know when a house fails."""
        known = asdict(self)
        del known["names"]
        return known


def habits(dice: Dice, views: int, level: bool) -> Habits:
    version = dice.pick(VERSIONS)
    unit = dice.weighted([("inch", 9), ("mm", 4), ("foot", 3), ("m", 2), ("cm", 2)])
    header = "absent" if version == "R12" else dice.weighted([("right", 6), ("absent", 2), ("wrong", 2)])
    insunits = INSUNITS[unit] if header == "right" else 0
    if header == "wrong":
        insunits = dice.pick([code for code in (1, 2, 4, 5, 6) if code != INSUNITS[unit]])
    told = header == "wrong" or (header == "absent" and (unit != "inch" or dice.chance(0.5)))
    layers, names, layer_map = layer_names(dice, version)
    dirt = [d for d in DIRT if dice.chance(0.3)] if dice.chance(0.75) else []
    if layers != "office" and "hidden" in dirt:
        dirt.remove("hidden")
    return Habits(
        version, unit, header, insunits, unit if told else None, layers, names, layer_map,
        views=dice.pick(["framed", "titled"] if views > 1 else ["framed", "titled", "bare"]),
        crlf=dice.chance(0.3),
        native_blocks=dice.chance(0.3),
        texture=dice.pick([4.0, 5.5, 6.0]) if version != "R12" and dice.chance(0.3) else None,
        chains=dice.chance(0.5),
        dirt=dirt,
    )


DIRT = ["twice", "zero", "ajar", "extra", "again", "flipped", "far", "hidden", "unmapped"]


def layer_names(dice: Dice, version: str) -> tuple[str, dict[str, str], dict[str, list[str]]]:
    """The habit's name, layer names by agreed name, and the job file's map."""
    styles = ["agreed", "lower", "bound", "office", "numbers"] + (["german"] if version != "R12" else [])
    style = dice.pick(styles)
    if style == "agreed":
        return style, {}, {}
    if style == "lower":
        return style, {name: name.lower() for name in cad.LAYERS}, {}
    if style == "bound":
        prefix = dice.pick(["site$0$", "plan-b$0$", "SET_3$12$"])
        return style, {name: prefix + name for name in cad.LAYERS}, {}
    if style == "office":
        own = {role: name for role, (name, _) in OFFICE.items()}
        patterns = {role: [pattern] for role, (_, pattern) in OFFICE.items()}
    elif style == "numbers":
        own = {role: str(10 + k) for k, role in enumerate(ROLES)}
        patterns = {role: [name] for role, name in own.items()}
    else:
        own = GERMAN
        patterns = {role: [name.lower()] for role, name in own.items()}
    return style, {ROLES[role]: name for role, name in own.items()}, patterns


def job_file(h: Habits, seed: int, dice: Dice) -> str:
    """The job file of a random house."""
    lines = ["[title]", f'project = "Random house {seed}"', ""]
    exposure, length = dice.pick([6, 7, 8, 9, 10, 12]), dice.pick([144, 145, 150, 200, 240])
    lines += ["[product]", f"exposure = {exposure}", f"length = {length}", ""]
    lines += ["[weather]", f"below_40f = {str(dice.chance(0.3)).lower()}", ""]
    if h.job_unit:
        lines += ["[drawing]", f'unit = "{h.job_unit}"', ""]
    if h.layer_map:
        lines += ["[layers]"]
        for role, patterns in h.layer_map.items():
            quoted = ", ".join(f'"{p}"' for p in patterns)
            lines.append(f"{role} = [{quoted}]")
        lines.append("")
    return "\n".join(lines)
