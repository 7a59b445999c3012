//! Layers, line types, text and dimension styles and block records that the source lacks.

use super::emit::Emitter;
use super::patch::Patch;
use super::scan::Table;
use crate::model::drawing::{Dash, Drawing, Layer, Pen};

/// Name of the overlay's text style.
pub(super) const TEXT_STYLE: &str = "Z-TEXT";
/// Name of its dimension style.
pub(super) const DIM_STYLE: &str = "Z-DIMS";

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

/// How dimensions of the overlay read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct DimLook {
    /// Source units in a plotted inch.
    pub plotted: f64,
    /// From source units to what is written: inches, or millimeters.
    pub factor: f64,
    /// Feet, inches and fractions rather than decimals.
    pub feet: bool,
}

fn has(t: &Table, name: &str) -> bool {
    t.names.iter().any(|n| n.eq_ignore_ascii_case(name))
}

impl Emitter<'_> {
    /// Adds to the tables. Block records get the handles they are given back with.
    pub(super) fn tables(
        &mut self,
        overlay: &Drawing,
        look: DimLook,
        records: &[String],
        patches: &mut Vec<Patch>,
    ) -> Vec<String> {
        let scan = self.scan;
        let types: Vec<_> = LINE_TYPES.iter().filter(|t| !has(&scan.line_types, t.1)).collect();
        let layers: Vec<&Layer> =
            overlay.layers.iter().filter(|l| !has(&scan.layers, &l.name)).collect();
        let scale = look.plotted;
        let type_text =
            self.gathered(|e| types.iter().for_each(|t| e.line_type(t.1, t.2, t.3, scale)));
        let layer_text = self.gathered(|e| layers.iter().for_each(|l| e.layer(l)));
        // A modern file without a table is broken beyond what an overlay may mend.
        // A template without entities needs no styles.
        let used = !overlay.items.is_empty();
        let styled = used && (scan.styles.end.is_some() || !self.modern());
        let mut style_handle = String::new();
        let new_style = styled && !has(&scan.styles, TEXT_STYLE);
        let style_text = if new_style {
            self.gathered(|e| style_handle = e.text_style())
        } else {
            String::new()
        };
        self.style = styled.then_some(TEXT_STYLE);
        let new_dims = used && self.dimensions() && !has(&scan.dim_styles, DIM_STYLE);
        let dims_text = if new_dims {
            self.gathered(|e| e.dim_style(look, &style_handle))
        } else {
            String::new()
        };
        let mut handles = Vec::new();
        let record_text = if self.modern() {
            self.gathered(|e| handles = records.iter().map(|r| e.block_record(r)).collect())
        } else {
            String::new()
        };
        let mut fresh = String::new();
        for (table, name, count, text) in [
            (&scan.line_types, "LTYPE", types.len(), type_text),
            (&scan.layers, "LAYER", layers.len(), layer_text),
            (&scan.styles, "STYLE", usize::from(new_style), style_text),
            (&scan.dim_styles, "DIMSTYLE", usize::from(new_dims), dims_text),
            (&scan.block_records, "BLOCK_RECORD", handles.len(), record_text),
        ] {
            if count > 0 {
                fresh.push_str(&self.added(table, (name, count), text, patches));
            }
        }
        self.fresh_tables(fresh, patches);
        handles
    }

    /// Puts records into a table of the source; as a table of its own where the source has none, which
    /// a modern file must not be given.
    fn added(
        &self,
        table: &Table,
        (name, count): (&str, usize),
        text: String,
        patches: &mut Vec<Patch>,
    ) -> String {
        let Some(end) = table.end else {
            return if self.modern() { String::new() } else { self.table(name, count, &text) };
        };
        patches.push(Patch { from: end, to: end, bytes: text.into_bytes() });
        if let Some((from, to, n)) = table.count {
            let bytes = format!("{}", n + count as i64).into_bytes();
            patches.push(Patch { from, to, bytes });
        }
        String::new()
    }

    /// Tables that the source has not, in its section of tables or one of their own.
    fn fresh_tables(&self, mut fresh: String, patches: &mut Vec<Patch>) {
        let scan = self.scan;
        if !fresh.is_empty() {
            let at = scan.tables_start.unwrap_or(scan.before_entities);
            if scan.tables_start.is_none() {
                let n = scan.newline;
                fresh = format!("  0{n}SECTION{n}  2{n}TABLES{n}{fresh}  0{n}ENDSEC{n}");
            }
            patches.push(Patch { from: at, to: at, bytes: fresh.into_bytes() });
        }
    }

    /// Whether blocks can be added: a modern file must have both places for them.
    pub(super) fn blocks(&self) -> bool {
        let s = self.scan;
        !self.modern() || (s.block_records.end.is_some() && s.blocks_end.is_some())
    }

    /// Whether true dimensions can be added.
    pub(super) fn dimensions(&self) -> bool {
        self.blocks() && (!self.modern() || self.scan.dim_styles.end.is_some())
    }

    fn table(&self, name: &str, count: usize, text: &str) -> String {
        let n = self.scan.newline;
        format!("  0{n}TABLE{n}  2{n}{name}{n} 70{n}{count}{n}{text}  0{n}ENDTAB{n}")
    }

    /// What every record of a table begins with. Returns its handle.
    fn record(&mut self, kind: &str, code: i32, table: Option<String>, class: &str) -> String {
        self.pair(0, kind);
        let handle = self.handle_as(code);
        if self.modern() {
            if let Some(owner) = table {
                self.pair(330, &owner);
            }
            self.pair(100, "AcDbSymbolTableRecord");
            self.pair(100, class);
        }
        handle
    }

    fn line_type(&mut self, name: &str, words: &str, dashes: &[f64], scale: f64) {
        let table = self.scan.line_types.handle.clone();
        self.record("LTYPE", 5, table, "AcDbLinetypeTableRecord");
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
        let table = self.scan.layers.handle.clone();
        self.record("LAYER", 5, table, "AcDbLayerTableRecord");
        self.text_value(2, &layer.name);
        self.pair(70, "0");
        self.pair(62, &color(&layer.pen).to_string());
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

    /// A style of no fixed height in the plain stroked font every program has.
    fn text_style(&mut self) -> String {
        let table = self.scan.styles.handle.clone();
        let handle = self.record("STYLE", 5, table, "AcDbTextStyleTableRecord");
        self.pair(2, TEXT_STYLE);
        self.pair(70, "0");
        self.float(40, 0.0);
        self.float(41, 1.0);
        self.float(50, 0.0);
        self.pair(71, "0");
        self.float(42, 1.0);
        self.pair(3, "txt");
        self.pair(4, "");
        handle
    }

    /// Oblique ticks, text over the line, to 1/16 in or whole millimeters
    /// (`DrawingFact::DimensionTicks`).
    fn dim_style(&mut self, look: DimLook, text_style: &str) {
        let u = look.plotted;
        let table = self.scan.dim_styles.handle.clone();
        self.record("DIMSTYLE", 105, table, "AcDbDimStyleTableRecord");
        self.pair(2, DIM_STYLE);
        self.pair(70, "0");
        for (code, v) in [
            (40, 1.0),
            (41, 3.0 / 32.0 * u),
            (42, 1.0 / 16.0 * u),
            (43, 3.0 / 8.0 * u),
            (44, 1.0 / 16.0 * u),
            (45, if look.feet { 1.0 / 16.0 } else { 1.0 }),
            (140, 3.0 / 32.0 * u),
            (142, 1.0 / 16.0 * u),
            (144, look.factor),
            (147, 1.0 / 32.0 * u),
        ] {
            self.float(code, v);
        }
        self.pair(73, "0");
        self.pair(74, "0");
        self.pair(77, "1");
        // Feet always, inches always: 0 ft is written, 0 in too.
        self.pair(78, if look.feet { "1" } else { "8" });
        if self.modern() {
            if !self.weighted() {
                self.pair(270, if look.feet { "4" } else { "2" });
            }
            self.pair(271, if look.feet { "4" } else { "0" });
            if self.weighted() {
                self.pair(276, "2");
                self.pair(277, if look.feet { "4" } else { "2" });
            }
            if !text_style.is_empty() {
                self.pair(340, text_style);
            }
        }
    }

    fn block_record(&mut self, name: &str) -> String {
        let table = self.scan.block_records.handle.clone();
        let handle = self.record("BLOCK_RECORD", 5, table, "AcDbBlockTableRecord");
        self.pair(2, name);
        if self.weighted() {
            self.pair(340, "0");
        }
        handle
    }
}

/// The nearest of the format's plain colors.
fn color(pen: &Pen) -> i32 {
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
        c.iter().zip(pen.color).map(|(a, b)| (i64::from(*a) - i64::from(b)).pow(2)).sum()
    };
    PLAIN.iter().min_by_key(|(_, c)| far(*c)).map_or(7, |c| c.0)
}

/// The nearest allowed line weight to a width in millimeters.
fn weight(mm: f64) -> i32 {
    let hundredths = (mm * 100.0).round() as i32;
    WEIGHTS.into_iter().min_by_key(|w| (w - hundredths).abs()).unwrap_or(25)
}
