//! Bytes to a plausible drawing: random text seldom gets past the readers, these shapes do.

use std::collections::BTreeMap;
use std::fmt::Write;

use lapwright::job::siding::kind::{BoardSiding, PanelSiding, Siding};
use lapwright::job::{
    AngledWall, Band, FrameCut, InsideCorner, Job, MovementJoint, Product, ReturnWall, SeenFrom,
    Stock, TopFinish, Zone, ZoneRegion,
};
use lapwright::model::seam::Effort;
use lapwright::units::{LengthStyle, Unit};

/// Layers of the convention; walls, windows and doors the more often. `OTHER` is a zone's.
const LAYERS: [&str; 16] = [
    "A-WALL-OTLN",
    "A-WALL-OTLN",
    "A-GLAZ",
    "A-DOOR",
    "A-WALL-BASE",
    "A-ROOF-OTLN",
    "A-ELEV-MBLK",
    "A-ELEV-OBST",
    "A-FLOR-LEVL",
    "C-TOPO-PROF",
    "A-WALL-CNRI",
    "A-ELEV-FRAM",
    "A-WALL-BAND",
    "A-WALL-JNTC",
    OTHER,
    "A-WALL-PATT",
];

/// The layer of a zone with another cladding.
const OTHER: &str = "A-WALL-SHNG";

struct Bytes<'a>(&'a [u8]);

impl Bytes<'_> {
    fn byte(&mut self) -> u8 {
        let Some((first, rest)) = self.0.split_first() else { return 0 };
        self.0 = rest;
        *first
    }

    /// 0 to 511 7/8 in steps of an eighth, or seldom a crooked number.
    fn length(&mut self) -> f64 {
        let n = u16::from_le_bytes([self.byte(), self.byte()]);
        match n >> 13 {
            7 => f64::from(n & 0x1fff) / 17.0,
            6 => f64::from(n & 0x1fff) / 8.0 + 1.0 / 1024.0,
            _ => f64::from(n & 0x0fff) / 8.0,
        }
    }
}

/// A job and a DXF.
pub(crate) fn drawn(bytes: &[u8]) -> (Job, String) {
    let mut b = Bytes(bytes);
    let job = job(&mut b);
    let mut out = String::from("0\nSECTION\n2\nENTITIES\n");
    while !b.0.is_empty() {
        let head = b.byte();
        let layer = LAYERS[usize::from(head & 15)];
        match head >> 4 {
            0..=6 => {
                let (x, y) = (b.length() - 40.0, b.length() - 40.0);
                let (w, h) = (b.length(), b.length() / 4.0);
                ring(&mut out, layer, &[(x, y), (x + w, y), (x + w, y + h), (x, y + h)], 0.0);
            }
            7 => {
                let (x, y, w, h, rise) =
                    (b.length(), b.length() / 8.0, b.length(), b.length() / 4.0, b.length() / 8.0);
                let top = (x + w * f64::from(b.byte()) / 255.0, y + h + rise);
                ring(&mut out, layer, &[(x, y), (x + w, y), (x + w, y + h), top, (x, y + h)], 0.0);
            }
            8 | 9 => {
                let n = 3 + usize::from(b.byte() % 9);
                let points: Vec<_> = (0..n).map(|_| (b.length(), b.length() / 2.0)).collect();
                let bulge = if head >> 4 == 9 { f64::from(b.byte() as i8) / 64.0 } else { 0.0 };
                ring(&mut out, layer, &points, bulge);
            }
            10 | 11 => {
                let (x, y) = (b.length() - 40.0, b.length() - 40.0);
                let (x2, y2) =
                    if head & 16 == 0 { (x + b.length(), y) } else { (x, y + b.length()) };
                let _ = write!(out, "0\nLINE\n8\n{layer}\n10\n{x}\n20\n{y}\n11\n{x2}\n21\n{y2}\n");
            }
            12 => {
                let (x, y, r) = (b.length(), b.length() / 4.0, b.length() / 16.0);
                let _ = write!(out, "0\nCIRCLE\n8\n{layer}\n10\n{x}\n20\n{y}\n40\n{r}\n");
            }
            13 => {
                let (x, y) = (b.length(), b.length() - 60.0);
                let says =
                    ["FRONT", "LEFT ELEVATION", "", "A\u{e9}\\P<b>&"][usize::from(b.byte() % 4)];
                let _ =
                    write!(out, "0\nTEXT\n8\nA-ELEV-IDEN\n10\n{x}\n20\n{y}\n40\n6\n1\n{says}\n");
            }
            14 => {
                let (x, y) = (b.length(), b.length() / 8.0);
                let tag = char::from(b'A' + b.byte() % 26);
                let _ = write!(out, "0\nTEXT\n8\nA-WALL-IDEN\n10\n{x}\n20\n{y}\n40\n3\n1\n{tag}\n");
            }
            _ => {
                let (x, y, x2) = (b.length(), b.length() / 4.0, b.length());
                let _ = write!(
                    out,
                    "0\nDIMENSION\n8\nA-ANNO-DIMS\n70\n0\n10\n{x}\n20\n{y}\n13\n{x}\n23\n{y}\n14\n{x2}\n24\n{y}\n50\n0\n"
                );
            }
        }
    }
    out.push_str("0\nENDSEC\n0\nEOF\n");
    (job, out)
}

