//! How a bound was found and what it leaves out, in sentences.

use crate::job::Job;
use crate::language::{Language, said};
use crate::layout::bound::BoundMethod;
use crate::model::seam::{Dual, Exclusion};
use crate::units::inches_fraction;
use crate::wording::nouns;
use crate::wording::takeoff::items::pieces;

/// The functions a bound was found by.
pub fn functions(lang: Language, method: &BoundMethod, job: &Job) -> String {
    match method {
        BoundMethod::One { function: f } => function(lang, *f, job),
        BoundMethod::Prices { prices } => say!(
            lang,
            "{} of pieces: nothing that one panel can give, one left and one right end piece at most, is worth more than a panel (Gilmore and Gomory 1961)",
            "{} de piezas: nada de lo que da un panel, con una pieza de extremo izquierdo y una de extremo derecho como máximo, vale más que un panel (Gilmore y Gomory 1961)",
            nouns::counted(lang, *prices, nouns::PRICE)
        ),
        BoundMethod::Mixed { functions } => {
            let each = functions.iter().enumerate();
            let each = each.map(|(i, f)| {
                say!(lang, "{} of {}", "{} de {}", function(lang, *f, job), ordinal(lang, i))
            });
            each.collect::<Vec<_>>().join(said(" and ", " y ").of(lang))
        }
    }
}

/// One of the stock lengths.
fn ordinal(lang: Language, place: usize) -> String {
    match place {
        0 => said("the first length", "el primer largo").of(lang).to_owned(),
        1 => said("the second", "el segundo").of(lang).to_owned(),
        n => say!(lang, "length {}", "el largo {}", n + 1),
    }
}

fn function(lang: Language, dual: Dual, job: &Job) -> String {
    let inches = |e: i64| inches_fraction(e as f64 / job.steps() as f64);
    let of = said("(Fekete and Schepers 2001)", "(Fekete y Schepers 2001)").of(lang);
    match dual {
        Dual::Length => {
            say!(
                lang,
                "total length over {} length",
                "largo total entre largo de {}",
                crate::wording::takeoff::items::piece(job.product.kind.piece()).of(lang)
            )
        }
        Dual::Rounded(k) => {
            say!(lang, "dual-feasible function u^{k} {of}", "función dual factible u^{k} {of}")
        }
        Dual::Clipped(e) => say!(
            lang,
            "dual-feasible function U^e with e = {} {of}",
            "función dual factible U^e con e = {} {of}",
            inches(e)
        ),
        Dual::Counted(e) => say!(
            lang,
            "dual-feasible function phi^e with e = {} {of}",
            "función dual factible phi^e con e = {} {of}",
            inches(e)
        ),
    }
}

/// What a bound leaves out.
pub fn exclusions(lang: Language, list: &[Exclusion], job: &Job) -> String {
    let one = |e: &Exclusion| {
        match e {
        Exclusion::SeamPlaces => said("stagger and jamb wishes, which could only raise it", "el escalonado de uniones y las preferencias de jambas, que solo podrían subirlo").of(lang).to_owned(),
        Exclusion::JointsOnStuds => {
            said("joints on studs and off the studs of near courses, which could only raise it", "las juntas sobre montantes y fuera de los montantes de hileras cercanas, que solo podrían subirlo").of(lang)
                .to_owned()
        }
        Exclusion::OffcutsWaiting => {
            said("how many offcuts may wait, which could only raise it", "cuántos sobrantes pueden esperar, que solo podría subirlo").of(lang).to_owned()
        }
        Exclusion::RippedHalves => said("reuse of the other half of ripped courses", "el aprovechamiento de la otra mitad de hileras cortadas a lo largo").of(lang).to_owned(),
        Exclusion::ReusedHalves { saved } => say!(lang, "reuse of ripped halves, by which this layout takes {} less than it counts; another might take less still", "el aprovechamiento de mitades cortadas a lo largo, con el que esta distribución lleva {} menos de lo que cuenta; otra podría llevar menos aún",
            pieces(lang, *saved, job.product.kind.piece())
        ),
    }
    };
    list.iter().map(one).collect::<Vec<_>>().join("; ")
}
