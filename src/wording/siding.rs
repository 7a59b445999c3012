//! Words of siding systems: names, how they are joined and ended, where their figures come from, and
//! their cautions. Nothing else names a kind of siding in words.

use crate::job::siding::kind::{BoardSiding, PanelSiding, Siding};
use crate::job::siding::system::{Caution, JointRule, SeamLap, SidingSystem};
use crate::job::{Job, Product};
use crate::units::LengthStyle;

/// The trade's name of a kind.
pub fn name(siding: Siding) -> &'static str {
    siding.words()
}

/// Heading over a list of them.
pub fn pieces_heading(siding: Siding) -> &'static str {
    match siding {
        Siding::Panel(_) => "Panels",
        Siding::Board(_) => "Boards",
    }
}

/// What a length has over the face of its course.
pub fn over_face(system: &SidingSystem) -> &'static str {
    if system.courses.is_evened() { "head lap" } else { "nail hem" }
}

/// Where the gap is kept along a slope.
pub fn end_gap_place(system: &SidingSystem) -> &'static str {
    if system.receivers.has_pockets() { "inside the channel" } else { "along the trim" }
}

/// What a list of square cuts says of their ends.
pub fn square_cuts(system: &SidingSystem) -> &'static str {
    if system.joints.is_on_studs() {
        "pieces by length; joints stand on studs"
    } else {
        "pieces by length; cut ends go into receivers, factory ends meet"
    }
}

/// How many boards a panel shows, or how wide a board is.
pub fn profile(product: &Product) -> String {
    if let Some(width) = product.width.filter(|_| product.system().courses.is_evened()) {
        return format!("boards {} wide,", crate::units::inches_fraction(width));
    }
    match product.faces {
        1 => "single".to_owned(),
        2 => "double".to_owned(),
        3 => "triple".to_owned(),
        n => format!("{n} faces of"),
    }
}

/// The siding in one line, for a cover.
pub fn in_short(job: &Job) -> String {
    let (p, style) = (&job.product, job.sheet.lengths);
    let (name, profile) = (name(p.kind), profile(p));
    if p.system().courses.is_evened() {
        let (least, most) = p.limits();
        return format!(
            "Siding: {name}, {profile} exposure {}, evened within {} and {}; joints on studs.",
            style.short(p.exposure),
            style.short(least),
            style.short(most)
        );
    }
    format!(
        "Siding: {name}, {profile} {}, exposure {}; lap {}{}.",
        style.short(p.face()),
        style.short(p.exposure),
        style.short(job.lap()),
        foam(p)
    )
}

/// The siding in one sentence with stock, joints and gaps. `color` follows the stock.
pub fn in_full(job: &Job, color: &str) -> String {
    let (p, style) = (&job.product, job.sheet.lengths);
    let (name, profile) = (name(p.kind), profile(p));
    if p.system().courses.is_evened() {
        let (least, most) = p.limits();
        return format!(
            "Siding: {name}, {profile} exposure {} evened within {} and {}, boards of {}{color}; joints on studs {} apart with a gap of {}, {} gap at trim, to caulk as the manufacturer says.",
            style.short(p.exposure),
            style.short(least),
            style.short(most),
            style.length(p.length),
            style.short(job.boards.stud_spacing),
            style.short(-job.lap()),
            style.short(job.end_gap())
        );
    }
    format!(
        "Siding: {name}, {profile} {}, exposure {}, panels of {}{color}; lap {} at seams{}, {} gap at ends; posts and channels with a pocket of {}.",
        style.short(p.face()),
        style.short(p.exposure),
        stocks(p, style),
        style.short(job.lap()),
        foam(p),
        style.short(job.end_gap()),
        style.short(job.pocket())
    )
}

fn foam(product: &Product) -> &'static str {
    if product.foam_meets_foam() { ", foam to foam" } else { "" }
}

fn stocks(p: &Product, style: LengthStyle) -> String {
    let each: Vec<String> = [false, true][..p.stocks().len()]
        .iter()
        .zip(p.stocks())
        .map(|(second, l)| format!("{}, {} to a carton", style.length(l), p.in_carton(*second)))
        .collect();
    each.join(", and of ")
}

/// Lap or gap where two lengths meet, in force.
pub fn meeting(job: &Job, style: LengthStyle) -> String {
    if job.siding().joints.is_lapped() {
        format!("lap at seams in force: {}", style.short(job.lap()))
    } else {
        format!("gap at joints in force: {}; joints on studs", style.short(-job.lap()))
    }
}

/// Where the usual lap or gap at joints comes from.
pub fn lap_source(siding: Siding) -> &'static str {
    match (siding.system().joints, siding) {
        (JointRule::Lapped(SeamLap::FoamMeetsFoam), _) => "foam meets foam: FACTS PR-02",
        (JointRule::Lapped(SeamLap::HalfFactoryNotch(_)), _) => {
            "half the factory notch: FACTS SD-70"
        }
        (JointRule::Lapped(SeamLap::Customary(_)), _) => "customary lap: from memory",
        (_, Siding::Board(BoardSiding::FiberCement)) => "FACTS SD-132",
        _ => "common practice, no source",
    }
}

