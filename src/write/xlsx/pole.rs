//! The story pole, and what else the datum could be.

use super::grid::{Grid, Look};
use crate::layout::Layout;
use crate::wording::pole as words;
use crate::wording::{crew_tables, sheets};

pub(super) fn sheet(layout: &Layout) -> Grid {
    let (style, say) = (layout.job.sheet.lengths, layout.job.sheet.language);
    let name = say.alone(sheets::STORY_POLE);
    let mut g = Grid::new(layout, name, &[13.0, 13.0, 14.0, 9.0, 13.0, 13.0, 64.0, 70.0]);
    g.texts(&[&say.word(sheets::STORY_POLE)], Look::Title);
    g.next();
    g.texts(&[&say.word(sheets::DATUM)], Look::Heading);
    let names = say.names(|l| crew_tables::datum_heads(l, style));
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    g.heads(&names, &[0, 2]);
    for c in &layout.story_pole.choices {
        g.number(0, style.number(c.datum), Look::Three);
        g.text(1, &style.length(c.datum), Look::Text);
        g.number(2, words::total(c), Look::Two);
        if c.chosen {
            g.text(3, &say.word(crew_tables::IN_FORCE), Look::Text);
        }
        let laid = c.chosen.then(|| layout.reworked());
        g.text(6, &say.block(|l| words::effects(l, &c.effects, laid, style)), Look::Wrapped);
        g.text(7, &say.block(|l| words::points(l, c, style)), Look::Wrapped);
        g.next();
    }
    g.next();
    let head = g.row;
    let names = say.names(|l| crew_tables::pole_heads(l, style));
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    g.head(&names, &[0, 3, 4]);
    for l in &layout.story_pole.lines {
        g.number(0, style.number(l.height), Look::Three);
        g.text(1, &style.length(l.height), Look::Text);
        g.text(2, &say.word(words::line(l.kind)), Look::Text);
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
