//! The quick start: one page for an office that has the program and no time.

/// Its title.
pub const TITLE: &str = "LAPWRIGHT: QUICK START";
/// What the page is, for whoever cannot see it.
pub const DESCRIPTION: &str =
    "One page: seven steps from an architect's elevations to sheets and an order, with commands.";

/// Steps: what is done, the command, what comes of it.
pub const STEPS: [(&str, &str, &str); 7] = [
    (
        "1. Answer once what is your own.",
        "lapwright template office",
        "Fill in office/office.toml: siding, cartons, corners, gaps, spare, price list, paper. Send template.dxf and convention.pdf to your architects.",
    ),
    (
        "2. Begin a house.",
        "lapwright start house.dxf",
        "Writes house.toml: views, layers, unit, and the questions left. Put office.toml beside the drawing first; the job then goes on from it.",
    ),
    (
        "3. See what is read.",
        "lapwright check house.dxf --job house.toml --out check",
        "Open check/problems.svg: each finding stands where it is. `lapwright explain CODE` says what to do.",
    ),
    (
        "4. Tape what counts, before ordering.",
        "lapwright measure house.dxf --job house.toml",
        "A sheet a wall, the worst lengths first. Fill in measured.csv and give it back with --measured.",
    ),
    (
        "5. Lay it out.",
        "lapwright layout house.dxf --job house.toml --measured house-measure/measured.csv",
        "house-layout then holds sheets.pdf for the wall, takeoff.xlsx for the order, review.html for the phone, overlay.dxf for the architect.",
    ),
    (
        "6. Many houses at once.",
        "lapwright layout lots --out houses --prices prices.csv",
        "Each house gets a folder; houses.xlsx has the table and one purchase. Run it again after a stop: it goes on where it was.",
    ),
    (
        "7. Every option.",
        "lapwright layout --help",
        "Exit codes: 0 done, 1 cannot be used, 2 wrong usage, 3 warnings under --strict, 4 the layout breaks a rule: do not cut by it.",
    ),
];

/// At the foot.
pub const CAUTION: &str = "The siding maker's instructions and the local code override every figure. Look at one sheet with a tape before you cut. Scaffolds, ladders, power lines, dust and old paint: by the rules of the trade and the site.";
