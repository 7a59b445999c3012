//! The cover: totals, the proof, what was assumed, what is open, cautions.

use super::canvas::{Canvas, fitted, wrapped};
use super::elevation::{View, extent};
use super::page::{Page, room};
use super::style::{HEADING, Ink, TEXT};
use crate::diag::Severity;
use crate::geom::vocabulary::{Affine, Point, Rect};
use crate::model::layout::Layout;

/// Distance of lines of text.
const LINE: f64 = 0.165;

/// Cautions of every set of sheets (FACTS section 5).
const CAUTIONS: [&str; 8] = [
    "The siding maker's instructions and the local code override every figure on these sheets.",
    "An aid to layout only: structure, wind, fire separation and water management stay with the licensed designer and the local official.",
    "Falls: protect edges from 6 ft up. Foot of an extension ladder out a quarter of its working length, rails 3 ft above the landing.",
    "Power lines: keep ladders and scaffolds 10 ft away; have the service drop made safe first.",
    "Before 1978, paint may hold lead; asbestos-cement siding or sheet may lie underneath: stop, test, and leave it to certified people.",
    "Dust: no dry cutting of fibre cement without collection. Eye protection. Cold vinyl is brittle: cut slowly below freezing.",
    "Heat: vinyl softens at 160 to 165 F. Keep grills and vents away; reflected sun can warp it.",
    "Behind the wall: look for wiring, gas and water before nailing. Keep egress windows clear.",
];

struct Column {
    x: f64,
    y: f64,
    width: f64,
}

impl Column {
    fn heading(&mut self, c: &mut Canvas, text: &str) {
        self.y -= 0.08;
        c.left(text, HEADING * 0.8, true, Point::new(self.x, self.y));
        c.line(
            Ink::Rule,
            Point::new(self.x, self.y - 0.11),
            Point::new(self.x + self.width, self.y - 0.11),
        );
        self.y -= LINE + 0.07;
    }

    fn text(&mut self, c: &mut Canvas, text: &str, least: f64) -> bool {
        for (i, line) in wrapped(text, TEXT, self.width - 0.12).iter().enumerate() {
            if self.y < least {
                return false;
            }
            let indent = if i > 0 { 0.1 } else { 0.0 };
            c.left(line, TEXT, false, Point::new(self.x + indent, self.y));
            self.y -= LINE;
        }
        true
    }
}

pub(super) fn sheet(layout: &Layout) -> Page {
    let area = room(layout);
    let mut c = Canvas::new(area);
    let t = &layout.job.title;
    let name = if t.project.is_empty() { layout.drawing.name.clone() } else { t.project.clone() };
    c.left(
        &fitted(&name, HEADING * 1.6, true, area.width() * 0.6),
        HEADING * 1.6,
        true,
        Point::new(area.x0, area.y1 - 0.15),
    );
    let under = format!("Siding layout of {}", layout.drawing.name);
    c.left(
        &fitted(&under, TEXT, false, area.width() * 0.6),
        TEXT,
        false,
        Point::new(area.x0, area.y1 - 0.45),
    );
    let top = area.y1 - 0.62;
    let third = (area.width() - 0.5) / 3.0;
    small_elevations(&mut c, layout, Rect::new(area.x0, top - 2.6, area.x1, top));
    let mut a = Column { x: area.x0, y: top - 2.75, width: third };
    proof(&mut c, layout, &mut a, area.y0);
    let mut b = Column { x: area.x0 + third + 0.25, y: top - 2.75, width: third };
    totals(&mut c, layout, &mut b, area.y0);
    let mut d = Column { x: area.x0 + 2.0 * (third + 0.25), y: top - 2.75, width: third };
    d.heading(&mut c, "Cautions");
    for line in CAUTIONS {
        d.text(&mut c, line, area.y0);
    }
    d.heading(&mut c, "Checked");
    let broken: usize = layout.verify.rules.iter().map(|r| r.violations.len()).sum();
    let words = format!(
        "{} rules checked by separate code: {}",
        layout.verify.rules.len(),
        if broken == 0 {
            "all kept.".to_owned()
        } else {
            format!("{broken} cases break one; see report.txt.")
        }
    );
    d.text(&mut c, &words, area.y0);
    Page {
        name: "cover".to_owned(),
        title: "Cover".to_owned(),
        description: format!(
            "Totals, proof and cautions of the siding layout of {}",
            layout.drawing.name
        ),
        scale: "no scale".to_owned(),
        canvas: c,
    }
}

