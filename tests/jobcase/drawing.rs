//! Small drawings: a wall or two with what stands on them, in any unit a drawing may be in.

use std::fmt::Write as _;

use super::Dice;

/// A drawing, and what settings must know of it.
pub(crate) struct Drawn {
    pub(crate) dxf: String,
    /// The unit, as a job file says it.
    pub(crate) unit: &'static str,
    /// Names of its elevations, and width and height of the first, inches.
    pub(crate) elevations: Vec<String>,
    pub(crate) width: f64,
    pub(crate) height: f64,
    /// A layer of outlines that a job may clad otherwise.
    pub(crate) zone_layer: bool,
}

/// Views, frames and outlines as they are drawn.
struct Sheet {
    dxf: String,
    /// Drawing units in an inch.
    per_inch: f64,
    /// Where openings stand.
    openings: Vec<[f64; 4]>,
}

type Points = Vec<(f64, f64)>;

impl Sheet {
    fn ring(&mut self, layer: &str, points: &[(f64, f64)]) {
        let _ = write!(self.dxf, "0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n");
        self.vertices(layer, points);
    }

    fn line(&mut self, layer: &str, points: &[(f64, f64)]) {
        let _ = write!(self.dxf, "0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n0\n");
        self.vertices(layer, points);
    }

    fn vertices(&mut self, layer: &str, points: &[(f64, f64)]) {
        for (x, y) in points {
            let (x, y) = (x * self.per_inch, y * self.per_inch);
            let _ = write!(self.dxf, "0\nVERTEX\n8\n{layer}\n10\n{x:.6}\n20\n{y:.6}\n");
        }
        self.dxf.push_str("0\nSEQEND\n");
    }

    fn text(&mut self, layer: &str, (x, y): (f64, f64), words: &str) {
        let (x, y, h) = (x * self.per_inch, y * self.per_inch, 6.0 * self.per_inch);
        let _ = write!(self.dxf, "0\nTEXT\n8\n{layer}\n10\n{x}\n20\n{y}\n40\n{h}\n1\n{words}\n");
    }
}

fn rect(x0: f64, y0: f64, x1: f64, y1: f64) -> Points {
    vec![(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
}

/// How places are drawn: on whole inches, quarters, whole millimeters, or anywhere.
#[derive(Clone, Copy)]
enum Snap {
    Inch,
    Quarter,
    Millimeter,
    Anywhere,
}

impl Snap {
    fn at(self, v: f64) -> f64 {
        match self {
            Snap::Inch => v.round(),
            Snap::Quarter => (v * 4.0).round() / 4.0,
            Snap::Millimeter => (v * 25.4).round() / 25.4,
            Snap::Anywhere => v,
        }
    }
}

struct Places<'a> {
    dice: &'a mut Dice,
    snap: Snap,
}

impl Places<'_> {
    fn between(&mut self, least: f64, most: f64) -> f64 {
        let v = least + self.dice.share() * (most - least).max(0.0);
        self.snap.at(v)
    }
}

/// A drawing.
pub(crate) fn drawn(dice: &mut Dice) -> Drawn {
    let (unit, per_inch) =
        dice.of(&[("inch", 1.0), ("inch", 1.0), ("mm", 25.4), ("foot", 1.0 / 12.0), ("cm", 2.54)]);
    let snap =
        dice.of(&[Snap::Inch, Snap::Quarter, Snap::Quarter, Snap::Millimeter, Snap::Anywhere]);
    let dxf = String::from("0\nSECTION\n2\nENTITIES\n");
    let mut sheet = Sheet { dxf, per_inch, openings: Vec::new() };
    let mut places = Places { dice, snap };
    let mut elevations: Vec<String> = Vec::new();
    let (mut width, mut height, mut zone_layer) = (0.0, 0.0, false);
    let views = 1 + places.dice.roll(4) / 3;
    for i in 0..views {
        let left = i as f64 * 1000.0;
        let (w, h) = (places.between(40.0, 420.0), places.between(50.0, 130.0));
        if views > 1 {
            let name = ["FRONT", "RIGHT"][i];
            elevations.push(name.to_owned());
            sheet.ring("A-ELEV-FRAM", &rect(left - 120.0, -120.0, left + 600.0, 500.0));
            sheet.text("A-ELEV-IDEN", (left + 10.0, -60.0), name);
            sheet.line("A-FLOR-LEVL", &[(left - 60.0, 0.0), (left + w + 40.0, 0.0)]);
        }
        zone_layer |= view(&mut sheet, &mut places, (left, w, h));
        if i == 0 {
            (width, height) = (w, h);
        }
    }
    if elevations.is_empty() {
        elevations.push("elevation".to_owned());
    }
    sheet.dxf.push_str("0\nENDSEC\n0\nEOF\n");
    Drawn { dxf: sheet.dxf, unit, elevations, width, height, zone_layer }
}

