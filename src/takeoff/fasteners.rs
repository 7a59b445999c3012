//! Nails: length, spacing and how many a piece takes.

use super::lines::{siding_piece, whole};
use crate::job::Job;
use crate::job::siding::system::NailHold;
use crate::layout::laid::LaidHouse;
use crate::model::fastening::{Fastened, Fastening, LayerKind, NailCount, NailLayer, UNDER_HEAD};
use crate::model::trim::{TrimPiece, TrimStock};

/// Nails of one piece: at most `spacing` apart and one more (`NailFact::Spacing`,
/// `TakeoffFact::NailsBySquare`).
pub(super) fn nails(length: f64, spacing: f64) -> f64 {
    whole(length / spacing.max(1.0)) + 1.0
}

/// Shortest nail in force.
fn shortest(job: &Job) -> f64 {
    job.fasteners.shortest.unwrap_or(job.siding().fastening.shortest)
}

/// The least nail to buy that reaches through what holds no nail and far enough into what does
/// (`NailFact::NailLength`): of the job's lengths, else as nails are stocked. The 1/32 in under the
/// head (`NailFact::RoomUnderHead`) alone does not call for the next size; the worked example leaves
/// it out too.
fn nail_length(job: &Job, through: f64) -> f64 {
    let least = (through + job.penetration()).max(shortest(job));
    let parts = job.siding().fastening.lengths_per_inch;
    let reaches = job.fasteners.lengths.iter().copied().filter(|l| *l >= least - 1e-9);
    reaches.reduce(f64::min).unwrap_or_else(|| (whole(least * parts) / parts).max(shortest(job)))
}

/// What a panel's nail goes through before it holds.
fn layers(job: &Job) -> Vec<NailLayer> {
    let f = &job.fasteners;
    [
        (LayerKind::HemStandOff, job.stand_off()),
        (LayerKind::Board, job.product.thickness.unwrap_or(0.0)),
        (LayerKind::Sheathing, job.sheathing()),
        (LayerKind::FoamBoard, f.foam_board),
        (LayerKind::OtherLayers, f.other_layers),
    ]
    .map(|(layer, thickness)| NailLayer { layer, thickness })
    .to_vec()
}

/// How much that is, inches.
pub(super) fn through(job: &Job) -> f64 {
    layers(job).iter().map(|l| l.thickness).sum()
}

/// Length of a nail for siding, inches.
pub(super) fn siding_nail(job: &Job) -> f64 {
    nail_length(job, through(job))
}

/// What a panel's nail goes through, and its length (`NailFact::NailLength`, `NailFact::Penetration`,
/// `NailFact::FoamHoldsNothing`).
fn built_up(job: &Job) -> Fastening {
    // What is nailed to studs is nailed tight; a hem hangs under the head.
    let head = if job.siding().fastening.through.is_slotted() { UNDER_HEAD } else { 0.0 };
    let mut all = vec![NailLayer { layer: LayerKind::UnderHead, thickness: head }];
    all.extend(layers(job));
    let holds = match job.siding().fastening.holds {
        NailHold::Studs => LayerKind::Studs,
        NailHold::SheathingAndFraming => LayerKind::Nailable,
    };
    all.push(NailLayer { layer: holds, thickness: job.penetration() });
    all.retain(|l| l.thickness > 0.0);
    Fastening {
        needed: all.iter().map(|l| l.thickness).sum(),
        layers: all,
        length: siding_nail(job),
        shank: job.nail_shank(),
        head: job.fasteners.head,
        nails: Vec::new(),
    }
}

/// Nails of a house: length, spacing and counts.
pub fn fastening(layout: &LaidHouse) -> Fastening {
    let mut out = built_up(&layout.job);
    let spacing = layout.job.nail_spacing();
    let (pieces, nailed) =
        layout.pieces().fold((0, 0.0), |(n, sum), (.., p)| (n + 1, sum + nails(p.length, spacing)));
    let holds = Fastened::Siding(siding_piece(layout));
    out.nails.push(NailCount { holds, spacing, pieces, nails: nailed });
    out.nails.extend(TrimStock::ALL.into_iter().filter_map(|s| trim_count(layout, s)));
    out
}

