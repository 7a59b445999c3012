//! The drawing convention: what to draw, on which layer.

use crate::model::linework::Role;

/// Title of the page.
pub const TITLE: &str = "How to draw elevations for a siding layout";
/// What it holds.
pub const DESCRIPTION: &str = "What to draw on which layer, with an example elevation.";
/// Layers that are left alone besides.
pub const LEFT_ALONE: &str =
    "Also left alone: A-ANNO-*, A-DETL*, other A-ROOF*, A-ELEV, A-ELEV-OTLN, DEFPOINTS and Z-*.";

/// What is drawn for a role; none for what is ignored.
pub fn role(role: Role) -> Option<&'static str> {
    Some(match role {
        Role::Wall => {
            "Each plane area to side as one closed outline: corner to corner, foundation or sill line to soffit or rake. A part that stands forward is an outline of its own."
        }
        Role::Bare => {
            "Closed outline of an area with no siding (stone, brick) or with other cladding."
        }
        Role::Band => "Closed outline of a band board, frieze or water table across a wall.",
        Role::Joint => "Vertical line where siding must not bridge a joint of the building.",
        Role::Window => {
            "Each window as an inserted block or a closed loop, at the edge that the siding's trim follows."
        }
        Role::Door => "Each door likewise, down to its sill; overhead doors too.",
        Role::Roof => {
            "Closed outline of a lower roof, deck or slab where it meets a wall and hides part of it."
        }
        Role::MountingBlock => "Fixtures with a mounting block: lights, vents, hose bibs.",
        Role::Obstacle => "Fixtures without one: meters, hose taps, ledgers.",
        Role::Level => {
            "One floor reference line across each elevation, at the same floor in all: courses meet at the corners by it."
        }
        Role::Grade => "Finished grade as an open line along the bottom of the walls.",
        Role::InsideCorner => "Vertical line on a wall's edge that is an inside corner.",
        Role::CornerTag => {
            "A short text near the bottom of a corner, the same in both elevations that show it."
        }
        Role::Frame => "A closed rectangle around each elevation, where several share the file.",
        Role::Title => "The elevation's name, as one text inside its frame or below it.",
        Role::Texture => {
            "Drawn siding, as hatches: a texture. Walls are read from it where no outline is drawn."
        }
        Role::Dimension => "Dimensions: read as evidence of the scale, never laid out from.",
        _ => return None,
    })
}

/// Rules of drawing, in order.
pub const RULES: [&str; 10] = [
    "Draw full size in model space, and let the header say the unit (inch, foot, mm, cm or m).",
    "Close every outline: end points meet exactly. Gaps to 1/16 in are joined and listed; larger ones stop the reading with their place.",
    "Draw each elevation square on, as one looks at it from outside, all the same way up.",
    "Put nothing of a section, plan or detail inside an elevation's frame.",
    "Draw walls to the face that the siding lies on; say casing widths that lie outside the drawn openings.",
    "Leave off or frozen what shall not be read; hidden layers are left alone and named.",
    "Arcs, ellipses and splines are read as curves; a dimension whose text was typed over stops the reading.",
    "Send DXF (R12 to R2018, ASCII or binary) or DWG (R2000 to R2018). An SVG's groups bear these names. A PDF is printed from the drawing: lines as lines, no scan, layers kept, with a dimension over the whole length of each elevation.",
    "Other cladding (shingles, board and batten, another siding): closed outlines on a layer of its own, or regions given in job.toml; name it there as a zone.",
    "Other layer names do as well: name them in job.toml under [layers]; `lapwright layers DRAWING --suggest` makes a beginning.",
];
