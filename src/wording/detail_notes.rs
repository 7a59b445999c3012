//! Notes of the details sheet that say what the job has.

use super::sheet_lengths;
use super::siding::{nail_material, name};
use crate::job::siding::system::{CutEdgeRule, NailHold};
use crate::job::{InsideCorner, Job, TopFinish};
use crate::language::{Language, said};
use crate::units::LengthStyle;

/// A length that no line of a note breaks.
fn short(style: LengthStyle, inches: f64) -> String {
    sheet_lengths::hard(&sheet_lengths::short(style, inches))
}

/// The siding.
pub fn siding(lang: Language, job: &Job) -> String {
    let text = name(job.product.kind).of(lang);
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |c| c.to_uppercase().chain(letters).collect())
}

/// The starter strip.
pub fn starter(lang: Language, job: &Job) -> String {
    let style = job.sheet.lengths;
    let side = if job.trim.starter_line < 0.0 {
        said("below", "debajo de").of(lang)
    } else {
        said("above", "encima de").of(lang)
    };
    let line = short(style, job.trim.starter_line.abs());
    let gap = short(style, job.trim_gaps().starter);
    say!(
        lang,
        "Starter strip, top edge on a line {line} {side} the butt line; {gap} between lengths",
        "Tira de inicio, borde superior en una línea {line} {side} la línea del borde inferior; {gap} entre tramos"
    )
}

/// The starter piece under boards.
pub fn starter_piece(lang: Language, job: &Job) -> String {
    let thick = short(job.sheet.lengths, job.starter_thickness());
    say!(
        lang,
        "Starter piece, {thick} thick, as the head of a board below",
        "Pieza de inicio, {thick} de grueso, como lo alto de una tabla de abajo"
    )
}

/// The first course.
pub fn first(lang: Language, job: &Job) -> String {
    if job.siding().receivers.has_pockets() {
        said("First panel, locked into the starter", "Primer panel, trabado en la tira de inicio")
            .of(lang)
            .to_owned()
    } else {
        said(
            "First board, nailed over the starter piece",
            "Primera tabla, clavada sobre la pieza de inicio",
        )
        .of(lang)
        .to_owned()
    }
}

/// Siding over a roof.
pub fn roof_siding(lang: Language, job: &Job) -> String {
    let cut = if job.siding().receivers.has_pockets() {
        said("Panel", "Panel").of(lang)
    } else {
        said("Board", "Tabla").of(lang)
    };
    say!(lang, "{cut} cut along the roof", "{cut}, con corte a lo largo del techo")
}

/// What turns the water out.
pub fn kick_out(lang: Language, job: &Job) -> String {
    let channel = if job.siding().receivers.has_pockets() {
        said("; the channel stops at it", "; el canal termina ahí").of(lang)
    } else {
        ""
    };
    say!(
        lang,
        "Kick-out flashing turns the water into the gutter{channel}",
        "El desviador manda el agua a la canaleta{channel}"
    )
}

/// Siding round a kick-out.
pub fn cut_round_kick_out(lang: Language, clear: &str) -> String {
    say!(
        lang,
        "Siding cut round it, {} off",
        "Siding cortado alrededor, a {}",
        sheet_lengths::hard(clear)
    )
}

/// What takes the cut edge under a soffit.
pub fn top_finish(lang: Language, job: &Job) -> String {
    let gap = short(job.sheet.lengths, job.trim_gaps().post_top);
    let what = match job.trim.top {
        TopFinish::FinishTrim => {
            say!(lang, "Undersill trim; {}", "Moldura de remate; {}", held(lang, job))
        }
        TopFinish::TwoPiece => said(
            "Nailed base with a face board snapped on",
            "Base clavada con una tabla de frente a presión",
        )
        .of(lang)
        .to_owned(),
        TopFinish::Crown => {
            said("Nailed base with a crown molding", "Base clavada con moldura de corona")
                .of(lang)
                .to_owned()
        }
        TopFinish::TopPanel => {
            said("Panel made for the top", "Panel hecho para el remate").of(lang).to_owned()
        }
    };
    say!(
        lang,
        "{what}. Corner posts stop {gap} under the soffit",
        "{what}. Los esquineros terminan {gap} debajo del sofito"
    )
}

/// The top course.
pub fn ripped(lang: Language, job: &Job) -> String {
    let style = job.sheet.lengths;
    match job.siding().cut_edge {
        CutEdgeRule::FaceNails => said(
            "Last board, ripped to its place and face-nailed",
            "Última tabla, cortada a lo largo a su medida y clavada por la cara",
        )
        .of(lang)
        .to_owned(),
        CutEdgeRule::Lugs | CutEdgeRule::TrimNails if job.trim.top == TopFinish::FinishTrim => {
            said("Last panel, ripped to its place", "Último panel, cortado a lo largo a su medida")
                .of(lang)
                .to_owned()
        }
        CutEdgeRule::Lugs | CutEdgeRule::TrimNails => {
            let slots = short(style, job.courses.slot_spacing);
            say!(
                lang,
                "Last panel, ripped; nail slots punched every {slots}",
                "Último panel, cortado a lo largo; ranuras para clavo cada {slots}"
            )
        }
    }
}

