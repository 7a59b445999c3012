//! Words of the page that holds the program. Each has a key, by which the page asks for it.

/// What the page is called.
pub const TITLE: &str = "Lapwright: siding layout";

/// Every word, by its key.
pub fn all() -> std::collections::BTreeMap<&'static str, &'static str> {
    [HEAD.as_slice(), BOARD.as_slice(), TOOLS.as_slice(), SIDE.as_slice(), TOLD.as_slice()]
        .concat()
        .into_iter()
        .collect()
}

type Words<const N: usize> = [(&'static str, &'static str); N];

const HEAD: Words<15> = [
    ("private", "The drawing stays on this device: this page can reach no network."),
    ("open", "Drawing (DXF, DWG, SVG, PDF)"),
    ("open_job", "Job file"),
    ("undo", "Undo"),
    ("redo", "Redo"),
    ("look", "Look"),
    ("look_device", "As the device"),
    ("look_light", "Light"),
    ("look_dark", "Dark"),
    ("look_sun", "In the sun"),
    ("starting", "Starting."),
    ("progress", "How far it is"),
    ("stop", "Stop"),
    ("ready", "Choose a drawing, or drop one anywhere on the page."),
    ("no_start", "The program cannot start in this browser:"),
];
const BOARD: Words<13> = [
    ("drawing", "The drawing"),
    ("tools", "What to do on the drawing"),
    ("hint_none", ""),
    ("take", "Take it"),
    ("cancel", "Cancel"),
    (
        "canvas",
        "The drawing with walls and openings found. Arrow keys move the cross, Enter taps there, F ends a shape, Backspace takes the last point back, Escape cancels, plus and minus zoom. Everything found is listed beside it.",
    ),
    ("nearer", "Nearer"),
    ("farther", "Farther"),
    ("whole", "Whole"),
    ("next_place", "Next place to look at"),
    ("no_place", "Nothing to look at."),
    ("show", "Show"),
    ("no_wall", "No wall was found there."),
];
const TOOLS: Words<19> = [
    ("tool_look", "Look around"),
    ("tool_wall", "This is a wall"),
    ("tool_opening", "This is an opening"),
    ("tool_out", "Not siding"),
    ("tool_join", "One wall"),
    ("tool_known", "A length I know"),
    ("tool_view", "Name an elevation"),
    ("hint_look", "Drag to move, wheel or pinch to come nearer. Tap a wall for its name."),
    (
        "hint_wall",
        "Tap the corners of the wall one by one, the first again to end; two corners and F make a rectangle.",
    ),
    (
        "hint_opening",
        "Tap the corners of the opening, the first again to end; two corners and F make a rectangle.",
    ),
    ("hint_out", "Tap a wall that gets no siding."),
    ("hint_join", "Tap the walls that are one plane, then press F or double-click."),
    ("hint_known", "Tap both ends of a length you know, then say how long it is."),
    ("hint_view", "Tap two opposite corners round an elevation, then name it."),
    ("ask_length", "How long is it? (12'-6\" or 3810mm)"),
    ("ask_name", "Which elevation is it?"),
    ("too_few", "At least two corners."),
    ("too_few_walls", "At least two walls."),
    ("join_more", "Tap more, or press F to make them one."),
];
const SIDE: Words<47> = [
    ("side", "What was read, and the layout"),
    ("read", "What was read"),
    ("found", "To look at"),
    ("none", "(nothing)"),
    ("layers", "Layers"),
    ("read_as", "read as"),
    ("not_read", "not read"),
    ("settings", "Settings"),
    ("seek", "Find a setting"),
    ("as_given", "(as is usual)"),
    ("yes", "yes"),
    ("no", "no"),
    ("job", "Job file"),
    (
        "job_said",
        "All that you change here is written into the job file; the command reads the same file.",
    ),
    ("job_text", "Text of the job file"),
    ("use_job", "Use this text"),
    ("first_job", "Propose a job"),
    ("save_job", "Save the job file"),
    ("lay_out", "Layout"),
    ("lay", "Lay it out"),
    ("pictures", "with PDF and pictures"),
    ("sum", "What the layout comes to"),
    ("save_all", "Save all files (zip)"),
    ("open_review", "Look at the layout"),
    ("review", "The layout, to look at"),
    ("care", "Safety and limits"),
    ("walls", "Walls"),
    ("openings", "Openings"),
    ("name", "Name"),
    ("elevation", "Elevation"),
    ("kind", "Kind"),
    ("size", "Width x height"),
    ("area", "Area"),
    ("one_unit", "One unit of the drawing is"),
    ("no_scale", "No scale was found: use \"A length I know\"."),
    ("page_number", "Page of the PDF"),
    ("kind_window", "window"),
    ("kind_door", "door"),
    ("kind_overhead-door", "overhead door"),
    ("kind_vent", "vent"),
    ("severity_error", "Error"),
    ("severity_warning", "Warning"),
    ("severity_info", "Note"),
    ("n_wall", "wall"),
    ("n_walls", "walls"),
    ("n_opening", "opening"),
    ("n_openings", "openings"),
];
const TOLD: Words<11> = [
    ("reading", "Reading the drawing."),
    ("trying", "Trying how it is read best."),
    ("changing", "Changing the job."),
    ("laying", "Laying out."),
    ("so_far", "panels so far"),
    ("laid", "Laid out. The files stand below."),
    ("refused", "No layout: see what is wrong under \"To look at\"."),
    ("stopped", "Stopped. Nothing is lost."),
    ("stopped_read", "No layout can be made of it yet: see \"To look at\"."),
    ("failed", "The program failed at this; nothing is lost."),
    ("unfit", "This does not fit what stands in the job file: change its text."),
];
