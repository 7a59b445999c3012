//! Pieces and the panels they are cut from.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::geom::tol::CUT;
use crate::geom::vocabulary::Xy;
use crate::model::half::Half;
use crate::model::hold::Hold;
use crate::model::ids::{PanelId, PieceMark};
use crate::model::notch::{Contour, Notch};

/// How a piece ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum EndCut {
    /// As it left the works.
    Factory,
    /// Cut square.
    Square,
    /// Cut at an angle.
    Angled,
    /// Cut to a contour of more than one angle, or curved.
    Shaped,
}

/// One end of a piece. Places are along the piece from its left end: from where the left cut reaches
/// farthest out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PieceEnd {
    /// How it is cut.
    pub cut: EndCut,
    /// Angle of the cut with the panel's long edge, 90 for square; of a shaped end, that of its
    /// longest slanted side.
    pub angle: f64,
    /// Where the cut reaches farthest out: 0 at the left end, the piece's length at the right.
    pub long_point: f64,
    /// Where it reaches farthest in: the long point itself where the end is square.
    pub short_point: f64,
    /// The cut from bottom edge to top edge, where it is not square.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub contour: Option<Contour>,
}

impl PieceEnd {
    /// An end that is square, at a place along the piece.
    pub fn square(cut: EndCut, at: f64) -> Self {
        PieceEnd { cut, angle: 90.0, long_point: at, short_point: at, contour: None }
    }

    /// From long point to short point, along the panel.
    pub fn set_back(&self) -> f64 {
        (self.long_point - self.short_point).abs()
    }
}

/// What is cut from one stock panel for one place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Piece {
    /// Piece mark, unique in the house.
    pub mark: PieceMark,
    /// Panel it is cut from.
    pub panel: PanelId,
    /// The half of it, where the panel is ripped along its whole length and both halves serve.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub half: Option<Half>,
    /// Where it begins on the panel, from its left end.
    pub start: f64,
    /// Where it ends on the panel.
    pub end: f64,
    /// Long point to long point.
    pub length: f64,
    /// Left end on the wall, at its long point.
    pub x0: f64,
    /// Right end on the wall, at its long point.
    pub x1: f64,
    /// Its left end and its right end.
    pub ends: [PieceEnd; 2],
    /// Cut along the length.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rip: Option<Rip>,
    /// Notches.
    pub notches: Vec<Notch>,
    /// What is done to its cut upper edges.
    #[serde(default, skip_serializing_if = "EdgeWork::is_none")]
    pub edge_work: EdgeWork,
    /// What shows on the wall: the outer ring.
    pub outline: Vec<Xy>,
    /// Cut-outs in it and in the further rings.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub holes: Vec<Vec<Xy>>,
    /// Further rings, where an opening parts the piece.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub more: Vec<Vec<Xy>>,
}

/// What is done to the cut upper edges of a piece, so that they hold without their nail hem.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct EdgeWork {
    /// Nail slots punched along edges that are nailed (common practice).
    // TrimFact::NailSlots.
    pub slots: u32,
    /// Snap-lock lugs crimped along edges that go into finish trim, and along no other (siding association
    /// on windy places; common practice).
    // TrimFact::UndersillLugs, TrimFact::LugSpacing.
    pub lugs: u32,
    /// Nails of the siding's color through edges that go into finish trim, where it takes no lugs.
    #[serde(default, skip_serializing_if = "none")]
    pub trim_nails: u32,
    /// Whether the finish trim must be furred out: the cut falls where the panel stands off the wall
    /// (common practice).
    // TrimFact::FurredUndersill.
    pub furring: bool,
    /// How it is held where it keeps no hem, or no lock, and none of these does it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub holds: Vec<Hold>,
}

#[allow(clippy::trivially_copy_pass_by_ref, reason = "serde hands it over by reference")]
fn none(count: &u32) -> bool {
    *count == 0
}

impl EdgeWork {
    /// Whether there is nothing to do.
    pub fn is_none(&self) -> bool {
        self.slots == 0 && self.lugs == 0 && self.trim_nails == 0 && self.holds.is_empty()
    }
}

impl Piece {
    /// A piece with square ends and nothing told of it but its length and what shows: for unit tests.
    #[cfg(test)]
    pub(crate) fn plain(length: f64, outline: Vec<Xy>) -> Self {
        Piece {
            mark: "T-1-1".into(),
            panel: "P1".into(),
            half: None,
            start: 0.0,
            end: length,
            length,
            x0: 0.0,
            x1: length,
            ends: [0.0, length].map(|at| PieceEnd::square(EndCut::Square, at)),
            rip: None,
            notches: Vec::new(),
            edge_work: EdgeWork::default(),
            outline,
            holes: Vec::new(),
            more: Vec::new(),
        }
    }

    /// Whether both ends are square: cut or as they left the works.
    pub fn is_square(&self) -> bool {
        self.ends.iter().all(|e| e.contour.is_none())
    }

    /// From where to where its foot or its head goes, along from its left end: from long point to
    /// long point or shorter. A notch in it counts as if it were whole.
    pub fn edge(&self, top: bool) -> (f64, f64) {
        let ys = self.outline.iter().map(|q| q[1]);
        let y = if top {
            ys.fold(f64::NEG_INFINITY, f64::max)
        } else {
            ys.fold(f64::INFINITY, f64::min)
        };
        let on = self.outline.iter().filter(|q| (q[1] - y).abs() < CUT);
        on.map(|q| q[0] - self.x0)
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), x| (a.min(x), b.max(x)))
    }
}

/// Where a panel is cut along its length.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Rip {
    /// Taken off the bottom, from the butt edge; 0 if the butt edge stays.
    pub from: f64,
    /// Kept up to this height over the butt line.
    pub to: f64,
}

/// A stock panel.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Panel {
    /// Name.
    pub id: PanelId,
    /// Stock length.
    pub stock: f64,
    /// Marks of the pieces cut from it, left to right; of two halves the lower one's first.
    pub pieces: Vec<PieceMark>,
    /// Longest length left over.
    pub offcut: f64,
    /// The part of it that lay on the site, from its left end, where the rest of it is gone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_hand: Option<[f64; 2]>,
}
