//! Nails in sentences.

use super::nouns::{self, counted};
use crate::job::Job;
use crate::language::{Language, said};
use crate::model::fastening::{Fastened, Fastening, LayerKind, NailCount, NailLayer};
use crate::units::LengthStyle;
use crate::wording::siding;
use crate::wording::takeoff::items::{siding_noun, trim_stock};

/// The nail for siding, then the nails by what they hold.
pub fn sentences(lang: Language, fastening: &Fastening, job: &Job) -> Vec<String> {
    let (style, boards) = (job.sheet.lengths, !job.siding().receivers.has_pockets());
    let layers: Vec<String> = fastening.layers.iter().map(|l| layer(lang, l, style)).collect();
    let mut out = vec![say!(
        lang,
        "Nails for {}, {}: {}. Shank {} or more, head {} or more, {}. Fix as the manufacturer and the code say; wind design stays with them.",
        "Clavos para {}, {}: {}. Espiga de {} o más, cabeza de {} o más, {}. Fije según digan el fabricante y el código; el diseño por viento es de ellos.",
        siding::pieces(job.product.kind).of(lang),
        style.short(fastening.length),
        layers.join(", "),
        fine_thickness(fastening.shank, style),
        style.short(fastening.head),
        siding::nail_material(job.siding()).of(lang)
    )];
    out.extend(fastening.nails.iter().map(|n| count(lang, n, style, boards)));
    out
}

fn layer(lang: Language, l: &NailLayer, style: LengthStyle) -> String {
    let what = match l.layer {
        LayerKind::UnderHead => said("room under the head", "holgura bajo la cabeza").of(lang),
        LayerKind::HemStandOff => said("stand-off of the hem", "separación de la aleta").of(lang),
        LayerKind::Board => said("board", "tabla").of(lang),
        LayerKind::Sheathing => said("sheathing", "entablado").of(lang),
        LayerKind::FoamBoard => {
            said("foam board, holds no nail", "placa de espuma, no sostiene clavo").of(lang)
        }
        LayerKind::OtherLayers => {
            said("other layers that hold no nail", "otras capas que no sostienen clavo").of(lang)
        }
        LayerKind::Studs => said("studs", "montantes").of(lang),
        LayerKind::Nailable => {
            said("nailable sheathing and framing", "entablado clavable y armazón").of(lang)
        }
    };
    let fine = l.thickness < 1.0 / 16.0;
    let thick = if fine { fine_thickness(l.thickness, style) } else { style.short(l.thickness) };
    format!("{what} {thick}")
}

fn count(lang: Language, n: &NailCount, style: LengthStyle, boards: bool) -> String {
    let holds = match n.holds {
        Fastened::Siding(of) => siding_noun(of).many.of(lang).to_owned(),
        Fastened::Trim(stock) => trim_stock(stock, boards).of(lang).to_owned(),
    };
    say!(
        lang,
        "{holds}: at most {} apart, {} nails in {}.",
        "{holds}: cada {} como máximo, {} clavos en {}.",
        style.short(n.spacing),
        n.nails,
        counted(lang, n.pieces, nouns::PIECE)
    )
}

/// A thickness finer than sixteenths.
pub fn fine_thickness(inches: f64, style: LengthStyle) -> String {
    match style {
        LengthStyle::Feet => format!("{inches:.3}\""),
        LengthStyle::Mm => style.short(inches),
    }
}
