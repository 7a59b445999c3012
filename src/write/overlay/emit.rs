//! Layers, line types and entities in the source's own version of the format.

use super::Patch;
use super::scan::{Scan, Table};
use crate::geom::flatten::path_points;
use crate::geom::vocabulary::Point;
use crate::model::drawing::{Across, Dash, Drawing, Layer, Pen, Polyline, Shape, Text, Up};

/// Writes group pairs.
pub(super) struct Emitter<'a> {
    scan: &'a Scan,
    next: u64,
    out: String,
}

/// Line types of the overlay: name, what it looks like, dashes in plotted inches.
const LINE_TYPES: [(Dash, &str, &str, &[f64]); 4] = [
    (Dash::Dashed, "Z-DASHED", "dashed __ __ __", &[0.25, -0.125]),
    (Dash::DashDot, "Z-DASHDOT", "long-dashed dotted ____ . ____", &[0.5, -0.1, 0.0, -0.1]),
    (
        Dash::DashDotDot,
        "Z-DASHDOT2",
        "long-dashed double-dotted ____ . . ____",
        &[0.5, -0.1, 0.0, -0.1, 0.0, -0.1],
    ),
    (Dash::Dotted, "Z-DOTTED", "dotted . . . .", &[0.0, -0.08]),
];

/// Line weights the format allows, 1/100 mm.
const WEIGHTS: [i32; 24] = [
    0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200,
    211,
];

impl<'a> Emitter<'a> {
    pub(super) fn new(scan: &'a Scan) -> Self {
        Emitter { scan, next: scan.top_handle + 1, out: String::new() }
    }

    /// R13 and later: subclass markers, owners, handles always.
    fn modern(&self) -> bool {
        self.scan.version.as_str() >= "AC1012" && self.scan.version.starts_with("AC")
    }

    /// R2000 and later: line weights.
    fn weighted(&self) -> bool {
        self.modern() && self.scan.version.as_str() >= "AC1015"
    }

    /// R14 and later have LWPOLYLINE.
    fn light(&self) -> bool {
        self.modern() && self.scan.version.as_str() >= "AC1014"
    }

    /// The seed for whatever comes next.
    pub(super) fn seed(&self) -> String {
        format!("{:X}", self.next)
    }

    fn pair(&mut self, code: i32, value: &str) {
        self.out.push_str(&format!("{code:>3}{}{value}{}", self.scan.newline, self.scan.newline));
    }

    fn float(&mut self, code: i32, v: f64) {
        let mut text = format!("{v:.9}");
        while text.ends_with('0') && !text.ends_with(".0") {
            text.pop();
        }
        self.pair(code, &text);
    }

    fn point(&mut self, code: i32, p: Point) {
        self.float(code, p.x);
        self.float(code + 10, p.y);
        self.float(code + 20, 0.0);
    }

    /// Text in any code page: what is not ASCII is escaped where the file is not UTF-8.
    fn text_value(&mut self, code: i32, text: &str) {
        let utf8 = self.scan.version.as_str() >= "AC1021" && self.scan.version.starts_with("AC");
        let mut out = String::new();
        for c in text.chars().filter(|c| !c.is_control()) {
            if c.is_ascii() || utf8 {
                out.push(c);
            } else {
                let mut units = [0u16; 2];
                c.encode_utf16(&mut units)
                    .iter()
                    .for_each(|u| out.push_str(&format!("\\U+{u:04X}")));
            }
        }
        // A percent pair would be read as a code.
        self.pair(code, &out.replace("%%", "% %"));
    }

    fn handle(&mut self) {
        if self.modern() || self.scan.handles {
            let h = format!("{:X}", self.next);
            self.next += 1;
            self.pair(5, &h);
        }
    }

