//! Words of siding systems: names, how they are joined and ended, and where their figures come
//! from. Nothing else names a kind of siding in words.

pub use super::drawn_edges::edges_as_drawn;
use super::nouns::{self, Noun, counted};
use super::stocks::lengths_and_cartons;
use crate::job::siding::kind::{BoardSiding, PanelSiding, Siding};
use crate::job::siding::system::{CutEdgeRule, JointRule, NailMaterial, SeamLap, SidingSystem};
use crate::job::{Job, Product};
use crate::language::{Language, Said, said};
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
pub fn name(siding: Siding) -> Said {
    match siding {
        Siding::Panel(PanelSiding::FoamBacked) => {
            said("foam-backed vinyl lap siding", "siding de vinilo traslapado con espuma")
        }
        Siding::Panel(PanelSiding::Vinyl) => {
            said("vinyl lap siding", "siding de vinilo traslapado")
        }
        Siding::Panel(PanelSiding::Steel) => said("steel lap siding", "siding de acero traslapado"),
        Siding::Board(BoardSiding::Wood) => said("wood lap siding", "siding de madera traslapado"),
        Siding::Board(BoardSiding::FiberCement) => {
            said("fiber-cement lap siding", "siding de fibrocemento traslapado")
        }
    }
}

/// What covers a zone: in the words of the job, or the name of the siding that is laid out there.
pub fn cladding(lang: Language, zone: &LaidZone) -> &str {
    let laid_out = Siding::of_key(&zone.cladding).filter(|_| zone.laid_out);
    match laid_out {
        Some(siding) => name(siding).of(lang),
        None => &zone.cladding,
    }
}

/// What one stock length is called.
pub fn piece(siding: Siding) -> Said {
    items::piece(siding.piece())
}

/// What many of them are called.
pub fn pieces(siding: Siding) -> Said {
    items::siding_noun(siding.piece()).many
}

/// What nails are made of.
pub fn nail_material(system: &SidingSystem) -> Said {
    match system.fastening.material {
        NailMaterial::CorrosionResistant => {
            said("corrosion-resistant", "resistentes a la corrosión")
        }
        NailMaterial::GalvanizedSteel => {
            said("galvanized or stainless steel", "de acero galvanizado o inoxidable")
        }
    }
}

/// Heading over a list of them.
pub fn pieces_heading(siding: Siding) -> Said {
    match siding {
        Siding::Panel(_) => said("Panels", "Paneles"),
        Siding::Board(_) => said("Boards", "Tablas"),
    }
}

/// What a length has over the face of its course.
pub fn over_face(system: &SidingSystem) -> Said {
    if system.courses.is_evened() {
        said("head lap", "traslape superior")
    } else {
        said("nail hem", "aleta de clavar")
    }
}

/// Where the gap is kept along a slope.
pub fn end_gap_place(system: &SidingSystem) -> Said {
    if system.receivers.has_pockets() {
        said("inside the channel", "dentro del canal")
    } else {
        said("along the trim", "junto a la moldura")
    }
}

/// Where the clearance to roofs comes from.
pub fn roof_source(lang: Language, system: &SidingSystem) -> String {
    if system.receivers.has_pockets() {
        said("R703.3.1 as reported", "R703.3.1 según se informa").of(lang).to_owned()
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
pub fn held_by(system: &SidingSystem) -> Noun {
    match system.cut_edge {
        CutEdgeRule::Lugs => nouns::LUG,
        CutEdgeRule::TrimNails => nouns::TRIM_NAIL,
        CutEdgeRule::FaceNails => nouns::FACE_NAIL,
    }
}

/// What is done to a cut edge that takes no lugs.
pub fn trim_nails(lang: Language, count: u32) -> String {
    say!(
        lang,
        "drill the cut edge and nail it through with {} of its color",
        "taladre el borde cortado y clávelo con {} de su color",
        counted(lang, count as usize, nouns::TRIM_NAIL)
    )
}

/// How many boards a panel shows, or how wide a board is.
pub fn profile(lang: Language, product: &Product) -> String {
    if let Some(width) = product.width.filter(|_| product.system().courses.is_evened()) {
        return say!(
            lang,
            "boards {} wide,",
            "tablas de {} de ancho,",
            crate::units::inches_fraction(width)
        );
    }
    match product.faces {
        1 => said("single", "de una cara de").of(lang).to_owned(),
        2 => said("double", "de dos caras de").of(lang).to_owned(),
        3 => said("triple", "de tres caras de").of(lang).to_owned(),
        n => say!(lang, "{n} faces of", "de {n} caras de"),
    }
}

/// The siding in one line, for a cover.
pub fn in_short(lang: Language, job: &Job) -> String {
    let (p, style) = (&job.product, job.sheet.lengths);
    let (name, profile) = (name(p.kind).of(lang), profile(lang, p));
    if p.system().courses.is_evened() {
        return say!(
            lang,
            "Siding: {name}, {profile} exposure {}; joints on studs.",
            "Siding: {name}, {profile} exposición {}; juntas sobre montantes.",
            courses(lang, job)
        );
    }
    say!(
        lang,
        "Siding: {name}, {profile} {}, exposure {}; lap {}{}.",
        "Siding: {name}, {profile} {}, exposición {}; traslape {}{}.",
        style.short(p.face()),
        style.short(p.exposure),
        style.short(job.lap()),
        foam(p).of(lang)
    )
}

/// The siding in one sentence with stock, joints and gaps. `color` follows the stock.
pub fn in_full(lang: Language, job: &Job, color: &str) -> String {
    let (p, style) = (&job.product, job.sheet.lengths);
    let (name, profile) = (name(p.kind).of(lang), profile(lang, p));
    if p.system().courses.is_evened() {
        return format!(
            "Siding: {name}, {profile} exposure {}, boards of {}{color}; joints on studs {} apart with a gap of {}, {} gap at trim, to caulk as the manufacturer says.",
            courses(lang, job),
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
        foam(p).of(lang),
        style.short(job.end_gap()),
        style.short(job.pocket())
    )
}

/// The exposure of boards, and whether courses are evened.
fn courses(lang: Language, job: &Job) -> String {
    let (style, (least, most)) = (job.sheet.lengths, job.product.limits());
    let exposure = style.short(job.product.exposure);
    if !job.boards.even {
        return say!(lang, "{exposure} all the way up", "{exposure} hasta arriba");
    }
    say!(
        lang,
        "{exposure}, evened within {} and {}",
        "{exposure}, emparejada entre {} y {}",
        style.short(least),
        style.short(most)
    )
}

fn foam(product: &Product) -> Said {
    if product.foam_meets_foam() {
        said(", foam to foam", ", espuma contra espuma")
    } else {
        said("", "")
    }
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_has_a_name_of_its_own() {
        let names: std::collections::BTreeSet<&str> =
            Siding::ALL.into_iter().map(|k| name(k).en).collect();
        assert_eq!(names.len(), Siding::ALL.len());
    }
}