/// What holds a cut edge in undersill trim.
fn held(lang: Language, job: &Job) -> String {
    let style = job.sheet.lengths;
    match job.siding().cut_edge {
        CutEdgeRule::Lugs => {
            say!(lang, "lugs every {}", "lengüetas cada {}", short(style, job.courses.lug_spacing))
        }
        CutEdgeRule::TrimNails => {
            say!(
                lang,
                "trim nails every {}",
                "clavos de moldura cada {}",
                short(style, job.courses.slot_spacing)
            )
        }
        CutEdgeRule::FaceNails => said("face-nailed", "con clavos por la cara").of(lang).to_owned(),
    }
}

/// Undersill trim.
pub fn undersill(lang: Language, job: &Job) -> String {
    let alone = job.channel_alone();
    let held = held(lang, job);
    if alone <= 0.0 {
        return say!(
            lang,
            "Undersill trim in the channel; {held}",
            "Moldura de remate dentro del canal; {held}"
        );
    }
    let alone = short(job.sheet.lengths, alone);
    say!(
        lang,
        "Undersill trim in the channel where the cut falls more than {alone} over a face's lower edge; {held}",
        "Moldura de remate dentro del canal si el corte cae a más de {alone} sobre el borde inferior de una cara; {held}"
    )
}

/// Siding cut round something.
pub fn notched(lang: Language, job: &Job) -> String {
    let clear = short(job.sheet.lengths, job.courses.notch_clearance);
    if job.siding().receivers.has_pockets() {
        say!(lang, "Panel, notched with {clear} to spare", "Panel, muesca con {clear} de holgura")
    } else {
        say!(lang, "Board, notched with {clear} to spare", "Tabla, muesca con {clear} de holgura")
    }
}

/// Nails.
pub fn nails(lang: Language, job: &Job) -> String {
    let style = job.sheet.lengths;
    let system = job.siding();
    let (spacing, deep) = (short(style, job.nail_spacing()), short(style, job.penetration()));
    let into = match system.fastening.holds {
        NailHold::SheathingAndFraming => {
            said("nailable sheathing and framing", "entablado clavable y armazón").of(lang)
        }
        NailHold::Studs => said("studs", "montantes").of(lang),
    };
    let material = nail_material(system).of(lang);
    let loose = if system.fastening.through.is_slotted() {
        said(
            "; not driven tight, in the middle of the slot",
            "; sin apretar, en medio de la ranura",
        )
        .of(lang)
    } else {
        ""
    };
    say!(
        lang,
        "Nails every {spacing}, {deep} into {into}, {material}{loose}",
        "Clavos cada {spacing}, {deep} dentro de {into}, {material}{loose}"
    )
}

/// A casing round an opening.
pub fn casing(lang: Language, wide: &str) -> String {
    say!(lang, "Casing and surround, {}", "Marco y contramarco, {}", sheet_lengths::hard(wide))
}

/// What stands at an outside corner.
pub fn outside(lang: Language, job: &Job) -> String {
    if job.siding().receivers.has_pockets() {
        said(
            "Outside corner post, hung from its top nails",
            "Esquinero exterior, colgado de sus clavos de arriba",
        )
        .of(lang)
        .to_owned()
    } else {
        said(
            "Corner boards; siding butts against them, to caulk as the manufacturer says",
            "Tablas de esquina; el siding llega a tope, sellar según diga el fabricante",
        )
        .of(lang)
        .to_owned()
    }
}

/// What stands in an inside corner.
pub fn inside(lang: Language, job: &Job) -> String {
    if !job.siding().receivers.has_pockets() {
        return said(
            "Strip in the corner; boards butt against it",
            "Listón en la esquina; las tablas llegan a tope",
        )
        .of(lang)
        .to_owned();
    }
    match job.trim.inside_corner {
        InsideCorner::Post => said(
            "Inside corner post, hung from its top nails",
            "Esquinero interior, colgado de sus clavos de arriba",
        )
        .of(lang),
        InsideCorner::OneChannel => {
            said("J-channel on the wall sided second", "Canal J en la pared que se cubre segunda")
                .of(lang)
        }
        InsideCorner::TwoChannels => {
            said("A J-channel on each wall", "Un canal J en cada pared").of(lang)
        }
    }
    .to_owned()
}

/// The stud behind a joint.
pub fn stud(lang: Language, job: &Job) -> String {
    say!(
        lang,
        "Stud, {} on center",
        "Montante, {} de centro a centro",
        short(job.sheet.lengths, job.stud_spacing())
    )
}

/// The length that laps over.
pub fn seam_first(lang: Language, job: &Job) -> String {
    if job.siding().joints.is_lapped() {
        said(
            "Factory end over; the lap faces away from where people look",
            "Extremo de fábrica encima; el traslape no da hacia donde mira la gente",
        )
        .of(lang)
        .to_owned()
    } else {
        said("Boards butt, each nailed to the stud", "Tablas a tope, cada una clavada al montante")
            .of(lang)
            .to_owned()
    }
}

/// The other length.
pub fn seam_second(lang: Language, job: &Job) -> String {
    if job.siding().joints.is_lapped() {
        said("Factory end under", "Extremo de fábrica debajo").of(lang).to_owned()
    } else {
        siding(lang, job)
    }
}