    /// Line types and layers that the source lacks.
    pub(super) fn tables(&mut self, overlay: &Drawing, patches: &mut Vec<Patch>) {
        let has = |t: &Table, name: &str| t.names.iter().any(|n| n.eq_ignore_ascii_case(name));
        let types: Vec<_> =
            LINE_TYPES.iter().filter(|t| !has(&self.scan.line_types, t.1)).collect();
        let layers: Vec<&Layer> =
            overlay.layers.iter().filter(|l| !has(&self.scan.layers, &l.name)).collect();
        let scale = plotted(overlay);
        let type_text =
            self.gathered(|e| types.iter().for_each(|t| e.line_type(t.1, t.2, t.3, scale)));
        let layer_text = self.gathered(|e| layers.iter().for_each(|l| e.layer(l)));
        let scan = self.scan;
        let mut fresh = String::new();
        for (table, name, count, text) in [
            (&scan.line_types, "LTYPE", types.len(), type_text),
            (&scan.layers, "LAYER", layers.len(), layer_text),
        ] {
            match table.end {
                Some(end) => {
                    patches.push(Patch { from: end, to: end, bytes: text.into_bytes() });
                    if let Some((from, to, n)) = table.count {
                        let bytes = format!("{}", n + count as i64).into_bytes();
                        patches.push(Patch { from, to, bytes });
                    }
                }
                // A modern file without the table is broken beyond what an overlay may mend.
                None if self.modern() => {}
                None => fresh.push_str(&self.table(name, count, &text)),
            }
        }
        if fresh.is_empty() {
            return;
        }
        let at = scan.tables_start.unwrap_or(scan.before_entities);
        if scan.tables_start.is_none() {
            let (n, body) = (scan.newline, fresh);
            fresh = format!("  0{n}SECTION{n}  2{n}TABLES{n}{body}  0{n}ENDSEC{n}");
        }
        patches.push(Patch { from: at, to: at, bytes: fresh.into_bytes() });
    }

    /// What `write` emits, by itself.
    fn gathered(&mut self, write: impl FnOnce(&mut Self)) -> String {
        let kept = std::mem::take(&mut self.out);
        write(self);
        std::mem::replace(&mut self.out, kept)
    }

    fn table(&self, name: &str, count: usize, text: &str) -> String {
        let n = self.scan.newline;
        format!("  0{n}TABLE{n}  2{n}{name}{n} 70{n}{count}{n}{text}  0{n}ENDTAB{n}")
    }

    fn line_type(&mut self, name: &str, words: &str, dashes: &[f64], scale: f64) {
        self.pair(0, "LTYPE");
        self.handle();
        if self.modern() {
            if let Some(owner) = self.scan.line_types.handle.clone() {
                self.pair(330, &owner);
            }
            self.pair(100, "AcDbSymbolTableRecord");
            self.pair(100, "AcDbLinetypeTableRecord");
        }
        self.pair(2, name);
        self.pair(70, "0");
        self.pair(3, words);
        self.pair(72, "65");
        self.pair(73, &dashes.len().to_string());
        self.float(40, dashes.iter().map(|d| d.abs()).sum::<f64>() * scale);
        for d in dashes {
            self.float(49, d * scale);
            if self.modern() {
                self.pair(74, "0");
            }
        }
    }

    fn layer(&mut self, layer: &Layer) {
        self.pair(0, "LAYER");
        self.handle();
        if self.modern() {
            if let Some(owner) = self.scan.layers.handle.clone() {
                self.pair(330, &owner);
            }
            self.pair(100, "AcDbSymbolTableRecord");
            self.pair(100, "AcDbLayerTableRecord");
        }
        self.text_value(2, &layer.name);
        self.pair(70, "0");
        self.pair(62, &colour(&layer.pen).to_string());
        let dashed =
            LINE_TYPES.iter().find(|t| t.0 == layer.pen.dash).map_or("CONTINUOUS", |t| t.1);
        self.pair(6, dashed);
        if self.weighted() {
            self.pair(370, &weight(layer.pen.width).to_string());
            if let Some(style) = self.scan.plot_style.clone() {
                self.pair(390, &style);
            }
        }
    }

    /// Every item of the overlay as entities of model space.
    pub(super) fn entities(&mut self, overlay: &Drawing) -> Vec<u8> {
        for item in &overlay.items {
            let Some(layer) = overlay.layers.get(item.layer) else { continue };
            match &item.shape {
                Shape::Polyline(p) => self.polyline(&layer.name, p),
                Shape::Curve(path) => self.path(&layer.name, path),
                Shape::Hatch(h) => h.loops.iter().for_each(|l| self.path(&layer.name, l)),
                Shape::Text(t) => self.text(&layer.name, t),
                Shape::Dimension(_) | Shape::Point(_) => {}
            }
        }
        std::mem::take(&mut self.out).into_bytes()
    }

    fn path(&mut self, layer: &str, path: &crate::geom::vocabulary::BezPath) {
        for (points, closed) in path_points(path, 1.0 / 64.0) {
            let line = Polyline { closed, ..Polyline::open(points) };
            self.polyline(layer, &line);
        }
    }