fn ring(out: &mut String, layer: &str, points: &[(f64, f64)], bulge: f64) {
    let _ = write!(out, "0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n");
    for (x, y) in points {
        let _ = write!(out, "0\nVERTEX\n8\n{layer}\n10\n{x}\n20\n{y}\n42\n{bulge}\n");
    }
    out.push_str("0\nSEQEND\n");
}

/// A quick job; some settings vary, eight bytes of them.
fn job(b: &mut Bytes) -> Job {
    let mut job = quick();
    let (first, second) = (b.byte(), b.byte());
    let (kind, looks, parts, cladding) = (b.byte(), b.byte(), b.byte(), b.byte());
    let (width, height) = (f64::from(b.byte()), f64::from(b.byte()));
    job.product = Product::of(Siding::ALL[usize::from(kind) % Siding::ALL.len()]);
    if first & 1 == 1 {
        job.seams.effort = Effort::Brief;
    }
    if first & 8 == 8 {
        job.sheet.lengths = LengthStyle::Mm;
        job.sheet.paper = "A4".to_owned();
    }
    job.product.length = [150.0, 200.0, 96.0, 48.0][usize::from(first >> 6)];
    job.seams.reuse_halves = cladding & 16 == 16;
    job.seams.shortest = [24.0, 0.0, 12.0, 8.0][usize::from(second & 3)];
    job.seams.clear_courses = u32::from(second >> 4 & 7);
    job.courses.datum = (second & 128 == 128).then_some(3.0);
    // What says nothing about the siding picked is refused.
    if job.siding().joints.is_on_studs() {
        job.boards.studs_apart = u32::from(first >> 4 & 3) + 1;
        job.boards.stud_spacing = [16.0, 24.0, 12.0, 8.0][usize::from(second >> 2 & 3)];
        job.boards.butt_gap = (first & 2 == 2).then_some(0.5);
    } else {
        job.seams.seam_short_runs = first & 2 == 2;
        if cladding & 8 == 8 {
            // Two lengths, or three.
            let more = [120.0, 180.0].into_iter().take(1 + usize::from(cladding >> 6 & 1));
            let lengths = std::iter::once(job.product.length).chain(more);
            job.stocks = lengths.map(|length| Stock { length, carton: 24, cost: None }).collect();
        }
        job.weather.below_40f = first & 4 == 4;
        job.product.exposure = [8.0, 4.0, 6.5, 10.0][usize::from(first >> 4 & 3)];
        job.seams.stagger = [24.0, 0.0, 36.0, 1.0][usize::from(second >> 2 & 3)];
    }
    job.courses.hang_below = [0.0, 0.5, 3.0, 12.0][usize::from(kind >> 2 & 3)];
    job.work.seen_from = if kind & 16 == 16 { SeenFrom::Left } else { SeenFrom::Right };
    decor(&mut job, looks, kind >> 5);
    job.trim.rake_frieze = if cladding & 32 == 32 { 6.0 } else { 0.0 };
    some_parts(&mut job, parts, width, height);
    zone(&mut job, cladding, width, height);
    job
}

