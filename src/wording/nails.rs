//! Nails in sentences.

use crate::job::Job;
use crate::model::fastening::{Fastened, Fastening, LayerKind, NailCount, NailLayer};
use crate::units::{LengthStyle, counted};
use crate::wording::siding;
use crate::wording::takeoff::items::{piece, trim_stock};

/// The nail for siding, then the nails by what they hold.
pub fn sentences(fastening: &Fastening, job: &Job) -> Vec<String> {
    let (style, boards) = (job.sheet.lengths, !job.siding().receivers.has_pockets());
    let layers: Vec<String> = fastening.layers.iter().map(|l| layer(l, style)).collect();
    let mut out = vec![format!(
        "Nails for {}s, {}: {}. Shank {} or more, head {} or more, {}. Fix as the manufacturer and the code say; wind design stays with them.",
        siding::piece(job.product.kind),
        style.short(fastening.length),
        layers.join(", "),
        fine_thickness(fastening.shank, style),
        style.short(fastening.head),
        siding::nail_material(job.siding())
    )];
    out.extend(fastening.nails.iter().map(|n| count(n, style, boards)));
    out
}

fn layer(l: &NailLayer, style: LengthStyle) -> String {
    let what = match l.layer {
        LayerKind::UnderHead => "room under the head",
        LayerKind::HemStandOff => "stand-off of the hem",
        LayerKind::Board => "board",
        LayerKind::Sheathing => "sheathing",
        LayerKind::FoamBoard => "foam board, holds no nail",
        LayerKind::OtherLayers => "other layers that hold no nail",
        LayerKind::Studs => "studs",
        LayerKind::Nailable => "nailable sheathing and framing",
    };
    let fine = l.thickness < 1.0 / 16.0;
    let thick = if fine { fine_thickness(l.thickness, style) } else { style.short(l.thickness) };
    format!("{what} {thick}")
}

fn count(n: &NailCount, style: LengthStyle, boards: bool) -> String {
    let holds = match n.holds {
        Fastened::Siding(of) => format!("{}s", piece(of)),
        Fastened::Trim(stock) => trim_stock(stock, boards).to_owned(),
    };
    format!(
        "{holds}: at most {} apart, {} nails in {}.",
        style.short(n.spacing),
        n.nails,
        counted(n.pieces, "piece")
    )
}

/// A thickness finer than sixteenths.
pub fn fine_thickness(inches: f64, style: LengthStyle) -> String {
    match style {
        LengthStyle::Feet => format!("{inches:.3}\""),
        LengthStyle::Mm => style.short(inches),
    }
}
