//! Drawing noise put into a drawing, and whether the layout is that of the clean one.

#![allow(dead_code, reason = "each test binary uses its part")]

use std::collections::BTreeMap;
use std::fmt::Write;

use lapwright::finding::Findings;
use lapwright::geom::vocabulary::{Affine, Point, Vec2};
use lapwright::job::Job;
use lapwright::layout::Layout;
use lapwright::model::item::Item;

/// Marsaglia's xorshift64 (2003).
struct Dice(u64);

impl Dice {
    fn roll(&mut self, n: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 % n
    }
}

/// A DXF in text, pair by pair, with the places of model space moved. Lengths of blocks stay.
pub(crate) struct Noisy {
    pub(crate) tilt: f64,
    pub(crate) jitter: f64,
    dice: Dice,
}

/// The figures of an entity that noise moves: the places, and the angles that turn with a tilt.
fn angles(entity: &str) -> &'static [i32] {
    match entity {
        "INSERT" | "TEXT" => &[50],
        "ARC" => &[50, 51],
        _ => &[],
    }
}

impl Noisy {
    pub(crate) fn tilted(degrees: f64) -> Self {
        Noisy { tilt: degrees, jitter: 0.0, dice: Dice(1) }
    }

    /// Jittered by up to this much, drawing units.
    pub(crate) fn jittered(by: f64, seed: u64) -> Self {
        let dice = Dice(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1);
        Noisy { tilt: 0.0, jitter: by, dice }
    }

    /// Even between the jitter either way.
    fn off(&mut self) -> f64 {
        (self.dice.roll(1 << 20) as f64 / f64::from(1 << 19) - 1.0) * self.jitter
    }

    /// What is drawn from behind has its x the other way round, and so its tilt.
    fn moved(&mut self, p: Point, behind: bool) -> Point {
        let tilt = if behind { -self.tilt } else { self.tilt };
        Affine::rotate(tilt.to_radians()) * p + Vec2::new(self.off(), self.off())
    }

    /// The same of a file in any code page: names go through byte by byte.
    pub(crate) fn bytes(&mut self, source: &[u8]) -> Vec<u8> {
        let text: String = source.iter().map(|b| char::from(*b)).collect();
        self.drawing(&text).chars().map(|c| c as u8).collect()
    }

    pub(crate) fn drawing(&mut self, source: &str) -> String {
        let all: Vec<(i32, String)> = source
            .lines()
            .collect::<Vec<_>>()
            .chunks_exact(2)
            .map(|p| (p[0].trim().parse().unwrap(), p[1].to_owned()))
            .collect();
        let mut out = all.clone();
        let mut from = 0;
        let (mut space, mut behind) = (false, false);
        while from < all.len() {
            let len = all[from + 1..].iter().take_while(|p| p.0 != 0).count() + 1;
            let of = from..from + len;
            let entity = all[from].1.trim();
            if entity == "SECTION" {
                space = all[of.clone()].iter().any(|p| p.0 == 2 && p.1.trim() == "ENTITIES");
            } else if space {
                // The vertices of a polyline lie as it does.
                if entity != "VERTEX" {
                    let away = |p: &(i32, String)| p.0 == 230 && p.1.trim().starts_with('-');
                    behind = all[of.clone()].iter().any(away);
                }
                self.entity(&all, of, entity, behind, &mut out);
            }
            from += len;
        }
        let mut text = String::new();
        for (code, value) in out {
            let _ = write!(text, "{code}\n{value}\n");
        }
        text
    }

    fn entity(
        &mut self,
        all: &[(i32, String)],
        of: std::ops::Range<usize>,
        entity: &str,
        behind: bool,
        out: &mut [(i32, String)],
    ) {
        let turned = angles(entity);
        // A tilted block is turned by its insertion.
        if self.tilt != 0.0 && turned.len() == 1 && all[of.clone()].iter().all(|p| p.0 != 50) {
            out[of.start].1 += &format!("\n50\n{}", self.tilt);
        }
        for i in of.clone() {
            let number = |k: usize| all[k].1.trim().parse::<f64>().unwrap();
            match all[i].0 {
                code if turned.contains(&code) => {
                    out[i].1 = (number(i) + self.tilt).to_string();
                }
                code @ 10..=18 => {
                    let Some(j) = (i + 1..of.end.min(i + 3)).find(|j| all[*j].0 == code + 10)
                    else {
                        continue;
                    };
                    let p = self.moved(Point::new(number(i), number(j)), behind);
                    (out[i].1, out[j].1) = (p.x.to_string(), p.y.to_string());
                }
                _ => {}
            }
        }
    }
}

/// A drawing laid out, with what was found on the way.
pub(crate) fn laid(source: &str, job: &Job) -> (Layout, Findings) {
    tried(source.as_bytes(), job).unwrap()
}

/// The same, or why it is refused.
pub(crate) fn tried(source: &[u8], job: &Job) -> Result<(Layout, Findings), String> {
    let mut findings = Findings::default();
    let done = lapwright::pipeline::layout(source, "d.dxf", job, &mut findings, &mut |_| {});
    done.map(|set| (set.house.layout, findings)).map_err(|why| format!("{:?}", why.0))
}

/// What is ordered, and how much of each there is to build.
fn counts(l: &Layout) -> BTreeMap<String, f64> {
    let mut out: BTreeMap<String, f64> = BTreeMap::new();
    // Squares say in area what cartons say; spare panels are none as soon as cartons leave as many, so that
    // one panel more may be all of them less, in as many cartons.
    let same = |t: &lapwright::model::quantity::TakeoffLine| {
        t.item == Item::Squares || matches!(t.item, Item::SparePanels { .. })
    };
    for line in l.takeoff.iter().filter(|t| !same(t)) {
        out.insert(format!("{:?}", line.item), line.order);
    }
    out
}

fn parts(l: &Layout) -> [usize; 4] {
    let walls = || l.elevations.iter().flat_map(|e| &e.walls);
    let posts = l.trims.iter().filter(|t| format!("{:?}", t.kind).contains("Post")).count();
    [walls().count(), walls().map(|w| w.openings.len()).sum(), l.corners.len(), posts]
}

/// Where a noisy drawing is laid out otherwise than the clean one: every order line within one piece,
/// the same walls, openings, corners and posts.
pub(crate) fn differ(clean: &Layout, noisy: &Layout) -> Vec<String> {
    let mut out = Vec::new();
    if parts(clean) != parts(noisy) {
        let (a, b) = (parts(clean), parts(noisy));
        out.push(format!("walls, openings, corners, posts: {b:?} for {a:?}"));
    }
    let (a, b) = (counts(clean), counts(noisy));
    let all: std::collections::BTreeSet<&String> = a.keys().chain(b.keys()).collect();
    for item in all {
        let of = |m: &BTreeMap<String, f64>| m.get(item).copied().unwrap_or_default();
        if (of(&a) - of(&b)).abs() > 1.0 {
            out.push(format!("{item}: {} for {}", of(&b), of(&a)));
        }
    }
    out
}
