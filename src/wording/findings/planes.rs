//! Words for walls read from patches of siding.

use super::finding_words::FindingWords;
use crate::finding::house::{HouseFinding, WallDoubt};
use crate::model::ids::WallId;
use crate::units::{LengthStyle, counted};

/// Words for what is found of planes of drawn siding; none for other findings.
pub(super) fn words(found: &HouseFinding, layer: &str, style: LengthStyle) -> FindingWords {
    use HouseFinding as F;
    match found {
        F::PlaneAssumed { uprights, roofs, holes, slight } => {
            assumed([*uprights, *roofs, *holes, *slight])
        }
        F::SidingDetail { filled, strips, area } => detail(*filled, *strips, *area),
        F::OpeningsOffSiding { openings } => off_siding(*openings, layer),
        F::OpeningTooLarge { height, percent, accepted } => {
            too_large(layer, (*height, *percent), *accepted, style)
        }
        F::FacadeShare { percent } => FindingWords::new(
            format!(
                "the drawn siding covers {percent:.0} percent of what is drawn of this elevation"
            ),
            "Look at the sheet for walls that are missing: name the layer of the siding as `siding_layer` under [[elevation]], or give walls as [[wall]]. If this is no elevation, set `skip = true` under its [[elevation]].",
        ),
        F::WallDoubted { wall, why } => doubted(wall, *why, style),
        _ => FindingWords::new(String::new(), ""),
    }
}

fn doubted(wall: &WallId, why: WallDoubt, style: LengthStyle) -> FindingWords {
    let said = match why {
        WallDoubt::LittleShows { area } => format!(
            "{wall}: only {area:.1} sq ft of it shows beside roofs and bare areas, as of a roof's end that is hatched as siding is"
        ),
        WallDoubt::OtherCourses { own, below } => format!(
            "{wall}: its lines are {} apart and those of the siding under it {}: a roof over a wall is drawn so too",
            style.short(own),
            style.short(below)
        ),
        WallDoubt::JutsOut { by, height } => format!(
            "{wall}: a part {} high juts out {} past its end, as the end of a lower roof does",
            style.short(height),
            style.short(by)
        ),
    };
    let remedy = match why {
        WallDoubt::JutsOut { .. } => {
            "Look at the sheet. If that is a roof, draw its outline on A-ROOF-OTLN, or the wall's on A-WALL-OTLN.".to_owned()
        }
        _ => format!("Look at the sheet. If that is no wall, put into the job: skip = [\"{wall}\"]."),
    };
    FindingWords::new(said, remedy)
}

fn some(n: usize, one: &str) -> Option<String> {
    (n > 0).then(|| counted(n, one))
}

fn assumed([uprights, roofs, holes, slight]: [usize; 4]) -> FindingWords {
    let parted = [some(uprights, "upright line"), some(roofs, "roof")];
    let parted: Vec<String> = parted.into_iter().flatten().collect();
    let mut said: Vec<String> = Vec::new();
    if !parted.is_empty() {
        said.push(format!("siding parted by {} was taken for one wall", parted.join(" and ")));
    }
    if let Some(holes) = some(holes, "hole") {
        said.push(format!(
            "openings known by their holes alone, no window or door drawn in them: {holes}"
        ));
    }
    if slight > 0 {
        said.push(format!("walls of less than 10 sq ft of drawn siding: {slight}"));
    }
    FindingWords::new(
        said.join("; "),
        "Check the walls on the sheet. If a corner stands there, tag it on A-WALL-IDEN or draw each wall as a closed outline on A-WALL-OTLN.",
    )
}

fn detail(filled: usize, strips: usize, area: f64) -> FindingWords {
    let mut said: Vec<String> = Vec::new();
    if let Some(n) = some(filled, "small gap") {
        said.push(format!("{n} in drawn siding filled"));
    }
    if let Some(n) = some(strips, "strip") {
        said.push(format!("{n} of siding under 2 in wide left out, {area:.1} sq ft"));
    }
    FindingWords::new(
        said.join("; "),
        "Nothing to do, unless such a strip is sided: then draw its wall.",
    )
}

fn off_siding(openings: usize, layer: &str) -> FindingWords {
    FindingWords::new(
        format!(
            "{}{layer} outside the siding, in stone or roof: left out",
            counted(openings, "opening")
        ),
        "If one of them stands in siding, draw its wall as a closed outline on A-WALL-OTLN.",
    )
}

fn too_large(
    layer: &str,
    (height, percent): (f64, f64),
    accepted: bool,
    style: LengthStyle,
) -> FindingWords {
    let high = style.length(height);
    FindingWords::new(
        format!(
            "an opening{layer}, {high} high, covers {percent:.0} percent of its wall's drawn siding"
        ),
        if accepted {
            "It is cut out of the siding, since the job accepts this. Check it on the sheet."
        } else {
            "If it is a border or a frame, move it to another layer. If it is an opening, put \"opening-too-large\" into `accept` under [drawing], or give it as [[opening]]."
        },
    )
}
