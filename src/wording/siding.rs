//! Words of siding systems: names, how they are joined and ended, and where their figures come
//! from. Nothing else names a kind of siding in words.

use super::stocks::lengths_and_cartons;
use crate::job::siding::kind::{BoardSiding, PanelSiding, Siding};
use crate::job::siding::system::{CutEdgeRule, JointRule, NailMaterial, SeamLap, SidingSystem};
use crate::job::{InsideCorner, Job, Product};
use crate::layout::wall::LaidZone;
use crate::sources::layout::LayoutFact;
use crate::sources::record::Record;
use crate::sources::siding::SidingFact;
use crate::sources::trim::TrimFact;
use crate::units::LengthStyle;
use crate::wording::sources;
use crate::wording::takeoff::items;

/// Every kind, for those who look for words of any of them.
pub fn every() -> impl Iterator<Item = Siding> {
    Siding::ALL.into_iter()
}

/// The trade's name of a kind.
pub fn name(siding: Siding) -> &'static str {
    match siding {
        Siding::Panel(PanelSiding::FoamBacked) => "foam-backed vinyl lap siding",
        Siding::Panel(PanelSiding::Vinyl) => "vinyl lap siding",
        Siding::Panel(PanelSiding::Steel) => "steel lap siding",
        Siding::Board(BoardSiding::Wood) => "wood lap siding",
        Siding::Board(BoardSiding::FiberCement) => "fiber-cement lap siding",
    }
}

/// What covers a zone: in the words of the job, or the name of the siding that is laid out there.
pub fn cladding(zone: &LaidZone) -> &str {
    let laid_out = Siding::of_key(&zone.cladding).filter(|_| zone.laid_out);
    match laid_out {
        Some(siding) => name(siding),
        None => &zone.cladding,
    }
}

/// What one stock length is called.
pub fn piece(siding: Siding) -> &'static str {
    items::piece(siding.piece())
}

/// What nails are made of.
pub fn nail_material(system: &SidingSystem) -> &'static str {
    match system.fastening.material {
        NailMaterial::CorrosionResistant => "corrosion-resistant",
        NailMaterial::GalvanizedSteel => "galvanized or stainless steel",
    }
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

/// Where the clearance to roofs comes from.
pub fn roof_source(system: &SidingSystem) -> String {
    if system.receivers.has_pockets() {
        "R703.3.1 as reported".to_owned()
    } else {
        let fact = TrimFact::BoardRoofClearance.record();
        format!("{} {}", sources::titles(&[fact]), fact.section)
    }
}

/// What a list of square cuts says of their ends.
pub fn square_cuts(system: &SidingSystem) -> &'static str {
    if system.joints.is_on_studs() {
        "pieces by length; joints stand on studs"
    } else {
        "pieces by length; cut ends go into receivers, factory ends meet"
    }
}

/// What holds cut edges in undersill trim.
pub fn held_by(system: &SidingSystem) -> &'static str {
    match system.cut_edge {
        CutEdgeRule::Lugs => "lugs",
        CutEdgeRule::TrimNails => "trim nails",
        CutEdgeRule::FaceNails => "face nails",
    }
}

/// What is done to a cut edge that takes no lugs.
pub fn trim_nails(count: u32) -> String {
    format!("drill the cut edge and nail it through with {count} trim nails of its color")
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
        return format!("Siding: {name}, {profile} exposure {}; joints on studs.", courses(job));
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
        return format!(
            "Siding: {name}, {profile} exposure {}, boards of {}{color}; joints on studs {} apart with a gap of {}, {} gap at trim, to caulk as the manufacturer says.",
            courses(job),
            style.length(job.first_length()),
            style.short(job.boards.stud_spacing),
            style.short(-job.lap()),
            style.short(job.end_gap())
        );
    }
    format!(
        "Siding: {name}, {profile} {}, exposure {}, panels of {}{color}; lap {} at seams{}, {} gap at ends; posts and channels with a pocket of {}.",
        style.short(p.face()),
        style.short(p.exposure),
        lengths_and_cartons(&job.panel_stocks(), style),
        style.short(job.lap()),
        foam(p),
        style.short(job.end_gap()),
        style.short(job.pocket())
    )
}

/// The exposure of boards, and whether courses are evened.
fn courses(job: &Job) -> String {
    let (style, (least, most)) = (job.sheet.lengths, job.product.limits());
    let exposure = style.short(job.product.exposure);
    if !job.boards.even {
        return format!("{exposure} all the way up");
    }
    format!("{exposure}, evened within {} and {}", style.short(least), style.short(most))
}

