//! Words for walls read from patches of siding.

use super::finding_words::FindingWords;
use crate::finding::house::HouseFinding;
use crate::units::counted;

/// Words for what is found of planes of drawn siding; none for other findings.
pub(super) fn words(found: &HouseFinding, layer: &str) -> FindingWords {
    use HouseFinding as F;
    match found {
        F::PlaneAssumed { uprights, roofs, holes, slight } => {
            assumed([*uprights, *roofs, *holes, *slight])
        }
        F::SidingDetail { filled, strips, area } => detail(*filled, *strips, *area),
        F::OpeningsOffSiding { openings } => off_siding(*openings, layer),
        _ => FindingWords::new(String::new(), ""),
    }
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
            "{}{layer} outside the drawn siding, in stone or roof: left out",
            counted(openings, "opening")
        ),
        "If one of them stands in siding, draw its wall as a closed outline on A-WALL-OTLN.",
    )
}
