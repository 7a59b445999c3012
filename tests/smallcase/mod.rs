//! Small houses drawn from a seed: four titled elevations on one level line, gables at front and rear, windows
//! and doors. Lengths inches; the same on every machine.
#![allow(dead_code, reason = "each test that takes this in uses a part")]

/// A ring on a layer.
pub(crate) type Drawn = (&'static str, Vec<(f64, f64)>);

/// One elevation: title, width, and what is drawn in it from its lower left corner.
#[derive(Clone, Debug)]
pub(crate) struct Side {
    pub(crate) title: String,
    pub(crate) width: f64,
    pub(crate) rings: Vec<Drawn>,
}

/// Marsaglia's xorshift64 (2003).
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: u64) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        ((self.0 >> 11) % n) as f64
    }
}

pub(crate) fn rect(x0: f64, y0: f64, x1: f64, y1: f64) -> Vec<(f64, f64)> {
    vec![(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
}

/// A house 16 to 30 ft wide and 12 to 24 ft deep, walls 8 to 9 ft high.
pub(crate) fn house(seed: u64) -> Vec<Side> {
    let mut dice = Dice(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1);
    (0..4).for_each(|_| _ = dice.below(2));
    let (wide, deep) = (192.0 + dice.below(169), 144.0 + dice.below(145));
    let (high, rise) = (96.0 + dice.below(13), 36.0 + dice.below(25));
    let gable =
        || vec![(0.0, 0.0), (wide, 0.0), (wide, high), (wide / 2.0, high + rise), (0.0, high)];
    let mut window = |rings: &mut Vec<Drawn>, from: f64, to: f64| {
        let (w, h) = (24.0 + dice.below(25), 30.0 + dice.below(19));
        let x = from + dice.below((to - from - w) as u64);
        rings.push(("A-GLAZ", rect(x, 80.0 - h, x + w, 80.0)));
    };
    let mut front = vec![("A-WALL-OTLN", gable()), ("A-DOOR", rect(30.0, 0.0, 66.0, 80.0))];
    window(&mut front, 84.0, wide - 12.0);
    let mut rear = vec![("A-WALL-OTLN", gable())];
    window(&mut rear, 12.0, wide / 2.0);
    let mut left = vec![("A-WALL-OTLN", rect(0.0, 0.0, deep, high))];
    window(&mut left, 12.0, deep - 12.0);
    let right = vec![("A-WALL-OTLN", rect(0.0, 0.0, deep, high))];
    let side = |title: &str, width, rings| Side { title: title.to_owned(), width, rings };
    vec![
        side("FRONT ELEVATION", wide, front),
        side("RIGHT ELEVATION", deep, right),
        side("REAR ELEVATION", wide, rear),
        side("LEFT ELEVATION", deep, left),
    ]
}

/// The house the other way round: every side mirrored, left and right exchanged in titles and in place.
pub(crate) fn mirrored(sides: &[Side]) -> Vec<Side> {
    let flip = |s: &Side| Side {
        title: match s.title.as_str() {
            t if t.contains("LEFT") => t.replace("LEFT", "RIGHT"),
            t => t.replace("RIGHT", "LEFT"),
        },
        rings: s
            .rings
            .iter()
            .map(|(l, ring)| (*l, ring.iter().map(|(x, y)| (s.width - x, *y)).collect()))
            .collect(),
        ..s.clone()
    };
    sides.iter().map(flip).collect()
}

/// The drawing of a house in inches, sides from left to right with their titles beneath and a level line in
/// each.
pub(crate) fn drawing(sides: &[Side]) -> String {
    drawing_apart(sides, APART)
}

/// How far apart sides are drawn.
pub(crate) const APART: f64 = 240.0;

/// The same, sides that far apart.
pub(crate) fn drawing_apart(sides: &[Side], apart: f64) -> String {
    let mut out = String::from("0\nSECTION\n2\nENTITIES\n");
    let mut x = 0.0;
    for s in sides {
        for (layer, ring) in &s.rings {
            out += &format!("0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n");
            for (a, b) in ring {
                out += &format!("0\nVERTEX\n8\n{layer}\n10\n{}\n20\n{b}\n", a + x);
            }
            out += "0\nSEQEND\n";
        }
        out += &format!(
            "0\nLINE\n8\nA-FLOR-LEVL\n10\n{}\n20\n0\n11\n{}\n21\n0\n",
            x - 6.0,
            x + s.width + 6.0
        );
        let title = (x + s.width / 2.0 - 40.0, -30.0);
        out += &format!(
            "0\nTEXT\n8\nA-ELEV-IDEN\n10\n{}\n20\n{}\n40\n9\n1\n{}\n",
            title.0, title.1, s.title
        );
        x += s.width + apart;
    }
    out + "0\nENDSEC\n0\nEOF\n"
}

/// Settings for such drawings, quick to lay out.
pub(crate) const JOB: &str = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n";
