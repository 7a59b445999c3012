//! How few panels there can be, in sentences.

use crate::language::{Language, said};
use std::cmp::Ordering;

pub use super::bound_method::{exclusions, functions};
use crate::job::Job;
use crate::layout::bound::{Bound, KeptLeast};
use crate::model::item::SidingPiece;
use crate::model::seam::{MixedProof, ON_JAMB, StockShare};
use crate::units::counted;
use crate::wording::lists::{joined_in, number_word};
use crate::wording::takeoff::items::pieces;

/// The panel count and its proof.
pub fn panels(lang: Language, bound: &Bound, job: &Job) -> String {
    let laid = bound.certificate.panels;
    let mut out = match &bound.certificate.mixed {
        None => say!(
            lang,
            "{}; {}.",
            "{}; {}.",
            pieces(lang, laid, siding_piece(job)),
            least(lang, bound, job)
        ),
        Some(proof) => {
            let style = job.sheet.lengths;
            let each = proof
                .stocks
                .iter()
                .map(|s| say!(lang, "{} of {}", "{} de {}", s.panels, style.length(s.length)));
            let each: Vec<String> = each.collect();
            let sum = if costs(bound) {
                said("costing as much as", "que cuestan tanto como").of(lang)
            } else {
                said("together", "en total").of(lang)
            };
            // Halves in use are bought once: the takeoff says how many cartons then.
            let cartons = match bound.reuse {
                None => say!(
                    lang,
                    ", in whole cartons with spare ones {}",
                    ", en cartones completos con los de repuesto {}",
                    weighed(lang, proof, proof.bought, bound, job)
                ),
                Some(_) => String::new(),
            };
            say!(
                lang,
                "{}, {}, {sum} {}{cartons}; {}.",
                "{}, {}, {sum} {}{cartons}; {}.",
                pieces(lang, laid, siding_piece(job)),
                joined_in(lang, &each),
                weighed(lang, proof, proof.weight, bound, job),
                least(lang, bound, job)
            )
        }
    };
    if let Some(reuse) = &bound.reuse {
        let piece = siding_piece(job);
        out.push_str(&say!(
            lang,
            " Reuse takes {} less: {} are cut, {} of them for two courses.",
            " El aprovechamiento ahorra {}: hay que cortar {}, {} para dos hileras.",
            pieces(lang, reuse.saved, piece),
            pieces(lang, reuse.cut, piece),
            reuse.saved
        ));
    }
    out
}

/// How few any layout could use, without a full stop.
pub fn least(lang: Language, bound: &Bound, job: &Job) -> String {
    let certificate = &bound.certificate;
    let reuse = match bound.reuse {
        Some(_) => said(
            " and without reuse of ripped halves",
            " y sin aprovechar mitades cortadas a lo largo",
        )
        .of(lang),
        None => "",
    };
    match &certificate.mixed {
        None => {
            let than = match certificate.proven {
                true => String::new(),
                false => say!(lang, " than {}", " que {}", certificate.bound),
            };
            say!(
                lang,
                "no layout under these rules{reuse} can use fewer{than}",
                "ninguna distribución con estas reglas{reuse} puede usar menos{than}"
            )
        }
        Some(proof) => {
            let verb = if costs(bound) {
                said("cut panels that cost", "cortar paneles que cuesten").of(lang)
            } else {
                said("cut up", "cortar").of(lang)
            };
            let than = match certificate.proven {
                true => String::new(),
                false => {
                    say!(lang, " than {}", " que {}", weighed(lang, proof, proof.bound, bound, job))
                }
            };
            let lengths = number_word(lang, proof.stocks.len());
            say!(
                lang,
                "no layout with these {lengths} lengths under these rules{reuse} can {verb} less{than}",
                "ninguna distribución con estos {lengths} largos y estas reglas{reuse} puede {verb} menos{than}"
            )
        }
    }
}

/// How the bound was found and what it leaves out.
pub fn method(lang: Language, bound: &Bound, job: &Job) -> String {
    say!(
        lang,
        "The bound is by {}. It leaves out {}.",
        "El mínimo se calcula por {}. No toma en cuenta {}.",
        functions(lang, &bound.method, job),
        exclusions(lang, &bound.excludes, job)
    )
}

