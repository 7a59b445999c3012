//! Everything a cut drawing says, in words, so that nothing hangs on the room the drawing has.

use crate::annotate::words::{cut, short};
use crate::geom::tol::{CUT, MARK};
use crate::geom::vocabulary::Xy;
use crate::job::Product;
use crate::layout::course::{LaidCourse, LaidRun};
use crate::layout::piece::{EndCut, Piece};
use crate::model::half::Half;
use crate::model::notch::{Contour, Notch, NotchSide};
use crate::units::LengthStyle;
use crate::wording::siding;

pub(super) fn describe(
    p: &Piece,
    k: &LaidCourse,
    product: &Product,
    style: LengthStyle,
) -> Vec<String> {
    let over_face = product.over_face(k.top - k.bottom);
    let mut out = Vec::new();
    out.extend(edges(p, style));
    for (name, end) in ["left", "right"].into_iter().zip(&p.ends) {
        let (angle, set) = (end.angle, end.set_back());
        let Some(contour) = &end.contour else { continue };
        let words = match end.cut {
            EndCut::Angled => {
                let foot = contour.points.first().zip(contour.points.last());
                let long = foot.is_some_and(|(a, b)| (a[0] < b[0]) == (name == "left"));
                let plumb = contour.points.len() > 2;
                format!(
                    "{name} end {:.1}° from the long edge, {:.1}° from square; long to short point {}, long point at the {}{}",
                    angle.abs(),
                    90.0 - angle.abs(),
                    short(style, set),
                    if long { "foot" } else { "head" },
                    if plumb { format!("; {}", points(contour, style)) } else { String::new() }
                )
            }
            _ => format!(
                "{name} end to a contour, {} from long to short point; {}",
                short(style, set),
                points(contour, style)
            ),
        };
        out.push(words);
    }
    if let Some(r) = &p.rip {
        let mut words = format!("rip: keep {}", short(style, r.to - r.from));
        if r.from > 0.0 {
            words.push_str(&format!(", {} off the butt edge", short(style, r.from)));
        }
        let over = (k.top - k.bottom) - r.to;
        if over > CUT {
            words.push_str(&format!(
                ", {} off the top: {} of face and the {}",
                short(style, over + over_face),
                short(style, over),
                siding::over_face(product.system())
            ));
        }
        out.push(words);
    }
    out.extend(p.half.map(|half| match half {
        Half::Lower => {
            "keep the part ripped off: another course takes it, see the cut list".to_owned()
        }
        Half::Upper => "from the upper half of a ripped panel, see the cut list".to_owned(),
    }));
    // A ripped head has nothing left over its face.
    let ripped = p.rip.as_ref().is_some_and(|r| r.to < k.top - k.bottom - CUT);
    let over_face = (siding::over_face(product.system()), if ripped { 0.0 } else { over_face });
    out.extend(p.notches.iter().map(|n| notch(n, over_face, style)));
    let work = &p.edge_work;
    if work.slots > 0 {
        out.push(format!("punch {} nail slots along the cut edge", work.slots));
    }
    let fur = if work.furring { "; fur out behind the finish trim to keep the slope" } else { "" };
    if work.lugs > 0 {
        out.push(format!("punch {} snap-lock lugs along the cut edge{fur}", work.lugs));
    }
    if work.trim_nails > 0 {
        out.push(siding::trim_nails(work.trim_nails) + fur);
    }
    out.extend(recess(product, p, k));
    if !p.more.is_empty() {
        out.push("the opening parts it: mark it in place".to_owned());
    }
    out
}

/// Which ends of a piece are cut and meet a seam, as one at a bare fixture does. Boards butt with square
/// ends: nothing laps at a joint.
pub(super) fn cut_at_seams(product: &Product, run: &LaidRun, p: &Piece) -> (bool, bool) {
    let at = run.pieces.iter().position(|q| q.mark == p.mark);
    let Some(at) = at.filter(|_| product.system().joints.is_lapped()) else {
        return (false, false);
    };
    let left = at > 0 && p.ends[0].cut == EndCut::Square;
    (left, at + 1 < run.pieces.len() && p.ends[1].cut == EndCut::Square)
}

/// A cut end at a seam lacks what lets the next panel lap (`SidingFact::CutEndAtSeam`).
fn recess(product: &Product, p: &Piece, k: &LaidCourse) -> Option<String> {
    let run = k.runs.iter().find(|r| r.pieces.iter().any(|q| q.mark == p.mark))?;
    let ends = match cut_at_seams(product, run, p) {
        (true, true) => "both ends meet seams",
        (true, false) => "left end meets a seam",
        (false, true) => "right end meets a seam",
        (false, false) => return None,
    };
    Some(format!("{ends}: cut hem, lock and any foam back there, so that the panels can lap"))
}

/// Length at the foot and at the head, where they are not one.
fn edges(p: &Piece, style: LengthStyle) -> Option<String> {
    if p.is_square() {
        return None;
    }
    let of = |top: bool| {
        let (a, b) = p.edge(top);
        if b - a > MARK { cut(style, b - a) } else { "a point".to_owned() }
    };
    Some(format!("foot {}, head {}", of(false), of(true)))
}

/// Along from the left end, up from the butt line.
fn points(c: &Contour, style: LengthStyle) -> String {
    // Hard spaces: a point is not parted at the end of a line.
    let one =
        |q: &Xy| format!("{} / {}", short(style, q[0]), short(style, q[1])).replace(' ', "\u{a0}");
    let each = c.points.iter().map(one);
    let list = each.collect::<Vec<_>>().join(", ");
    match c.spacing {
        Some(s) => format!("curve, points every {}, along / up: {list}", short(style, s)),
        None => format!("corners, along / up: {list}"),
    }
}

fn notch(n: &Notch, over_face: (&str, f64), style: LengthStyle) -> String {
    let around = n.around.iter().map(|id| id.rsplit('-').next().unwrap_or(id));
    let around = around.collect::<Vec<_>>().join(" and ");
    let at = if around.is_empty() { String::new() } else { format!(" at {around}") };
    let (left, width) = (cut(style, n.left), cut(style, n.told_width()));
    let depth = short(style, n.depth);
    let foot = short(style, n.foot.unwrap_or(0.0));
    let mut out = match n.side {
        NotchSide::Top => {
            let whole = if over_face.1 > 0.0 {
                format!(
                    " of the face, {} with the {}",
                    short(style, n.depth + over_face.1),
                    over_face.0
                )
            } else {
                String::new()
            };
            format!(
                "notch{at}: {left} from the left end, {width} wide, {depth} deep from the head{whole}"
            )
        }
        NotchSide::Bottom => {
            format!("notch{at}: {left} from the left end, {width} wide, {depth} deep from the foot")
        }
        NotchSide::Left => {
            format!("slot{at} from the left end: {width} long, {depth} high, {foot} up")
        }
        NotchSide::Right => {
            format!("slot{at} from the right end: {width} long, {depth} high, {foot} up")
        }
        NotchSide::Hole => {
            format!("hole{at}: {left} from the left end, {foot} up, {width} long, {depth} high")
        }
    };
    if let Some(c) = &n.contour {
        out.push_str(&format!("; {}", points(c, style)));
    }
    out
}
