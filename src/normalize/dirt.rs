//! Dirt that is mended and listed: zero lengths, exact duplicates; and dimensions whose text
//! disagrees with what they measure.

use std::collections::BTreeSet;

use crate::diag::{Note, Notes, Origin};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::linework::Linework;
use crate::units::{Unit, feet_inches, parse_length};

/// Where dirt was found.
type Places = Vec<(Origin, Point)>;
/// Layer, closed, and the bits of every coordinate.
type Key = (usize, bool, Vec<(u64, u64)>);

/// Takes out zero-length strokes and exact duplicates, with one note for each kind.
pub(super) fn mend(lines: &mut Linework, notes: &mut Notes) {
    let k = lines.scale.inches;
    let (mut zero, mut twice): (Places, Places) = (vec![], vec![]);
    let mut seen: BTreeSet<Key> = BTreeSet::new();
    lines.strokes.retain_mut(|s| {
        // Points nearer than lengths are told apart make spurs that cross their neighbours.
        s.points.dedup_by(|b, a| a.distance(*b) <= SAME);
        while s.closed && s.points.len() > 1 && s.points.first() == s.points.last() {
            s.points.pop();
        }
        let Some(first) = s.points.first().copied() else { return false };
        if s.points.len() < 2 {
            zero.push((s.origin.clone(), first));
            return false;
        }
        let mut key: Vec<(u64, u64)> =
            s.points.iter().map(|p| (p.x.to_bits(), p.y.to_bits())).collect();
        if !s.closed && key.last() < key.first() {
            key.reverse();
        }
        let new = seen.insert((s.layer, s.closed, key));
        if !new {
            twice.push((s.origin.clone(), first));
        }
        new
    });
    let mut tell = |code, what: &str, list: Places| {
        if let Some((origin, at)) = list.first() {
            let message =
                format!("{} {what} left out, the first on layer {}", list.len(), origin.layer);
            let place = Point::new(at.x / k, at.y / k);
            notes.push(
                Note::info(code, message, "Nothing to do; purge them when convenient.")
                    .about(origin)
                    .at(place),
            );
        }
    };
    tell("line-zero", "lines of no length", zero);
    tell("line-twice", "exact duplicates", twice);
}

/// A text override that disagrees with its dimension is reported, never obeyed (FACTS DR-11). It
/// stops the program unless the job accepts it: one of the two figures is wrong.
pub(super) fn dimensions(lines: &Linework, job: &Job, notes: &mut Notes) {
    let k = lines.scale.inches;
    let bare = [Unit::Inch, Unit::Foot, Unit::Mm, Unit::Cm, Unit::M]
        .into_iter()
        .find(|u| u.word() == lines.scale.unit)
        .unwrap_or(Unit::Inch);
    for m in &lines.measured {
        let Some(text) = &m.text else { continue };
        let Some(stated) = parse_length(text.trim_matches(['(', ')', '~', '±']), bare) else {
            continue;
        };
        // Drafters round to the sixteenth, or to the inch on small scales.
        if (stated - m.drawn).abs() <= 1.0 + SAME {
            continue;
        }
        let message = format!(
            "a dimension says {} but measures {}; its text was typed over",
            feet_inches(stated),
            feet_inches(m.drawn)
        );
        let help = "Correct the drawing or the text. To go on with the drawn size, put \"dimension-disagrees\" into `accept` under [drawing].";
        let at = Point::new(m.from.x / k, m.from.y / k);
        let accepted = job.drawing.accept.iter().any(|c| c == "dimension-disagrees");
        let make: fn(&'static str, String, &str) -> Note = if accepted {
            |c, m, h| Note::warning(c, m, h)
        } else {
            |c, m, h| Note::error(c, m, h)
        };
        notes.push(make("dimension-disagrees", message, help).about(&m.origin).at(at));
    }
}