/// One elevation; whether it has an outline of another cladding.
fn view(sheet: &mut Sheet, p: &mut Places, (left, w, h): (f64, f64, f64)) -> bool {
    let high = match p.dice.roll(6) {
        0 | 1 => {
            sheet.ring("A-WALL-OTLN", &rect(left, 0.0, left + w, h));
            h
        }
        2 => {
            // Two planes, one over the other's roof or beside it.
            let (part, top) = (p.between(w * 0.3, w * 0.7), p.between(h, h + 60.0));
            sheet.ring("A-WALL-OTLN", &rect(left, 0.0, left + part, h));
            sheet.ring("A-WALL-OTLN", &rect(left + part, 0.0, left + w, top));
            if p.dice.once_in(2) {
                sheet.line("A-WALL-CNRI", &[(left + part, 0.0), (left + part, h)]);
            }
            h
        }
        3 | 4 => {
            let rise = p.between(w * 0.1, w * 0.5);
            let peak = p.between(w * 0.3, w * 0.7);
            let points = [(0.0, 0.0), (w, 0.0), (w, h), (peak, h + rise), (0.0, h)]
                .map(|q| (q.0 + left, q.1));
            sheet.ring("A-WALL-OTLN", &points);
            h
        }
        _ => {
            let (x, y) = (p.between(w * 0.3, w * 0.7), p.between(h * 0.4, h * 0.8));
            let points =
                [(0.0, 0.0), (w, 0.0), (w, y), (x, y), (x, h), (0.0, h)].map(|q| (q.0 + left, q.1));
            sheet.ring("A-WALL-OTLN", &points);
            y
        }
    };
    on_the_wall(sheet, p, (left, w, high));
    around(sheet, p, (left, w, high));
    let zone = p.dice.once_in(5);
    if zone {
        let (x, y) = (p.between(0.0, w * 0.5), p.between(0.0, high * 0.6));
        let (x1, y1) =
            (p.between(x + 20.0, w.max(x + 20.0)), p.between(y + 20.0, high.max(y + 20.0)));
        sheet.ring("A-WALL-SHNG", &rect(left + x, y, left + x1, y1));
    }
    zone
}

/// Openings and fixtures.
fn on_the_wall(sheet: &mut Sheet, p: &mut Places, (left, w, high): (f64, f64, f64)) {
    let mut x = p.between(3.0, 60.0);
    while x < w - 16.0 && !p.dice.once_in(5) {
        let wide = p.between(6.0, 60.0).min(w - x - 3.0);
        let (x0, x1) = (left + x, left + x + wide);
        match p.dice.roll(6) {
            0 if wide > 24.0 => {
                let head = (high - 6.0).min(80.0);
                sheet.openings.push([x0, 0.0, x1, head]);
                sheet.ring("A-DOOR", &rect(x0, 0.0, x1, head));
            }
            1 => {
                let layer = p.dice.of(&["A-ELEV-MBLK", "A-ELEV-OBST"]);
                let y = p.between(4.0, (high - 14.0).max(5.0));
                let (dx, dy) = (p.between(2.0, 10.0), p.between(2.0, 12.0));
                sheet.ring(layer, &rect(x0, y, x0 + dx, y + dy));
            }
            _ if wide >= 8.0 => {
                let sill = p.between(4.0, high * 0.6);
                let head = p.between(sill + 8.0, (high - 3.0).max(sill + 8.0));
                if head < high - 1.0 {
                    sheet.openings.push([x0, sill, x1, head]);
                    sheet.ring("A-GLAZ", &rect(x0, sill, x1, head));
                }
            }
            _ => {}
        }
        let apart = p.between(4.0, 70.0);
        x += wide + apart;
    }
}

/// Stone, roofs, grade, bands and joints.
fn around(sheet: &mut Sheet, p: &mut Places, (left, w, high): (f64, f64, f64)) {
    if p.dice.once_in(5) {
        let y = p.between(6.0, high * 0.4);
        let x = if p.dice.once_in(2) { w } else { p.between(w * 0.3, w) };
        sheet.ring("A-WALL-BASE", &rect(left, 0.0, left + x, y));
    }
    if p.dice.once_in(5) {
        // A roof against the wall, level or sloped.
        let (x0, x1) = (p.between(-20.0, w * 0.4), p.between(w * 0.5, w + 20.0));
        let (y0, y1) = (p.between(high * 0.1, high * 0.5), p.between(high * 0.1, high * 0.5));
        let (x0, x1) = (left + x0, left + x1);
        // No roof runs across a window.
        let (low, high) = (y0.min(y1) - 8.0, y0.max(y1));
        let across = |o: &[f64; 4]| o[0] < x1 && o[2] > x0 && o[1] < high && o[3] > low;
        if !sheet.openings.iter().any(across) {
            sheet.ring("A-ROOF-OTLN", &[(x0, y0 - 8.0), (x1, y1 - 8.0), (x1, y1), (x0, y0)]);
        }
    }
    if p.dice.once_in(4) {
        let (a, b) = (p.between(-30.0, 14.0), p.between(-30.0, 14.0));
        let x = p.between(w * 0.2, w * 0.8);
        let points = match p.dice.roll(2) {
            0 => vec![(left - 40.0, a), (left + w + 40.0, b)],
            _ => vec![(left - 40.0, a), (left + x, a), (left + x, b), (left + w + 40.0, b)],
        };
        sheet.line("C-TOPO-PROF", &points);
    }
    if p.dice.once_in(8) {
        let y = p.between(high * 0.4, high * 0.7);
        let thick = p.between(2.0, 12.0);
        sheet.ring("A-WALL-BAND", &rect(left, y, left + w, y + thick));
    }
    if p.dice.once_in(10) {
        let x = left + p.between(w * 0.3, w * 0.7);
        sheet.line("A-WALL-JNTC", &[(x, 0.0), (x, high)]);
    }
}