/// Boards on the wall's face, and how trim is cut.
fn decor(job: &mut Job, looks: u8, cuts: u8) {
    let pick = |shift: u8, of: [f64; 4]| of[usize::from(looks >> shift & 3)];
    let pockets = job.siding().receivers.has_pockets();
    let trim = &mut job.trim;
    trim.frieze = pick(0, [0.0, 8.0, 0.25, 24.0]);
    trim.surround = pick(2, [0.0, 3.5, 0.5, 12.0]);
    trim.corner_cover = pick(4, [0.0, 4.0, 0.5, 12.0]);
    use TopFinish::{Crown, FinishTrim, TopPanel, TwoPiece};
    // A face board or a top panel stands where a frieze would.
    let tops = if trim.frieze > 0.0 { [FinishTrim, Crown] } else { [TwoPiece, TopPanel] };
    trim.top = tops[usize::from(looks >> 6 & 1)];
    use InsideCorner::{OneChannel, Post, TwoChannels};
    // Boards do not stand in channels.
    if pockets {
        trim.inside_corner = [Post, OneChannel, TwoChannels, Post][usize::from(cuts & 3)];
    }
    trim.frame = if cuts & 4 == 4 { FrameCut::Square } else { FrameCut::Miter };
}

/// What the job gives beside the drawing: a band, a joint, a return, a wall at an angle.
fn some_parts(job: &mut Job, parts: u8, width: f64, height: f64) {
    let name = if parts & 128 == 128 { "FRONT" } else { "elevation" };
    let wall = if parts & 128 == 128 { "front-1" } else { "wall-1" };
    if parts & 1 == 1 {
        let (bottom, top) = (height / 4.0, height / 4.0 + 8.0);
        let left = (parts & 2 == 2).then_some(width / 2.0);
        let elevation = (parts & 4 == 4).then(|| name.to_owned());
        job.bands.push(Band { elevation, bottom, top, left, right: None });
    }
    if parts & 8 == 8 {
        job.movement_joints.push(MovementJoint { elevation: name.to_owned(), at: width });
    }
    if parts & 16 == 16 {
        let hand = if parts & 64 == 64 { "left" } else { "right" };
        let height = (height > 0.0).then_some(height);
        job.returns.push(ReturnWall { corner: format!("{wall}/{hand}"), to: None, width, height });
    }
    if parts & 32 == 32 {
        job.angled.push(AngledWall {
            wall: wall.to_owned(),
            width: 1.0 + 3.0 * width,
            openings: BTreeMap::new(),
        });
    }
}

/// None, a zone that is measured, or one laid out as boards or panels of its own; drawn, or a region.
fn zone(job: &mut Job, cladding: u8, width: f64, height: f64) {
    let kind = match cladding & 7 {
        0..=3 => return,
        4 => None,
        5 => Some(Siding::Panel(PanelSiding::Vinyl)),
        6 => Some(Siding::Board(BoardSiding::Wood)),
        _ => Some(Siding::Panel(PanelSiding::FoamBacked)),
    };
    let region = cladding & 64 == 64;
    let right = (cladding & 128 == 128).then_some(width);
    let regions =
        region.then(|| ZoneRegion { right, bottom: Some(height), ..ZoneRegion::default() });
    job.zone.push(Zone {
        name: "Gable".to_owned(),
        layers: vec![OTHER.to_owned()],
        regions: regions.into_iter().collect(),
        cladding: if kind.is_none() { "shingle".to_owned() } else { String::new() },
        product: kind.map(Product::of),
        stocks: Vec::new(),
    });
}

/// A job in inches that searches as little as may be and stops at as little.
pub(crate) fn quick() -> Job {
    let mut job = Job::default();
    job.drawing.unit = Some(Unit::Inch);
    job.drawing.accept = vec!["opening-outside".to_owned(), "dimension-disagrees".to_owned()];
    job.seams.effort = Effort::Crew;
    job
}