fn foam(product: &Product) -> &'static str {
    if product.foam_meets_foam() { ", foam to foam" } else { "" }
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
pub fn lap_source(siding: Siding) -> String {
    let titles = |record: Record| sources::titles(&[record]);
    match (siding.system().joints, siding) {
        (JointRule::Lapped(SeamLap::FoamMeetsFoam), _) => {
            format!("foam meets foam: {}", titles(SidingFact::FoamLap.record()))
        }
        (JointRule::Lapped(SeamLap::HalfFactoryNotch(_)), _) => {
            format!("half the factory notch: {}", titles(SidingFact::PlainLap.record()))
        }
        (JointRule::Lapped(SeamLap::Customary(_)), _) => "customary lap: from memory".to_owned(),
        (_, Siding::Board(BoardSiding::FiberCement)) => {
            titles(TrimFact::FiberCementJoints.record())
        }
        _ => "common practice, no source".to_owned(),
    }
}

/// Where the usual gap at ends comes from.
pub fn end_gap_source(siding: Siding) -> String {
    match siding {
        Siding::Panel(PanelSiding::FoamBacked | PanelSiding::Vinyl) => format!(
            "by the day's weather unless the job says otherwise: {}",
            sources::titles(&[SidingFact::EndGap.record(), SidingFact::ColdEndGap.record()])
        ),
        Siding::Panel(PanelSiding::Steel) => "from memory".to_owned(),
        Siding::Board(BoardSiding::FiberCement) => {
            sources::titles(&[TrimFact::FiberCementJoints.record()])
        }
        Siding::Board(BoardSiding::Wood) => "common practice, no source".to_owned(),
    }
}

/// Whom to ask which edge was drawn.
pub fn drawn_edge_source() -> String {
    format!("{}: ask which edge was drawn", sources::titles(&[LayoutFact::DrawnEdge.record()]))
}

/// Which drawn edges siding stands at: at the drawn edges of openings and corners, or as far off them
/// as casings, surrounds, corner posts and covers put it. Up to three sentences.
pub fn edges_as_drawn(job: &Job) -> String {
    let style = job.sheet.lengths;
    let pockets = job.siding().receivers.has_pockets();
    let what = if pockets { "Channels" } else { "Boards" };
    let (casing, surround) = (job.drawing.casing, job.trim.surround);
    let round: Vec<String> = [(casing, "the casing"), (surround, "the surround")]
        .iter()
        .filter(|(w, _)| *w > 0.0)
        .map(|(w, name)| format!("{name}, {}", style.short(*w)))
        .collect();
    let openings = if round.is_empty() {
        let verb = if pockets { "follow" } else { "butt against" };
        format!("{what} {verb} the drawn edge of openings: no casing is given")
    } else {
        format!(
            "{what} stand {} outside the drawn edge of openings: {}",
            style.short(casing + surround),
            round.join("; ")
        )
    };
    format!("{openings}. {} {}", ends_at_corners(job), inside_corners(job))
}

/// Where siding ends at outside corners. One sentence.
fn ends_at_corners(job: &Job) -> String {
    let style = job.sheet.lengths;
    let (posts, siding, gap) = match job.siding().receivers.has_pockets() {
        true => ("Corner posts", "panels", "end gap"),
        false => ("Corner boards", "boards", "gap"),
    };
    let back = job.set_backs().outside;
    let cover = job.trim.corner_cover;
    if cover > 0.0 && cover >= back {
        return format!(
            "{posts} stand at the drawn corner, and siding ends {} from it, at the edge of the covers, which take the place of the posts' set-back.",
            style.short(cover)
        );
    }
    if back <= 0.0 {
        return format!(
            "{posts} have no width in the job: {siding} run to the drawn outside corner, less the {gap}."
        );
    }
    format!(
        "{posts} stand at the drawn corner; {siding} start {} off it at outside corners, plus the {gap}.",
        style.short(back)
    )
}

/// Where siding ends at inside corners. One sentence.
fn inside_corners(job: &Job) -> String {
    let style = job.sheet.lengths;
    let back = job.set_backs().inside;
    match job.trim.inside_corner {
        InsideCorner::OneChannel => format!(
            "An inside corner has one J-channel: panels run into the corner on the wall sided first, and start {} off it on the other, the depth of the channel.",
            style.short(back)
        ),
        InsideCorner::TwoChannels => {
            "An inside corner has two J-channels with their backs in the corner: no set-back."
                .to_owned()
        }
        InsideCorner::Post if back <= 0.0 => {
            "At inside corners they run to the drawn corner, less the gap.".to_owned()
        }
        InsideCorner::Post => format!("At inside corners it is {}.", style.short(back)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_has_a_name_of_its_own() {
        let names: std::collections::BTreeSet<&str> = Siding::ALL.into_iter().map(name).collect();
        assert_eq!(names.len(), Siding::ALL.len());
    }
}