/// Nails of one stock of trim, where there is any.
fn trim_count(layout: &LaidHouse, stock: TrimStock) -> Option<NailCount> {
    let trims = layout.trims.iter().filter(|t| !t.kind.behind());
    let mine: Vec<&TrimPiece> = trims.filter(|t| t.kind.stock() == stock).collect();
    let spacing = trim_spacing(layout, stock);
    (!mine.is_empty()).then(|| NailCount {
        holds: Fastened::Trim(stock),
        spacing,
        pieces: mine.len(),
        nails: mine.iter().map(|t| trim_nails(t, spacing)).sum(),
    })
}

/// Spacing of nails in a stock of trim.
pub(super) fn trim_spacing(layout: &LaidHouse, stock: TrimStock) -> f64 {
    let f = &layout.job.fasteners;
    let own = match stock {
        TrimStock::OutsidePost | TrimStock::InsidePost => f.post_spacing,
        TrimStock::JChannel | TrimStock::FlexibleChannel => f.channel_spacing,
        _ => f.strip_spacing,
    };
    own.unwrap_or(layout.job.takeoff.trim_nail_spacing)
}

pub(super) fn trim_nails(t: &TrimPiece, spacing: f64) -> f64 {
    // A post has a flange on both walls.
    let post = matches!(t.kind.stock(), TrimStock::OutsidePost | TrimStock::InsidePost);
    (if post { 2.0 } else { 1.0 }) * nails(t.length, spacing)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::siding::kind::{BoardSiding, PanelSiding, Siding};

    #[test]
    fn nail_length_of_the_worked_example() {
        // NailFact::NailLength: 3/4 hem stand-off and 1/2 foam board: 3/4 + 1/2 + 1 1/4 = 2 1/2.
        let of = |kind: Siding, through: f64| {
            let mut job = Job { product: crate::job::Product::of(kind), ..Job::default() };
            let plain = nail_length(&job, through);
            job.fasteners.lengths = vec![1.5, 1.75, 2.0, 2.5, 3.0, 3.25, 3.5];
            (plain, nail_length(&job, through))
        };
        assert_eq!(of(Siding::Panel(PanelSiding::FoamBacked), 1.25), (2.5, 2.5));
        assert_eq!(of(Siding::Panel(PanelSiding::FoamBacked), 0.75), (2.5, 2.5)); // NailFact::FoamBackedNails
        assert_eq!(of(Siding::Panel(PanelSiding::FoamBacked), 1.75), (3.0, 3.0));
        // NailFact::PlainVinylNails: 1 1/2 to 2 in for plain vinyl.
        assert_eq!(of(Siding::Panel(PanelSiding::Vinyl), 0.0), (1.5, 1.5));
        assert_eq!(of(Siding::Panel(PanelSiding::Vinyl), 0.5), (2.0, 1.75));
        // Example::NailsThroughBoards: 1 1/2 in of penetration in all, foam counts nothing; 1/2
        // in bevel siding takes 2 in (6d), 3/4 in boards over 1 in of foam 3 1/4 in (12d).
        assert_eq!(of(Siding::Board(BoardSiding::Wood), 0.5), (2.0, 2.0));
        assert_eq!(of(Siding::Board(BoardSiding::Wood), 1.75), (3.25, 3.25));
        assert_eq!(of(Siding::Panel(PanelSiding::FoamBacked), 3.75).1, 5.0); // over the list
    }

    #[test]
    fn nails_of_a_square_of_double_four() {
        // TakeoffFact::NailsBySquare: about 125 a square for D4 at 16 in: 12 pieces of 12 ft 6 in,
        // 150/16 + 1 each.
        let exact: f64 = 12.0 * (150.0 / 16.0 + 1.0);
        assert!((exact - 125.0).abs() < 1.0);
        assert_eq!(12.0 * nails(150.0, 16.0), 132.0); // whole nails a piece
    }
}
