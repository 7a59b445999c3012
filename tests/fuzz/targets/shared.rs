//! What several targets need.
#![allow(dead_code, reason = "each target uses a part")]

use lapwright::finding::Findings;
use lapwright::model::drawing::{Drawing, Shape};
use lapwright::read::{self, Limits};
use lapwright::units::LengthStyle;
use lapwright::wording::findings::words;

/// Small limits: what they cut off is fast, and cutting off is tried too.
pub(crate) fn limits() -> Limits {
    Limits {
        bytes: 1 << 20,
        items: 5_000,
        insertions: 1_000,
        vertices: 5_000,
        points: 50_000,
        loops: 200,
        ..Limits::default()
    }
}

/// Reads twice; both readings must agree and keep the limits.
pub(crate) fn read_twice(bytes: &[u8], name: &str) -> Option<(Drawing, Findings)> {
    let limits = limits();
    let once = || {
        let mut notes = Findings::default();
        let drawing = read::drawing(bytes, name, &limits, &mut notes);
        (drawing, notes)
    };
    let ((drawing, notes), (again, notes_again)) = (once(), once());
    assert!(notes.all() == notes_again.all(), "notes differ");
    for n in notes.all() {
        let words = words(n, LengthStyle::Mm);
        let whole = !words.message.is_empty() && !words.help.is_empty();
        assert!(whole && !n.code().word().is_empty(), "a finding without words: {words:?}");
    }
    let (drawing, again) = match (drawing, again) {
        (Ok(d), Ok(a)) => (d, a),
        (Err(d), Err(a)) => {
            assert!(d == a && !words(&d.0, LengthStyle::Feet).help.is_empty());
            return None;
        }
        _ => panic!("read once, refused once"),
    };
    assert!(drawing.items.len() <= limits.items && drawing.groups.len() <= limits.insertions + 1);
    assert_eq!(format!("{:?}", drawing.items), format!("{:?}", again.items));
    for item in &drawing.items {
        assert!(item.layer < drawing.layers.len(), "an item without a layer");
        assert!(item.group.is_none_or(|g| g < drawing.groups.len()), "an item of no group");
        if let Shape::Polyline(p) = &item.shape {
            assert!(p.vertices.iter().all(|v| v.at.is_finite() && v.bulge.is_finite()));
        }
    }
    Some((drawing, notes))
}
