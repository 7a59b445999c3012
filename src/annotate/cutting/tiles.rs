//! Full-size patterns over as many pages as they take, with crosses that lie on one another where pages are
//! pasted together.

use crate::annotate::canvas::{Canvas, fitted, wrapped};
use crate::annotate::meeting::clipped;
use crate::annotate::page::{Orientation, Page, room};
use crate::annotate::style::{Ink, TEXT, TITLE};
use crate::geom::vocabulary::{Affine, Point, Rect, Vec2};
use crate::language::Phrase;
use crate::layout::Layout;
use crate::units::LengthStyle;
use crate::wording::patterns;

/// A pattern, full size: inches, x to the right, y up.
pub(super) struct Pattern {
    pub(super) stem: String,
    pub(super) title: Phrase,
    pub(super) description: String,
    /// What is said over it on each page.
    pub(super) lines: Vec<String>,
    /// Box round all that is drawn.
    pub(super) bounds: Rect,
    pub(super) strokes: Vec<(Ink, Vec<Point>)>,
    /// Words at places of the pattern.
    pub(super) texts: Vec<(Point, String)>,
}

/// How far pages lie over one another.
const OVERLAP: f64 = 0.75;
/// Room under a pattern for the bar that proves the print.
const FOOT: f64 = 0.42;
/// Distance of lines of text.
const LINE: f64 = 0.16;
/// Arm of a cross.
const ARM: f64 = 0.18;

/// The pages of a pattern: those that something of it is drawn on, row by row from the lower left.
pub(super) fn pages(layout: &Layout, p: &Pattern) -> Vec<Page> {
    let say = layout.job.sheet.language;
    let area = room(layout);
    let lines: Vec<String> =
        p.lines.iter().flat_map(|l| wrapped(l, TEXT, area.width() * 0.98)).collect();
    let head = 0.36 + lines.len() as f64 * LINE;
    let body = Rect::new(area.x0, area.y0 + FOOT, area.x1, area.y1 - head);
    let step = (body.width() - OVERLAP, (body.height() - OVERLAP).max(1.0));
    let count = |all: f64, one: f64, step: f64| {
        if all <= one { 1 } else { ((all - OVERLAP) / step).ceil().max(1.0) as usize }
    };
    let across = count(p.bounds.width(), body.width(), step.0);
    let up = count(p.bounds.height(), body.height(), step.1);
    let tiles = (0..up).flat_map(|j| (0..across).map(move |i| (i, j)));
    let windows: Vec<Rect> = tiles
        .map(|(i, j)| {
            let low = p.bounds.origin() + Vec2::new(i as f64 * step.0, j as f64 * step.1);
            Rect::from_origin_size(low, (body.width(), body.height()))
        })
        .filter(|w| touches(p, w))
        .collect();
    let many = windows.len();
    let made = windows.iter().enumerate().map(|(n, window)| {
        let mut c = Canvas::new(area);
        let name = Phrase::new(|lang| patterns::tile(lang, p.title.of(lang), n + 1, many));
        let shown = fitted(&say.name(&name), TITLE, true, area.width());
        c.left(&shown, TITLE, true, Point::new(area.x0, area.y1 - 0.12));
        for (k, l) in lines.iter().enumerate() {
            let y = area.y1 - 0.4 - k as f64 * LINE;
            c.left(l, TEXT, false, Point::new(area.x0, y));
        }
        tile(&mut c, p, window, body);
        if many > 1 {
            crosses(&mut c, body);
        }
        bar(&mut c, Point::new(area.x0 + 0.15, area.y0 + 0.14), layout, many);
        Page {
            orientation: Orientation::Landscape,
            name: if many == 1 { p.stem.clone() } else { format!("{}-{}", p.stem, n + 1) },
            title: name,
            description: p.description.clone(),
            scale: say.word(patterns::FULL_SIZE),
            canvas: c,
        }
    });
    made.collect()
}

/// Whether a heavy line of the pattern runs through a window.
fn touches(p: &Pattern, window: &Rect) -> bool {
    let heavy = p.strokes.iter().filter(|(ink, _)| *ink == Ink::Wall);
    heavy.flat_map(|(_, line)| line.windows(2)).any(|q| clipped(q[0], q[1], window).is_some())
}

fn tile(c: &mut Canvas, p: &Pattern, window: &Rect, body: Rect) {
    let map = Affine::translate((body.x0 - window.x0, body.y0 - window.y0));
    c.clip = Some(body);
    for (ink, line) in &p.strokes {
        let line: Vec<Point> = line.iter().map(|q| map * *q).collect();
        c.chain(*ink, &line);
    }
    c.clip = None;
    c.placer.area = body;
    for (at, text) in p.texts.iter().filter(|(at, _)| window.contains(*at)) {
        let at = map * *at;
        let r = crate::annotate::place::text_box(text, TEXT, false, at);
        if c.placer.free(&r) {
            c.centered(text, TEXT, false, at);
        }
    }
}

/// A cross in each corner, where the next page has one too.
fn crosses(c: &mut Canvas, body: Rect) {
    let r = body.inflate(-OVERLAP / 2.0, -OVERLAP / 2.0);
    for (x, y) in [(r.x0, r.y0), (r.x1, r.y0), (r.x1, r.y1), (r.x0, r.y1)] {
        let at = Point::new(x, y);
        for arm in [Vec2::new(ARM, 0.0), Vec2::new(0.0, ARM)] {
            c.line(Ink::Dimension, at - arm, at + arm);
        }
        let turn = std::f64::consts::TAU / 24.0;
        let ring: Vec<Point> =
            (0..24).map(|i| at + Vec2::from_angle(f64::from(i) * turn) * ARM / 2.0).collect();
        c.ring(Ink::Dimension, &ring);
    }
}

/// A bar of known length to prove the print.
fn bar(c: &mut Canvas, at: Point, layout: &Layout, pages: usize) {
    let (style, say) = (layout.job.sheet.lengths, layout.job.sheet.language);
    let long = match style {
        LengthStyle::Feet => 4.0,
        LengthStyle::Mm => 100.0 / 25.4,
    };
    let end = at + Vec2::new(long, 0.0);
    for p in [at, end] {
        c.line(Ink::Dimension, p - Vec2::new(0.0, 0.06), p + Vec2::new(0.0, 0.06));
    }
    c.line(Ink::Dimension, at, end);
    c.left(
        &say.line(|lang| patterns::print_bar(lang, style, pages)),
        TEXT,
        false,
        end + Vec2::new(0.1, 0.0),
    );
}
