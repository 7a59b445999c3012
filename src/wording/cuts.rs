//! Everything a cut drawing says, in words, so that nothing hangs on the room the drawing has.

use super::notches::{Above, notch, points};
pub use super::notches::{is_round, notch_span};
use super::nouns::{self, counted};
use super::sheet_lengths::{hard, length, short};
use super::siding;
use crate::geom::tol::CUT;
use crate::job::Product;
use crate::language::{Language, Said, said};
use crate::layout::course::LaidCourse;
use crate::layout::piece::{EdgeWork, EndCut, Piece, PieceEnd, Rip};
use crate::layout::told;
use crate::model::half::Half;
use crate::model::hold::Hold;
use crate::model::notch::{Notch, NotchSide};
use crate::units::LengthStyle;

/// Which ends of a piece are cut and meet a seam: left, right.
pub type SeamEnds = (bool, bool);

/// A piece that an opening goes right through.
pub const SCRIBE: Said = said("scribe in place", "marcar en su lugar");

/// What is done to a piece, line by line.
pub fn piece(
    lang: Language,
    p: &Piece,
    course: &LaidCourse,
    product: &Product,
    (seam_ends, ripped_alone): (SeamEnds, bool),
    style: LengthStyle,
) -> Vec<String> {
    let face = course.top - course.bottom;
    let above = Above {
        name: siding::over_face(product.system()).of(lang),
        height: product.over_face(face),
    };
    let mut out = Vec::new();
    out.extend(edges(lang, p, style));
    let p = &told::piece(p, style);
    let ends = [said("left", "izquierdo").of(lang), said("right", "derecho").of(lang)]
        .into_iter()
        .zip(&p.ends);
    out.extend(ends.filter_map(|(name, e)| end(lang, name, e, style)));
    let taper = tapered(p);
    out.extend(p.rip.as_ref().map(|r| match taper {
        Some((_, ends)) => taper_rip(lang, ends, style),
        None => rip(lang, r, face, &above, style),
    }));
    out.extend(p.half.map(|h| half_source(h).of(lang).to_owned()));
    // A ripped top edge has nothing left over its face.
    let ripped = p.rip.as_ref().is_some_and(|r| r.to < face - CUT);
    let left = Above { height: if ripped { 0.0 } else { above.height }, ..above };
    let told = |i: &usize| taper.is_none_or(|(of, _)| of != *i);
    let notches = p.notches.iter().enumerate().filter(|(i, _)| told(i));
    out.extend(notches.map(|(_, n)| notch(lang, n, (p, course), &left, style)));
    // What is punched along pieces of several lengths stands beside their marks.
    let work = &p.edge_work;
    let counted = EdgeWork { slots: 0, lugs: 0, trim_nails: 0, ..work.clone() };
    out.extend(edge_work(lang, if ripped_alone { &counted } else { work }));
    out.extend(recess(lang, seam_ends, product.has_foam()));
    if !p.more.is_empty() {
        out.push(SCRIBE.of(lang).to_owned());
    }
    out
}

/// Length at the bottom and at the top edge, where they are not one.
fn edges(lang: Language, p: &Piece, style: LengthStyle) -> Option<String> {
    if p.is_square() {
        return None;
    }
    let long = |top: bool| {
        told::edge(p, top, style).map_or(said("a point", "punta").of(lang).to_owned(), |(a, b)| {
            hard(&length(style, b - a))
        })
    };
    Some(say!(
        lang,
        "bottom (butt) edge {}, top edge {}",
        "borde inferior {}, borde superior {}",
        long(false),
        long(true)
    ))
}

/// An end that is not square.
fn end(lang: Language, name: &str, end: &PieceEnd, style: LengthStyle) -> Option<String> {
    let contour = end.contour.as_ref()?;
    let set_back = hard(&short(style, end.set_back()));
    if end.cut != EndCut::Angled {
        let points = points(lang, contour, style);
        return Some(say!(
            lang,
            "{name} end to a contour, {set_back} from long to short point; {points}",
            "extremo {name} con contorno, {set_back} de punta larga a punta corta; {points}"
        ));
    }
    let ends = contour.points.first().zip(contour.points.last());
    let long =
        ends.is_some_and(|(a, b)| (a[0] < b[0]) == (name == said("left", "izquierdo").of(lang)));
    let plumb = contour.points.len() > 2;
    Some(say!(
        lang,
        "{name} end {:.1}° from the long edge, {:.1}° from square; long to short point {set_back}, long point at the {}{}",
        "extremo {name} a {:.1}° del borde largo, {:.1}° de la escuadra; de punta larga a corta {set_back}, punta larga en el {}{}",
        end.angle.abs(),
        90.0 - end.angle.abs(),
        if long {
            said("bottom (butt) edge", "borde inferior").of(lang)
        } else {
            said("top edge", "borde superior").of(lang)
        },
        if plumb {
            say!(lang, "; {}", "; {}", points(lang, contour, style))
        } else {
            String::new()
        }
    ))
}