/// Where the usual gap at ends comes from.
pub fn end_gap_source(siding: Siding) -> &'static str {
    match siding {
        Siding::Panel(PanelSiding::FoamBacked | PanelSiding::Vinyl) => {
            "by the day's weather unless the job says otherwise: FACTS SD-50, SD-51"
        }
        Siding::Panel(PanelSiding::Steel) => "from memory",
        Siding::Board(BoardSiding::FiberCement) => "FACTS SD-132",
        Siding::Board(BoardSiding::Wood) => "common practice, no source",
    }
}

/// Which drawn edges siding stands at: at the drawn edges of openings and corners, or as far off them
/// as casings, surrounds and corner covers put it. One sentence.
pub fn edges_as_drawn(job: &Job) -> String {
    let style = job.sheet.lengths;
    let pockets = job.siding().receivers.has_pockets();
    let (what, corner) =
        if pockets { ("Channels", "corner posts") } else { ("Boards", "corner boards") };
    let (casing, surround) = (job.drawing.casing, job.trim.surround);
    let round: Vec<String> = [(casing, "the casing"), (surround, "the surround")]
        .iter()
        .filter(|(w, _)| *w > 0.0)
        .map(|(w, name)| format!("{name}, {}", style.short(*w)))
        .collect();
    let openings = if round.is_empty() {
        let verb = if pockets { "follow" } else { "butt against" };
        format!("{what} {verb} the drawn edge of openings")
    } else {
        format!(
            "{what} stand {} outside the drawn edge of openings: {}",
            style.short(casing + surround),
            round.join("; ")
        )
    };
    let cover = job.trim.corner_cover;
    if cover > 0.0 {
        return format!(
            "{openings}. {} stand at the drawn corner, and siding ends {} from it, at the edge of the covers.",
            if pockets { "Corner posts" } else { "Corner boards" },
            style.short(cover)
        );
    }
    format!("{openings}; {corner} stand at the drawn corner.")
}

/// What cutting and living with a kind can do: a sentence each.
pub fn cautions(siding: Siding) -> impl Iterator<Item = &'static str> {
    siding.system().cautions.iter().map(|c| caution(*c))
}

fn caution(caution: Caution) -> &'static str {
    match caution {
        Caution::CuttingVinyl => {
            "Cutting: eye protection; no dry cutting of fiber-cement without dust collection. Cold vinyl is brittle: cut slowly below freezing."
        }
        Caution::HeatSoftens => {
            "Heat: vinyl softens at 160 to 165 F. Keep grills and vents away; glass that faces the wall can reflect enough sun to warp it."
        }
        Caution::CuttingWood => {
            "Cutting: eye protection; dust mask or collection. Treated or old painted wood: follow its label, never burn offcuts."
        }
        Caution::LeadPaint => {
            "Old walls: before 1978, disturbing more than 20 sq ft of painted outside surface needs a certified lead renovator (EPA, 40 CFR 745)."
        }
        Caution::SilicaDust => {
            "Silica: fiber-cement dust scars lungs. Cut outdoors, downwind, with shears or a saw with a dust collector of 99 % filter efficiency, blade up to 8 in (29 CFR 1926.1153, Table 1; Cal. 1532.3); limit 50 micrograms a cubic meter over 8 hours. Eye protection; never sweep or blow it dry."
        }
        Caution::SharpEdges => {
            "Sharp edges: sheet steel cuts. Wear cut-resistant gloves, sleeves and eye protection; carry long panels by two, on edge, not in wind; leave no raw edge in reach (common practice; the manufacturer's instructions take precedence)."
        }
        Caution::CuttingSteel => {
            "Cutting: snips, shears, a nibbler or a blade made for sheet steel, never an abrasive wheel: its sparks burn the coating. Ear protection; brush off filings the same day, touch up cut edges and scratches as the manufacturer says (common practice)."
        }
        Caution::Corrosion => {
            "Corrosion: keep coated steel off copper, lead, wet mortar, and lumber treated with copper preservative; galvanized or stainless steel nails only (common practice; the manufacturer's instructions take precedence)."
        }
        Caution::MetalConducts => {
            "Electricity: metal panels and trim conduct. Keep lengths clear of power lines and the service drop; whether the wall must be bonded is for the electrician and the local code."
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_has_a_name_and_cautions_of_its_own() {
        let names: std::collections::BTreeSet<&str> = Siding::ALL.into_iter().map(name).collect();
        assert_eq!(names.len(), Siding::ALL.len());
        for siding in Siding::ALL {
            assert!(cautions(siding).count() >= 2, "{siding:?}");
        }
    }

    #[test]
    fn who_cuts_steel_is_told_of_edges_tools_and_contact() {
        let all: Vec<&str> = cautions(Siding::Panel(PanelSiding::Steel)).collect();
        let all = all.join(" ");
        for word in [
            "gloves",
            "nibbler",
            "abrasive",
            "touch up",
            "copper",
            "treated",
            "conduct",
            "manufacturer",
        ] {
            assert!(all.contains(word), "{word}");
        }
    }
}
