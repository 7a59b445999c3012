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
use crate::real::Real;
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
    (seam_ends, ripped_alone): (SeamEnds, bool),
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
    out.extend(p.notches.iter().map(|n| notch(n, (p, course), &left, style)));
    // What is punched along pieces of several lengths stands beside their marks.
    let work = &p.edge_work;
    let counted = EdgeWork { slots: 0, lugs: 0, trim_nails: 0, ..work.clone() };
    out.extend(edge_work(if ripped_alone { &counted } else { work }));
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

/// A curve, which no list of points tells as well as its pattern.
const CURVE: &str = "curve: by its full-size pattern at the end of the set";

/// Whether a notch is round, and so told by its size and middle.
pub fn is_round(n: &Notch) -> bool {
    Round::of(n).is_some()
}

/// Points from the left end and from the butt line.
fn points(c: &Contour, style: LengthStyle) -> String {
    // Hard spaces: a point is not parted at the end of a line.
    let one =
        |q: &Xy| format!("{} / {}", short(style, q[0]), short(style, q[1])).replace(' ', "\u{a0}");
    let each = c.points.iter().map(one);
    let list = each.collect::<Vec<_>>().join(", ");
    match c.spacing {
        Some(_) => CURVE.to_owned(),
        None => format!("corners, from left / from bottom: {list}"),
    }
}

/// From where to where a notch goes up from the butt edge.
pub fn notch_span(n: &Notch, rip: &Option<Rip>, course: &LaidCourse) -> (f64, f64) {
    let face = course.top - course.bottom;
    let (low, high) = rip.as_ref().map_or((0.0, face), |r| (r.from, r.to));
    match n.side {
        NotchSide::Top => (high - n.depth, high),
        NotchSide::Bottom => (low, low + n.depth),
        NotchSide::Left | NotchSide::Right | NotchSide::Hole => {
            let foot = n.foot.unwrap_or(0.0);
            (foot, foot + n.depth)
        }
    }
}

fn notch(
    n: &Notch,
    (p, course): (&Piece, &LaidCourse),
    above: &Above,
    style: LengthStyle,
) -> String {
    let around = n.around.iter().map(|id| id.rsplit('-').next().unwrap_or(id));
    let around = around.collect::<Vec<_>>().join(" and ");
    let at = if around.is_empty() { String::new() } else { format!(" at {around}") };
    if let Some(round) = Round::of(n) {
        return round_hole(&round, &at, p.length, style);
    }
    // Hard spaces: a length is not parted at the end of a line.
    let [left, width] = [n.left, n.told_width()].map(|v| hard(&length(style, v)));
    let (low, high) = notch_span(n, &p.rip, course);
    let [low, high, depth] = [low, high, n.depth].map(|v| hard(&short(style, style.to_mark(v))));
    let mut out = match n.side {
        NotchSide::Top => {
            let whole = if above.height > 0.0 {
                let all = hard(&short(style, style.to_mark(n.depth + above.height)));
                format!("{depth} of the face, {all} with the {}", above.name)
            } else {
                format!("{depth} deep")
            };
            format!(
                "notch{at}: {left} from the left end, {width} wide, from {low} over the butt edge up; {whole}"
            )
        }
        NotchSide::Bottom => format!(
            "notch{at}: {left} from the left end, {width} wide, up to {high} over the butt edge"
        ),
        NotchSide::Left | NotchSide::Right => format!(
            "slot{at}: {left} from the left end, {width} long, from {low} to {high} over the butt edge"
        ),
        NotchSide::Hole => format!(
            "hole{at}: {left} from the left end, {width} long, from {low} to {high} over the butt edge"
        ),
    };
    if let Some(c) = &n.contour {
        out.push_str(&format!("; {}", points(c, style)));
    }
    out
}

/// A hole round a pipe or another round fixture, whole or as far as the piece reaches.
struct Round {
    across: f64,
    /// Its middle: from the left end, over the butt edge.
    at: Xy,
}

/// How far the points of a hole may lie off its circle, inches: clearance is kept aside and up or down, which
/// makes it a hair more than round.
const OUT_OF_ROUND: f64 = 3.0 / 16.0;

impl Round {
    fn of(n: &Notch) -> Option<Self> {
        let c = n.contour.as_ref().filter(|c| c.spacing.is_some())?;
        let foot = n.foot?;
        let r = n.depth / 2.0;
        let x = match n.side {
            NotchSide::Hole if (n.width - n.depth).abs() < OUT_OF_ROUND => n.left + n.width / 2.0,
            NotchSide::Right => n.left + r,
            NotchSide::Left => n.left + n.width - r,
            _ => return None,
        };
        let at = [x, foot + r];
        let straight = |q: &Xy| match n.side {
            NotchSide::Right => q[0] > x,
            NotchSide::Left => q[0] < x,
            _ => false,
        };
        let on = |q: &Xy| {
            let level = straight(q) && ((q[1] - at[1]).abs() - r).abs() < OUT_OF_ROUND;
            level || ((q[0] - at[0]).hypotenuse(q[1] - at[1]) - r).abs() < OUT_OF_ROUND
        };
        c.points.iter().all(on).then_some(Round { across: n.depth, at })
    }
}

fn hard(length: &str) -> String {
    length.replace(' ', "\u{a0}")
}

fn round_hole(round: &Round, at: &str, whole: f64, style: LengthStyle) -> String {
    let up = hard(&short(style, style.to_mark(round.at[1])));
    let across = hard(&short(style, round.across));
    let x = round.at[0];
    let from = if x < 0.0 {
        format!("{} beyond the left end", hard(&short(style, style.to_mark(-x))))
    } else if x > whole {
        format!("{} beyond the right end", hard(&short(style, style.to_mark(x - whole))))
    } else {
        format!("{} from the left end", hard(&length(style, style.to_mark(x))))
    };
    format!("round hole{at}: {across} across, its middle {from}, {up} over the butt edge")
}

/// A piece with its length, and what is punched along its cut edge.
pub fn marked_length(p: &Piece, style: LengthStyle) -> String {
    let told = length(style, style.to_cut(p.length));
    let w = &p.edge_work;
    let mut out = format!("{}\u{a0}{told}", p.mark).replace(' ', "\u{a0}");
    for (count, what) in [(w.slots, "slot"), (w.lugs, "lug"), (w.trim_nails, "nail")] {
        if count > 0 {
            let counted = crate::units::counted(count as usize, what).replace(' ', "\u{a0}");
            out.push_str(&format!("\u{a0}({counted})"));
        }
    }
    out
}