/// The heights over the butt edge at its left and right end of a piece whose top edge runs straight from end to end and
/// is not level, with the notch that says so, by its place.
fn tapered(p: &Piece) -> Option<(usize, [f64; 2])> {
    let lower = p.rip.as_ref().is_some_and(|r| r.from == 0.0);
    let of = |n: &Notch| {
        let [a, b] = *n.contour.as_ref()?.points.as_slice() else { return None };
        let all = a[0].abs() <= CUT && (b[0] - p.length).abs() <= CUT;
        (n.side == NotchSide::Top && all).then_some([a[1], b[1]])
    };
    p.notches.iter().enumerate().filter(|_| lower).find_map(|(i, n)| Some((i, of(n)?)))
}

/// A rip that is not level.
fn taper_rip(lang: Language, ends: [f64; 2], style: LengthStyle) -> String {
    let [left, right] = ends.map(|y| hard(&short(style, y)));
    say!(
        lang,
        "rip on a taper: {left} over the butt edge at the left end, {right} at the right end",
        "corte a lo largo en disminución: {left} sobre el borde inferior en el extremo izquierdo, {right} en el derecho"
    )
}

fn rip(lang: Language, r: &Rip, face: f64, above: &Above, style: LengthStyle) -> String {
    let mut out = say!(
        lang,
        "rip to {}",
        "corte a lo largo; alto que queda: {}",
        hard(&short(style, r.to - r.from))
    );
    if r.from > 0.0 {
        out.push_str(&say!(
            lang,
            ", {} off the butt edge",
            "; quite {} por abajo, desde el borde inferior",
            hard(&short(style, r.from))
        ));
    }
    let over = face - r.to;
    if over > CUT {
        out.push_str(&say!(
            lang,
            ", {} off the top: {} of face and the {}",
            "; quite {} por arriba, desde el borde superior: {} de cara más {}",
            hard(&short(style, over + above.height)),
            hard(&short(style, over)),
            above.name
        ));
    }
    out
}

/// An end cut to a contour, in short.
pub const SHAPED: Said = said("shaped", "con forma");

/// The height a piece is ripped to, in short.
pub fn ripped_to(lang: Language, height: &str) -> String {
    say!(lang, "rip to {height}", "alto {height}")
}

/// Which half of a ripped panel a piece is.
pub fn half(half: Half) -> Said {
    match half {
        Half::Lower => said("lower half", "mitad de abajo"),
        Half::Upper => said("upper half", "mitad de arriba"),
    }
}

fn half_source(half: Half) -> Said {
    match half {
        Half::Lower => said(
            "keep the part ripped off: another course takes it, see the cut list",
            "guarde la parte cortada: va en otra hilera, vea la lista de cortes",
        ),
        Half::Upper => said(
            "from the upper half of a ripped panel, see the cut list",
            "de la mitad de arriba de un panel cortado a lo largo, vea la lista de cortes",
        ),
    }
}

fn edge_work(lang: Language, work: &EdgeWork) -> Vec<String> {
    let mut out = Vec::new();
    if work.slots > 0 {
        out.push(say!(
            lang,
            "punch {} along the cut edge",
            "perfore {} a lo largo del borde cortado",
            counted(lang, work.slots as usize, nouns::NAIL_SLOT)
        ));
    }
    let shim = if work.furring {
        said(
            "; shim behind the undersill (finish) trim to hold the panel angle",
            "; calza detrás de la moldura de remate para mantener el ángulo del panel",
        )
        .of(lang)
    } else {
        ""
    };
    if work.lugs > 0 {
        out.push(say!(
            lang,
            "punch {} along the cut edge{shim}",
            "haga {} a lo largo del borde cortado{shim}",
            counted(lang, work.lugs as usize, nouns::SNAP_LOCK_LUG)
        ));
    }
    if work.trim_nails > 0 {
        out.push(siding::trim_nails(lang, work.trim_nails) + shim);
    }
    out.extend(work.holds.iter().map(|h| hold(*h).of(lang).to_owned()));
    out
}