fn small_elevations(c: &mut Canvas, layout: &Layout, area: Rect) {
    let n = layout.elevations.len().max(1);
    let cell = area.width() / n as f64;
    let boxes: Vec<Rect> = layout.elevations.iter().map(extent).collect();
    let widest = boxes.iter().map(Rect::width).fold(1.0, f64::max);
    let tallest = boxes.iter().map(Rect::height).fold(1.0, f64::max);
    let k = ((cell - 0.4) / widest).min((area.height() - 0.35) / tallest);
    for (i, (e, b)) in layout.elevations.iter().zip(&boxes).enumerate() {
        let left = area.x0 + (i as f64 + 0.5) * cell - b.width() * k / 2.0;
        let map = Affine::translate((left, area.y0 + 0.3))
            * Affine::scale(k)
            * Affine::translate((-b.x0, -b.y0));
        let v = View { map, factor: 1.0 / k };
        for w in &e.walls {
            for course in &w.courses {
                for p in course.runs.iter().flat_map(|r| &r.pieces) {
                    c.ring(
                        Ink::Rule,
                        p.outline.iter().map(|q| v.at(q[0], q[1])).collect::<Vec<_>>(),
                    );
                }
            }
            c.ring(Ink::Opening, w.outline.iter().map(|q| v.at(q[0], q[1])).collect::<Vec<_>>());
            for o in &w.openings {
                c.ring(
                    Ink::Opening,
                    o.outline.iter().map(|q| v.at(q[0], q[1])).collect::<Vec<_>>(),
                );
            }
        }
        let name = fitted(&e.name, TEXT, true, cell - 0.2);
        c.centred(&name, TEXT, true, Point::new(area.x0 + (i as f64 + 0.5) * cell, area.y0 + 0.1));
    }
}

fn proof(c: &mut Canvas, layout: &Layout, col: &mut Column, least: f64) {
    let b = &layout.bound;
    col.heading(c, "Panels");
    col.text(c, &b.words, least);
    col.text(c, &format!("Bound by {}; it leaves out {}.", b.method, b.excludes.join("; ")), least);
    col.text(
        c,
        &format!(
            "A careful crew that starts each run with an offcut: {}. Net area + {} %: {}.",
            b.crew, layout.job.takeoff.area_waste, b.by_area
        ),
        least,
    );
    col.heading(c, "Taken in reading");
    let d = &layout.drawing;
    col.text(c, &format!("Unit {}: by {}.", d.unit, d.unit_source), least);
    col.text(
        c,
        &format!(
            "Courses level round the house from {} above the level line: {}.",
            crate::units::feet_inches(layout.datum),
            layout.datum_why
        ),
        least,
    );
    col.text(
        c,
        "Channels follow the drawn edge of openings; corner posts, the drawn corner.",
        least,
    );
    let open: Vec<_> = layout.notes.iter().filter(|n| n.severity >= Severity::Warning).collect();
    if !open.is_empty() {
        col.heading(c, "Open questions");
    }
    for (i, n) in open.iter().enumerate() {
        if !col.text(c, &n.message, least + 2.0 * LINE) {
            col.text(c, &format!("and {} more: see report.txt", open.len() - i), least);
            break;
        }
    }
}

fn totals(c: &mut Canvas, layout: &Layout, col: &mut Column, least: f64) {
    col.heading(c, "To order");
    for l in &layout.takeoff {
        if col.y < least {
            return;
        }
        let hundredths = |v: f64| (v * 100.0).round() / 100.0;
        let count = if l.order > 0.0 {
            format!("{}", hundredths(l.order))
        } else {
            format!("({})", hundredths(l.net))
        };
        c.left(
            &fitted(&l.item, TEXT, false, col.width - 1.7),
            TEXT,
            false,
            Point::new(col.x, col.y),
        );
        c.right(&count, TEXT, true, Point::new(col.x + col.width - 0.8, col.y));
        c.left(&l.unit, TEXT, false, Point::new(col.x + col.width - 0.72, col.y));
        col.y -= LINE;
    }
    col.text(
        c,
        "Counts are whole stock lengths, boxes and cartons; what is in brackets is not ordered.",
        least,
    );
}
