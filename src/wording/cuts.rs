//! Everything a cut drawing says, in words, so that nothing hangs on the room the drawing has.

use super::sheet_lengths::{length, short};
use super::siding;
use crate::geom::tol::CUT;
use crate::geom::vocabulary::Xy;
use crate::job::Product;
use crate::layout::course::LaidCourse;
use crate::layout::piece::{EdgeWork, EndCut, Piece, PieceEnd, Rip};
use crate::layout::told;
use crate::model::half::Half;
use crate::model::hold::Hold;
use crate::model::notch::{Contour, Notch, NotchSide};
use crate::units::LengthStyle;

/// Which ends of a piece are cut and meet a seam: left, right.
pub type SeamEnds = (bool, bool);

/// A piece that an opening goes right through.
pub const SCRIBE: &str = "scribe in place";

/// What is done to a piece, line by line.
pub fn piece(
    p: &Piece,
    course: &LaidCourse,
    product: &Product,
    seam_ends: SeamEnds,
    style: LengthStyle,
) -> Vec<String> {
    let face = course.top - course.bottom;
    let above =
        Above { name: siding::over_face(product.system()), height: product.over_face(face) };
    let mut out = Vec::new();
    out.extend(edges(p, style));
    let p = &told::piece(p, style);
    let ends = ["left", "right"].into_iter().zip(&p.ends);
    out.extend(ends.filter_map(|(name, e)| end(name, e, style)));
    out.extend(p.rip.as_ref().map(|r| rip(r, face, &above, style)));
    out.extend(p.half.map(|h| half_source(h).to_owned()));
    // A ripped top edge has nothing left over its face.
    let ripped = p.rip.as_ref().is_some_and(|r| r.to < face - CUT);
    let left = Above { height: if ripped { 0.0 } else { above.height }, ..above };
    out.extend(p.notches.iter().map(|n| notch(n, &left, style)));
    out.extend(edge_work(&p.edge_work));
    out.extend(recess(seam_ends, product.has_foam()));
    if !p.more.is_empty() {
        out.push(SCRIBE.to_owned());
    }
    out
}

/// What a length has over the face of its course.
struct Above {
    name: &'static str,
    height: f64,
}

/// Length at the bottom and at the top edge, where they are not one.
fn edges(p: &Piece, style: LengthStyle) -> Option<String> {
    if p.is_square() {
        return None;
    }
    let long = |top: bool| {
        told::edge(p, top, style).map_or("a point".to_owned(), |(a, b)| length(style, b - a))
    };
    Some(format!("bottom (butt) edge {}, top edge {}", long(false), long(true)))
}

/// An end that is not square.
fn end(name: &str, end: &PieceEnd, style: LengthStyle) -> Option<String> {
    let contour = end.contour.as_ref()?;
    let set_back = short(style, end.set_back());
    if end.cut != EndCut::Angled {
        let points = points(contour, style);
        return Some(format!(
            "{name} end to a contour, {set_back} from long to short point; {points}"
        ));
    }
    let ends = contour.points.first().zip(contour.points.last());
    let long = ends.is_some_and(|(a, b)| (a[0] < b[0]) == (name == "left"));
    let plumb = contour.points.len() > 2;
    Some(format!(
        "{name} end {:.1}° from the long edge, {:.1}° from square; long to short point {set_back}, long point at the {}{}",
        end.angle.abs(),
        90.0 - end.angle.abs(),
        if long { "bottom (butt) edge" } else { "top edge" },
        if plumb { format!("; {}", points(contour, style)) } else { String::new() }
    ))
}

fn rip(r: &Rip, face: f64, above: &Above, style: LengthStyle) -> String {
    let mut out = format!("rip to {}", short(style, r.to - r.from));
    if r.from > 0.0 {
        out.push_str(&format!(", {} off the butt edge", short(style, r.from)));
    }
    let over = face - r.to;
    if over > CUT {
        out.push_str(&format!(
            ", {} off the top: {} of face and the {}",
            short(style, over + above.height),
            short(style, over),
            above.name
        ));
    }
    out
}

/// Which half of a ripped panel a piece is.
pub fn half(half: Half) -> &'static str {
    match half {
        Half::Lower => "lower half",
        Half::Upper => "upper half",
    }
}

fn half_source(half: Half) -> &'static str {
    match half {
        Half::Lower => "keep the part ripped off: another course takes it, see the cut list",
        Half::Upper => "from the upper half of a ripped panel, see the cut list",
    }
}