/// How a piece is held that keeps no hem, or no lock.
pub fn hold(hold: Hold) -> Said {
    match hold {
        Hold::RoofChannel => said(
            "no lock where its butt is cut: that edge goes in the roof channel, the nails of its hem hold it",
            "sin traba donde se corta su borde inferior: ese borde va en el canal del techo, lo sostienen los clavos de su aleta",
        ),
        Hold::HeadChannel => said(
            "no lock: its foot goes in the head channel, the nails of its hem hold it",
            "sin traba: su pie va en el canal del cabezal, lo sostienen los clavos de su aleta",
        ),
        Hold::ChannelOver => said(
            "no hem: its top edge fills the channel, no nail",
            "sin aleta: su borde superior llena el canal, sin clavo",
        ),
        Hold::FaceNail => said(
            "no hem: held in the channels at its ends, one small nail in its face",
            "sin aleta: sujeta en los canales de sus extremos, un clavo pequeño en su cara",
        ),
    }
}

/// What holds a piece that keeps no hem, or no lock; for a table.
pub fn holds(lang: Language, work: &EdgeWork) -> String {
    work.holds.iter().map(|h| hold(*h).of(lang)).collect::<Vec<_>>().join("; ")
}

/// A cut end at a seam lacks what lets the next panel lap (`SidingFact::CutEndAtSeam`).
fn recess(lang: Language, seam_ends: SeamEnds, has_foam: bool) -> Option<String> {
    let ends = match seam_ends {
        (true, true) => said("both ends meet seams", "los dos extremos llegan a uniones").of(lang),
        (true, false) => {
            said("left end meets a seam", "el extremo izquierdo llega a una unión").of(lang)
        }
        (false, true) => {
            said("right end meets a seam", "el extremo derecho llega a una unión").of(lang)
        }
        (false, false) => return None,
    };
    let what = if has_foam {
        said("hem, lock and foam", "aleta, traba y espuma").of(lang)
    } else {
        said("hem and lock", "aleta y traba").of(lang)
    };
    Some(say!(
        lang,
        "{ends}: cut {what} back there, so that the panels can lap",
        "{ends}: recorte ahí {what} para que los paneles puedan traslapar"
    ))
}

/// A piece with its length, and what is punched along its cut edge.
pub fn marked_length(lang: Language, p: &Piece, style: LengthStyle) -> String {
    let told = length(style, style.to_cut(p.length));
    let w = &p.edge_work;
    let mut out = format!("{}\u{a0}{told}", p.mark).replace(' ', "\u{a0}");
    for (count, what) in [(w.slots, nouns::SLOT), (w.lugs, nouns::LUG), (w.trim_nails, nouns::NAIL)]
    {
        if count > 0 {
            let counted = counted(lang, count as usize, what).replace(' ', "\u{a0}");
            out.push_str(&format!("\u{a0}({counted})"));
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A face of 8 in with a nail hem of 1 in over it, cut at foot and head: 2 in come off the foot, and 8 - 6.5 and
    /// the hem off the head.
    #[test]
    fn a_rip_tells_in_each_language_which_edge_loses_how_much() {
        let above = |name| Above { name, height: 1.0 };
        let told = |lang, name, r: Rip| {
            rip(lang, &r, 8.0, &above(name), LengthStyle::Feet).replace('\u{a0}', " ")
        };
        let both = Rip { from: 2.0, to: 6.5 };
        assert_eq!(
            told(Language::English, "nail hem", both.clone()),
            "rip to 4 1/2\", 2\" off the butt edge, 2 1/2\" off the top: 1 1/2\" of face and the nail hem"
        );
        assert_eq!(
            told(Language::Spanish, "aleta de clavar", both),
            "corte a lo largo; alto que queda: 4 1/2\"; quite 2\" por abajo, desde el borde inferior; quite 2 1/2\" por arriba, desde el borde superior: 1 1/2\" de cara más aleta de clavar"
        );
        let foot = Rip { from: 2.0, to: 8.0 };
        assert_eq!(
            told(Language::Spanish, "aleta de clavar", foot),
            "corte a lo largo; alto que queda: 6\"; quite 2\" por abajo, desde el borde inferior"
        );
    }
}
