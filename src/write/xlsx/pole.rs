//! The story pole, and what else the datum could be.

use super::grid::{Grid, Look};
use crate::language::Language;
use crate::layout::Layout;
use crate::wording::pole as words;
use crate::wording::tables;

pub(super) fn sheet(layout: &Layout) -> Grid {
    let style = layout.job.sheet.lengths;
    let unit = style.unit();
    let mut g = Grid::new(layout, "Story pole", &[13.0, 13.0, 14.0, 9.0, 13.0, 13.0, 64.0, 70.0]);
    g.texts(&["Story pole"], Look::Title);
    g.next();
    g.texts(&["Datum"], Look::Heading);
    let heights = [format!("Height, {unit}"), "Height".to_owned(), "Points".to_owned()];
    let [a, b, c] = &heights;
    g.heads(&[a, b, c, "", "", "", tables::EFFECTS, tables::ADDED_UP], &[0, 2]);
    for c in &layout.story_pole.choices {
        g.number(0, style.number(c.datum), Look::Three);
        g.text(1, &style.length(c.datum), Look::Text);
        g.number(2, words::total(c), Look::Two);
        g.text(3, if c.chosen { "in force" } else { "" }, Look::Text);
        let laid = c.chosen.then(|| layout.reworked());
        g.text(6, &words::effects(Language::English, &c.effects, laid, style), Look::Wrapped);
        g.text(7, &words::points(Language::English, c, style), Look::Wrapped);
        g.next();
    }
    g.next();
    let head = g.row;
    let over = format!("{}, {unit}", tables::OVER_BUTT);
    g.head(
        &[a, b, "What", "Course", &over, tables::OVER_BUTT, "Elevations", "Belongs to"],
        &[0, 3, 4],
    );
    for l in &layout.story_pole.lines {
        g.number(0, style.number(l.height), Look::Three);
        g.text(1, &style.length(l.height), Look::Text);
        g.text(2, words::line(l.kind).en, Look::Text);
        g.number(3, f64::from(l.course), Look::Count);
        g.number(4, style.number(l.over), Look::Three);
        g.text(5, &style.short(l.over), Look::Text);
        g.text(6, &l.elevations.join(", "), Look::Wrapped);
        g.text(7, &l.names.join(", "), Look::Wrapped);
        g.next();
    }
    g.filter(head, 8);
    g
}