fn edge_work(work: &EdgeWork) -> Vec<String> {
    let mut out = Vec::new();
    if work.slots > 0 {
        out.push(format!("punch {} nail slots along the cut edge", work.slots));
    }
    let shim = if work.furring {
        "; shim behind the undersill (finish) trim to hold the panel angle"
    } else {
        ""
    };
    if work.lugs > 0 {
        out.push(format!("punch {} snap-lock lugs along the cut edge{shim}", work.lugs));
    }
    if work.trim_nails > 0 {
        out.push(siding::trim_nails(work.trim_nails) + shim);
    }
    out.extend(work.holds.iter().map(|h| hold(*h).to_owned()));
    out
}

/// How a piece is held that keeps no hem, or no lock.
pub fn hold(hold: Hold) -> &'static str {
    match hold {
        Hold::RoofChannel => {
            "no lock where its butt is cut: that edge goes in the roof channel, the nails of its hem hold it"
        }
        Hold::HeadChannel => {
            "no lock: its foot goes in the head channel, the nails of its hem hold it"
        }
        Hold::ChannelOver => "no hem: its top edge fills the channel, no nail",
        Hold::FaceNail => "no hem: held in the channels at its ends, one small nail in its face",
    }
}

/// What holds a piece that keeps no hem, or no lock; for a table.
pub fn holds(work: &EdgeWork) -> String {
    work.holds.iter().map(|h| hold(*h)).collect::<Vec<_>>().join("; ")
}

/// A cut end at a seam lacks what lets the next panel lap (`SidingFact::CutEndAtSeam`).
fn recess(seam_ends: SeamEnds, has_foam: bool) -> Option<String> {
    let ends = match seam_ends {
        (true, true) => "both ends meet seams",
        (true, false) => "left end meets a seam",
        (false, true) => "right end meets a seam",
        (false, false) => return None,
    };
    let what = if has_foam { "hem, lock and foam" } else { "hem and lock" };
    Some(format!("{ends}: cut {what} back there, so that the panels can lap"))
}

/// What a list of square cuts says of a length's ends.
pub fn square_ends(ends: [EndCut; 2]) -> &'static str {
    match ends {
        [EndCut::Factory, EndCut::Factory] => "whole",
        [EndCut::Square, EndCut::Square] => "both ends cut",
        [EndCut::Square, _] => "left end cut",
        _ => "right end cut",
    }
}

/// Points from the left end and from the butt line.
fn points(c: &Contour, style: LengthStyle) -> String {
    // Hard spaces: a point is not parted at the end of a line.
    let one =
        |q: &Xy| format!("{} / {}", short(style, q[0]), short(style, q[1])).replace(' ', "\u{a0}");
    let each = c.points.iter().map(one);
    let list = each.collect::<Vec<_>>().join(", ");
    match c.spacing {
        Some(s) => {
            format!("curve, points every {}, from left / from bottom: {list}", short(style, s))
        }
        None => format!("corners, from left / from bottom: {list}"),
    }
}

fn notch(n: &Notch, above: &Above, style: LengthStyle) -> String {
    let around = n.around.iter().map(|id| id.rsplit('-').next().unwrap_or(id));
    let around = around.collect::<Vec<_>>().join(" and ");
    let at = if around.is_empty() { String::new() } else { format!(" at {around}") };
    let (left, width) = (length(style, n.left), length(style, n.told_width()));
    let depth = short(style, n.depth);
    let from_bottom = short(style, n.foot.unwrap_or(0.0));
    let mut out = match n.side {
        NotchSide::Top => {
            let whole = if above.height > 0.0 {
                let all = short(style, n.depth + above.height);
                format!(" of the face, {all} with the {}", above.name)
            } else {
                String::new()
            };
            format!(
                "notch{at}: {left} from the left end, {width} wide, {depth} deep from the top edge{whole}"
            )
        }
        NotchSide::Bottom => format!(
            "notch{at}: {left} from the left end, {width} wide, {depth} deep from the bottom (butt) edge"
        ),
        NotchSide::Left => format!(
            "slot{at} from the left end: {width} long, {depth} high, {from_bottom} from bottom"
        ),
        NotchSide::Right => format!(
            "slot{at} from the right end: {width} long, {depth} high, {from_bottom} from bottom"
        ),
        NotchSide::Hole => format!(
            "hole{at}: {left} from the left end, {from_bottom} from bottom, {width} long, {depth} high"
        ),
    };
    if let Some(c) = &n.contour {
        out.push_str(&format!("; {}", points(c, style)));
    }
    out
}
