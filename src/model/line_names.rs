//! Short names that a line of a takeoff may go by.

use super::post_angle::PostAngle;
use super::trim::TrimStock;

/// Short names of lines that a takeoff may hold, but for trim, which goes by its stocks, other lengths
/// of siding, which have an ending, and zones, which begin with `zone-`.
const LINES: [&str; 34] = [
    "panels",
    "spare-panels",
    "cartons",
    "squares",
    "squares-laid",
    "post-cap",
    "corner-flashing",
    "step-flashing",
    "kick-out",
    "roof-flashing",
    "deck-flashing",
    "ledge-flashing",
    "cladding-flashing",
    "band-flashing",
    "continuous-flashing",
    "door-pans",
    "joint-backing",
    "panel-nails",
    "trim-nails",
    "mounting-blocks",
    "bare-wall",
    "by-net-area",
    "weather-barrier",
    "barrier-tape",
    "sealant",
    "furring",
    "coil",
    "soffit",
    "soffit-channel",
    "fascia",
    "shutters",
    "vents",
    "blocks",
    "labor",
];

/// Whether some takeoff may hold a line of this short name.
pub fn is_line(id: &str) -> bool {
    let ending =
        id.rsplit_once('-').filter(|(_, end)| *end == "second" || end.parse::<u8>().is_ok());
    let plain = ending.map_or(id, |(name, _)| name);
    LINES.contains(&plain)
        || id.starts_with("zone-")
        || TrimStock::ALL.iter().any(|stock| stock.line_id() == *id)
        || is_for_an_angle(id)
}

/// Whether a line of posts for one angle may have this short name: `inside-corner-post-135`.
fn is_for_an_angle(id: &str) -> bool {
    let posts = [TrimStock::OutsidePost, TrimStock::InsidePost, TrimStock::CornerCover];
    id.rsplit_once('-').is_some_and(|(name, ending)| {
        PostAngle::of_ending(ending).is_some() && posts.iter().any(|s| s.line_id() == *name)
    })
}

/// Short names that a line may be given something by, for whoever wrote none of them.
pub fn line_names() -> Vec<String> {
    let trim = TrimStock::ALL.iter().map(|stock| stock.line_id().to_string());
    LINES.iter().map(|l| (*l).to_owned()).chain(trim).collect()
}