/// What others would take: a crew and net area, and one stock length alone where lengths are mixed.
pub fn beside(lang: Language, bound: &Bound, job: &Job) -> String {
    let (style, waste) = (job.sheet.lengths, job.takeoff.area_waste);
    let Some(proof) = &bound.certificate.mixed else {
        let each = bound.each_elevation.map_or(String::new(), |n| {
            say!(
                lang,
                " Each elevation by itself, no offcut carried over, takes {n}.",
                " Cada elevación por separado, sin pasar sobrantes, lleva {n}."
            )
        });
        return say!(
            lang,
            "Starting each run with the last offcut takes {}.{each} Net area and {waste} % would buy {}.",
            "Empezar cada tramo con el último sobrante lleva {}.{each} Por área neta más {waste} % se comprarían {}.",
            bound.crew,
            bound.by_area
        );
    };
    let alone: Vec<String> =
        proof.stocks.iter().map(|s| alone(lang, s, proof, bound, job)).collect();
    let crew = proof
        .stocks
        .iter()
        .map(|s| say!(lang, "{} of {}", "{} de {}", s.crew, style.length(s.length)));
    let crew: Vec<String> = crew.collect();
    let each = bound.each_elevation.map_or(String::new(), |weight| {
        let weighed = weighed(lang, proof, weight, bound, job);
        say!(
            lang,
            " Each elevation by itself, no offcut carried over: {weighed}.",
            " Cada elevación por separado, sin pasar sobrantes: {weighed}."
        )
    });
    say!(
        lang,
        "With one length: {}. Starting each run with the last offcut: {}.{each} Net area and {waste} %: {} of {}.",
        "Con un solo largo: {}. Empezar cada tramo con el último sobrante: {}.{each} Por área neta más {waste} %: {} de {}.",
        alone.join("; "),
        crew.join(said(", or ", ", o ").of(lang)),
        bound.by_area,
        first_length(proof, job)
    )
}

fn alone(
    lang: Language,
    stock: &StockShare,
    proof: &MixedProof,
    bound: &Bound,
    job: &Job,
) -> String {
    let length = job.sheet.lengths.length(stock.length);
    match stock.alone {
        Some(n) => {
            let weight = i64::try_from(n).unwrap_or(i64::MAX).saturating_mul(stock.weight);
            let cartons = stock.alone_bought.map_or(String::new(), |w| {
                say!(
                    lang,
                    ", in whole cartons {}",
                    ", en cartones completos {}",
                    weighed(lang, proof, w, bound, job)
                )
            });
            say!(
                lang,
                "{n} of {length} alone, {}{cartons}",
                "con solo {length}: {n}, {}{cartons}",
                weighed(lang, proof, weight, bound, job)
            )
        }
        None => say!(
            lang,
            "{length} alone keeps not every rule",
            "con solo {length} no se cumplen todas las reglas"
        ),
    }
}

/// Where seams stand beside openings and one another; none where there are no seams.
pub fn seam_places(bound: &Bound, job: &Job) -> Option<String> {
    let (seams, style) = (&bound.seams, job.sheet.lengths);
    if seams.seams == 0 {
        return None;
    }
    let (at, least) = (seams.at_openings, seams.least);
    let wish = style.short(job.seams.jamb);
    let of = |n: usize, least: Option<usize>, in_turn: Option<(usize, &str)>| match (least, in_turn)
    {
        (Some(least), _) if least == n => format!("{n}, the fewest possible"),
        (_, Some((least, so_few))) if least == n => format!("{n}, the fewest possible {so_few}"),
        // A bound of nothing bounds nothing.
        (_, Some((0, _))) | (Some(0), None) => format!("{n}, not proven the fewest"),
        (_, Some((least, so_few))) => format!("{n}, no layout {so_few} has fewer than {least}"),
        (Some(least), None) => format!("{n}, no layout of these courses has fewer than {least}"),
        (None, None) => n.to_string(),
    };
    // What comes later in turn holds where no more are of the sorts before it.
    let turn = seams.least_in_turn;
    let on_jambs = turn.filter(|t| t.in_notches == at.in_notches);
    let near_jambs = on_jambs.filter(|t| t.on_jambs == at.on_jambs);
    Some(format!(
        "{}. In a notch over a head or under a sill, or within {wish} of one: {}. Within {} of a jamb line: {}; within {wish}: {}. Stair-steps of three: {}; in one line: {}.",
        counted(seams.seams, if job.siding().joints.is_on_studs() { "joint" } else { "seam" }),
        of(at.in_notches, least.map(|l| l.in_notches), None),
        style.short(ON_JAMB),
        of(
            at.on_jambs,
            least.map(|l| l.on_jambs),
            on_jambs.map(|t| (t.on_jambs, "with so few in notches"))
        ),
        of(
            at.near_jambs,
            least.map(|l| l.near_jambs),
            near_jambs.map(|t| (t.near_jambs, "with so few of those before"))
        ),
        seams.stairs,
        seams.ladders
    ))
}