    /// What every entity begins with.
    fn begin(&mut self, kind: &str, layer: &str, class: &str) {
        self.pair(0, kind);
        self.handle();
        if self.modern() {
            if let Some(owner) = self.scan.model_space.clone() {
                self.pair(330, &owner);
            }
            self.pair(100, "AcDbEntity");
        }
        self.text_value(8, layer);
        if self.modern() && !class.is_empty() {
            self.pair(100, class);
        }
    }

    fn polyline(&mut self, layer: &str, line: &Polyline) {
        if line.vertices.len() < 2 {
            return;
        }
        let straight = line.vertices.iter().all(|v| v.bulge == 0.0);
        if line.vertices.len() == 2 && !line.closed && straight {
            return self.line(layer, line.vertices[0].at, line.vertices[1].at);
        }
        let closed = if line.closed { "1" } else { "0" };
        if self.light() {
            self.begin("LWPOLYLINE", layer, "AcDbPolyline");
            self.pair(90, &line.vertices.len().to_string());
            self.pair(70, closed);
            for v in &line.vertices {
                self.float(10, v.at.x);
                self.float(20, v.at.y);
                if v.bulge != 0.0 {
                    self.float(42, v.bulge);
                }
            }
        } else if self.modern() {
            // R13 has neither form without ownership chains: plain lines say the same.
            let points = line.points(1.0 / 64.0);
            let ends = points.iter().skip(1).chain(points.first().filter(|_| line.closed));
            points.iter().zip(ends).for_each(|(a, b)| self.line(layer, *a, *b));
        } else {
            self.begin("POLYLINE", layer, "");
            self.pair(66, "1");
            self.point(10, Point::ZERO);
            self.pair(70, closed);
            for v in &line.vertices {
                self.begin("VERTEX", layer, "");
                self.point(10, v.at);
                if v.bulge != 0.0 {
                    self.float(42, v.bulge);
                }
            }
            self.begin("SEQEND", layer, "");
        }
    }

    fn line(&mut self, layer: &str, a: Point, b: Point) {
        self.begin("LINE", layer, "AcDbLine");
        self.point(10, a);
        self.point(11, b);
    }

    fn text(&mut self, layer: &str, t: &Text) {
        self.begin("TEXT", layer, "AcDbText");
        self.point(10, t.at);
        self.float(40, t.height);
        self.text_value(1, &t.content);
        if t.angle != 0.0 {
            self.float(50, t.angle);
        }
        let across = match t.across {
            Across::Left => 0,
            Across::Centre => 1,
            Across::Right => 2,
        };
        let up = match t.up {
            Up::Baseline => 0,
            Up::Middle => 2,
            Up::Top => 3,
        };
        if across != 0 || up != 0 {
            self.pair(72, &across.to_string());
            self.point(11, t.at);
        }
        if self.modern() {
            self.pair(100, "AcDbText");
        }
        if up != 0 {
            self.pair(73, &up.to_string());
        }
    }
}

/// Source units in a plotted inch, by the overlay's own text: 3/32 in capitals.
fn plotted(overlay: &Drawing) -> f64 {
    let heights = overlay.items.iter().filter_map(|i| match &i.shape {
        Shape::Text(t) => Some(t.height),
        _ => None,
    });
    heights.fold(0.0, f64::max) * 32.0 / 3.0
}

/// The nearest of the format's plain colours.
fn colour(pen: &Pen) -> i32 {
    const PLAIN: [(i32, [u8; 3]); 8] = [
        (1, [255, 0, 0]),
        (2, [255, 255, 0]),
        (3, [0, 255, 0]),
        (4, [0, 255, 255]),
        (5, [0, 0, 255]),
        (6, [255, 0, 255]),
        (7, [0, 0, 0]),
        (8, [128, 128, 128]),
    ];
    let far = |c: [u8; 3]| -> i64 {
        c.iter().zip(pen.colour).map(|(a, b)| (i64::from(*a) - i64::from(b)).pow(2)).sum()
    };
    PLAIN.iter().min_by_key(|(_, c)| far(*c)).map_or(7, |c| c.0)
}

/// The nearest allowed line weight to a width in millimetres.
fn weight(mm: f64) -> i32 {
    let hundredths = (mm * 100.0).round() as i32;
    WEIGHTS.into_iter().min_by_key(|w| (w - hundredths).abs()).unwrap_or(25)
}
