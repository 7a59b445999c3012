//! Of what the job says of walls by hand.

use super::finding_words::FindingWords;
use super::parts::listed;
use crate::finding::by_hand::{Apart, HandFinding, NameList, OutlineList};
use crate::model::ids::{ElevationName, WallId};
use crate::units::{LengthStyle, counted};

pub(super) fn words(found: &HandFinding, style: LengthStyle) -> FindingWords {
    use HandFinding as F;
    match found {
        F::WallUnknown { list, named, walls } => unknown(*list, named, walls),
        F::LeftOutByJob { names } => FindingWords::new(
            format!("{} left out, since the job skips it", listed(names)),
            "Take the name out of `skip` in the job file if it is to be laid out.",
        ),
        F::GivenStays { names } => FindingWords::new(
            format!(
                "{} stays: the job names it under `skip`, but gives it outright too",
                listed(names)
            ),
            "Nothing to do if the drawn one alone was to go. Else take its [[wall]] or [[opening]] out of the job file.",
        ),
        F::WallsJoined { walls, openings, boards, bare, filled } => {
            joined(walls, (*openings, *boards), square(*bare, style), *filled)
        }
        F::WallsApart { walls, apart } => FindingWords::new(
            format!("`join` takes {} as one wall, but {}", listed(ids(walls)), why(apart)),
            "Correct `join` in the job file, or give the whole wall as [[wall]].",
        ),
        F::WallGivesWay { number, area, percent, .. } => FindingWords::new(
            format!(
                "a drawn wall of {} gives way to [[wall]] {number} of the job, which covers {percent:.0} percent of it",
                square(*area, style)
            ),
            "Nothing to do if that is meant. What the given wall does not cover is not sided: give it as a further [[wall]].",
        ),
        F::GivenOutside { list, number, named, elevations } => {
            outside(*list, *number, named.as_deref(), elevations)
        }
        F::SidingLayerEmpty { view, named, layers } => FindingWords::new(
            format!(
                "`siding_layer` of {view} is `{named}`, where neither a hatch nor level lines at one pitch are drawn; layers in that view are {}",
                listed(layers)
            ),
            "Correct the layer in the job file, or leave `siding_layer` out.",
        ),
    }
}

fn square(feet: f64, style: LengthStyle) -> String {
    format!("{:.1} {}", style.area(feet), style.area_unit())
}

fn ids(walls: &[WallId]) -> impl Iterator<Item = &str> {
    walls.iter().map(WallId::as_str)
}

fn unknown(list: NameList, named: &str, walls: &[WallId]) -> FindingWords {
    let list = match list {
        NameList::Skip => "skip",
        NameList::Join => "join",
        NameList::Order => "work.walls",
    };
    FindingWords::new(
        format!(
            "`{list}` names `{named}`, which there is not; the walls are {}",
            listed(ids(walls))
        ),
        "Correct the name in the job file. Openings and fixtures go by the names on the sheets: front-W1, front-D1, front-F1.",
    )
}

fn joined(
    walls: &[WallId],
    (openings, boards): (usize, usize),
    bare: String,
    filled: bool,
) -> FindingWords {
    let mut between = Vec::new();
    if openings > 0 {
        between.push(counted(openings, "opening"));
    }
    if boards > 0 {
        between.push(counted(boards, "board"));
    }
    if !filled {
        between.push(format!("{bare} with nothing drawn, left bare"));
    }
    if between.is_empty() {
        between.push("nothing".to_owned());
    }
    FindingWords::new(
        format!(
            "{} are one wall, as the job joins them; between them {}",
            listed(ids(walls)),
            listed(between)
        ),
        if filled {
            "Nothing to do."
        } else {
            "Look whether siding goes on over the bare part: then give the whole wall as [[wall]]. Else give what stands there as [[opening]]."
        },
    )
}

fn why(apart: &Apart) -> String {
    match apart {
        Apart::Elevations { elevations } => {
            format!("they are in {}", listed(elevations.iter().map(ElevationName::as_str)))
        }
        Apart::Facing => "one of them stands neither beside, over nor under another".to_owned(),
        Apart::Between { wall } => format!("{wall} stands between them"),
    }
}

fn outside(
    list: OutlineList,
    number: usize,
    named: Option<&str>,
    elevations: &[ElevationName],
) -> FindingWords {
    let list = match list {
        OutlineList::Wall => "wall",
        OutlineList::Opening => "opening",
    };
    let all = listed(elevations.iter().map(ElevationName::as_str));
    let lies = match named {
        Some(name) => format!("names the elevation `{name}`"),
        None => "lies in no elevation".to_owned(),
    };
    FindingWords::new(
        format!("[[{list}]] {number} of the job {lies}; the elevations are {all}"),
        "Correct `elevation` or the points in the job file: points are in the drawing's own units and from its own origin.",
    )
}