/// What the other policy for runs that one panel covers would take.
pub fn other_policy(lang: Language, bound: &Bound, job: &Job) -> Option<String> {
    let other = bound.other_policy?;
    let condition = said(
        "If runs that one panel covers might have a seam too",
        "Si los tramos que cubre un solo panel pudieran llevar también unión",
    )
    .of(lang);
    Some(match bound.best.saturating_sub(other) {
        0 => say!(
            lang,
            "{condition}, no fewer panels were found to do.",
            "{condition}, no se encontró cómo usar menos paneles."
        ),
        fewer => {
            let panels = pieces(lang, other, siding_piece(job));
            say!(
                lang,
                "{condition}, {panels} would do: {fewer} fewer.",
                "{condition}, bastarían {panels}: {fewer} menos."
            )
        }
    })
}

/// What evening the courses of boards costs or would cost.
pub fn other_courses(lang: Language, bound: &Bound, job: &Job) -> Option<String> {
    let (these, other) = (bound.best, bound.other_courses?);
    let exposure = job.sheet.lengths.short(job.product.exposure);
    let boards = |n: usize| pieces(lang, n, siding_piece(job));
    Some(match (job.boards.even, these.cmp(&other)) {
        (true, Ordering::Greater) => say!(
            lang,
            "Courses are evened: {} more than the {} that courses of {exposure} all the way up take (`boards.even = false`).",
            "Las hileras van emparejadas: {} más que las {} que llevan hileras de {exposure} hasta arriba (`boards.even = false`).",
            boards(these - other),
            boards(other)
        ),
        (true, _) => say!(
            lang,
            "Courses are evened: that costs no board; courses of {exposure} all the way up take {}.",
            "Las hileras van emparejadas: eso no cuesta ninguna tabla; hileras de {exposure} hasta arriba llevan {}.",
            boards(other)
        ),
        (false, Ordering::Less) => say!(
            lang,
            "Courses are {exposure} all the way up: evened between sills, heads and tops they would take {}, {} more (`boards.even = true`).",
            "Las hileras son de {exposure} hasta arriba: emparejadas entre repisas, cabezales y remates llevarían {}, {} más (`boards.even = true`).",
            boards(other),
            other - these
        ),
        (false, _) => say!(
            lang,
            "Courses are {exposure} all the way up: evened between sills, heads and tops they would take {}, no more (`boards.even = true`).",
            "Las hileras son de {exposure} hasta arriba: emparejadas entre repisas, cabezales y remates llevarían {}, no más (`boards.even = true`).",
            boards(other)
        ),
    })
}

fn siding_piece(job: &Job) -> SidingPiece {
    job.product.kind.piece()
}

/// Whether cost is kept least, not length.
fn costs(bound: &Bound) -> bool {
    bound.kept_least == KeptLeast::Cost
}

fn first_length(proof: &MixedProof, job: &Job) -> String {
    job.sheet.lengths.length(proof.stocks.first().map_or(0.0, |s| s.length))
}

/// A weight as a length, or as panels of the first length.
fn weighed(lang: Language, proof: &MixedProof, weight: i64, bound: &Bound, job: &Job) -> String {
    let style = job.sheet.lengths;
    let Some(first) = proof.stocks.first() else { return String::new() };
    let panels = weight as f64 / first.weight.max(1) as f64;
    if costs(bound) {
        say!(
            lang,
            "{} panels of {}",
            "{} paneles de {}",
            (panels * 100.0).round() / 100.0,
            style.length(first.length)
        )
    } else {
        style.length(panels * first.length)
    }
}
