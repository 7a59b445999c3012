//! A region of the job clips: what is drawn outside of it changes nothing of what is read inside, by any rule.

use std::fmt::Write;

use lapwright::finding::{Finding, Findings, Severity};
use lapwright::pipeline;

/// A wall of 240 by 96 in with a window of 36 by 48 and a door of 36 by 80 at its foot.
const WALL: [f64; 4] = [0.0, 0.0, 240.0, 96.0];
const WINDOW: [f64; 4] = [40.0, 36.0, 76.0, 84.0];
const DOOR: [f64; 4] = [140.0, 0.0, 176.0, 80.0];
/// Its elevation, with a few inches round it.
const REGION: &str = "[-20.0, -20.0, 270.0, 120.0]";

fn ring([x0, y0, x1, y1]: [f64; 4]) -> [(f64, f64); 4] {
    [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
}

fn closed(layer: &str, at: [f64; 4]) -> String {
    let mut out = format!("0\nLWPOLYLINE\n8\n{layer}\n90\n4\n70\n1\n");
    ring(at).iter().for_each(|(x, y)| _ = write!(out, "10\n{x}\n20\n{y}\n"));
    out
}

fn line(layer: &str, (x0, y0): (f64, f64), (x1, y1): (f64, f64)) -> String {
    format!("0\nLINE\n8\n{layer}\n10\n{x0}\n20\n{y0}\n11\n{x1}\n21\n{y1}\n")
}

fn sides(layer: &str, at: [f64; 4]) -> String {
    let [a, b, c, d] = ring(at);
    [(a, b), (b, c), (c, d), (d, a)].map(|(p, q)| line(layer, p, q)).concat()
}

fn text(layer: &str, (x, y): (f64, f64), words: &str) -> String {
    format!("0\nTEXT\n8\n{layer}\n10\n{x}\n20\n{y}\n40\n6\n1\n{words}\n")
}

/// Level lines 6 in apart over a rectangle, as a hatch.
fn hatch(layer: &str, rings: &[Vec<(f64, f64)>]) -> String {
    let mut out = format!(
        "0\nHATCH\n8\n{layer}\n10\n0\n20\n0\n30\n0\n2\nLINES\n70\n0\n71\n0\n91\n{}\n",
        rings.len()
    );
    for ring in rings {
        let _ = write!(out, "92\n7\n72\n0\n73\n1\n93\n{}\n", ring.len());
        ring.iter().for_each(|(x, y)| _ = write!(out, "10\n{x}\n20\n{y}\n"));
        out.push_str("97\n0\n");
    }
    let family = "53\n0\n43\n0\n44\n0\n45\n0\n46\n6\n79\n0\n98\n0\n";
    out + "75\n0\n76\n0\n52\n0\n41\n1\n77\n0\n78\n1\n" + family
}

/// The elevation in one of three habits: outlines, a hatch, lines of an exploded hatch.
fn elevation(habit: &str) -> String {
    let openings = closed("A-GLAZ", WINDOW) + &closed("A-DOOR", DOOR);
    openings
        + &match habit {
            "outline" => closed("A-WALL-OTLN", WALL),
            "hatch" => {
                let [x0, y0, x1, y1] = WALL;
                let [d0, _, d1, head] = DOOR;
                let outer = [(x0, y0), (d0, y0), (d0, head), (d1, head), (d1, y0), (x1, y0)];
                let outer = [&outer[..], &[(x1, y1), (x0, y1)]].concat();
                hatch("A-WALL-PATT", &[outer, ring(WINDOW).to_vec()])
            }
            _ => {
                let courses = (1..16).map(|k| 6.0 * f64::from(k)).map(|y| {
                    let cuts = [WINDOW, DOOR].into_iter().filter(|b| y > b[1] && y < b[3]);
                    let mut ends = vec![0.0];
                    cuts.for_each(|b| ends.extend([b[0], b[2]]));
                    ends.push(240.0);
                    let pair = |e: &[f64]| line("COURSES", (e[0], y), (e[1], y));
                    ends.chunks(2).map(pair).collect::<String>()
                });
                courses.collect::<String>() + &sides("EDGES", WALL)
            }
        }
}

/// What stands outside: each by itself.
fn outside() -> Vec<(&'static str, String)> {
    let far = [600.0, 0.0, 1000.0, 400.0];
    let dimension = "0\nDIMENSION\n8\nA-ANNO-DIMS\n70\n32\n13\n600\n23\n-100\n14\n700\n24\n-100\n10\n600\n20\n-120\n42\n100\n1\n2540\n50\n0\n";
    let wall = hatch("A-WALL-PATT", &[ring(far).to_vec()]);
    let steps: String = (0..40)
        .map(|k| line("COURSES", (600.0, 9.0 * f64::from(k)), (1000.0, 9.0 * f64::from(k))))
        .collect();
    vec![
        ("a border on the layer of walls", closed("A-WALL-OTLN", [-400.0, -300.0, 1200.0, 700.0])),
        ("a border of lines", sides("0", [-400.0, -300.0, 1200.0, 700.0])),
        ("grade", line("C-TOPO-PROF", (-400.0, -30.0), (1200.0, -60.0))),
        ("a floor line", line("A-FLOR-LEVL", (600.0, 33.0), (1000.0, 33.0))),
        ("a corner's tag", text("A-WALL-IDEN", (290.0, 4.0), "A")),
        ("a title", text("A-ELEV-IDEN", (600.0, -40.0), "FLOOR PLAN")),
        ("a line of construction", line("A-WALL-OTLN", (-5e5, 400.0), (5e5, 400.0))),
        ("one on no layer of ours", line("HELP", (-5e5, 300.0), (5e5, 300.0))),
        ("an opening as high as a tower", closed("A-GLAZ", [600.0, 0.0, 1600.0, 5000.0])),
        ("a door of another unit", closed("A-DOOR", [600.0, 0.0, 1500.0, 2030.0])),
        ("a roof", closed("A-ROOF-OTLN", [500.0, 90.0, 900.0, 200.0])),
        ("another wall", closed("A-WALL-OTLN", far)),
        ("another hatch", wall),
        ("lines at another pitch", steps),
        ("a dimension of another unit", dimension.to_owned()),
    ]
}

/// What is read: walls with their areas and openings, and what is told of it but for lists of what is left out
/// as the job says.
fn read(entities: &str, job: &str) -> (Vec<String>, Vec<String>) {
    let drawing = format!("0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n");
    let text = format!(
        "[seams]\neffort = \"crew\"\n[[elevation]]\nname = \"FRONT\"\nregion = {REGION}\n{job}"
    );
    let job = lapwright::job::file::parse(&text, "job").unwrap();
    let mut found = Findings::default();
    let sets = pipeline::layout(drawing.as_bytes(), "t.dxf", &job, &mut found, &mut |_| {});
    let walls = match sets {
        Ok(sets) => {
            let of = |w: &lapwright::layout::wall::LaidWall| {
                // Where a ring starts says nothing.
                let sorted = |ring: &[[f64; 2]]| {
                    let mut all: Vec<String> = ring.iter().map(|p| format!("{p:?}")).collect();
                    all.sort();
                    all.join(" ")
                };
                let openings: Vec<_> = w.openings.iter().map(|o| sorted(&o.outline)).collect();
                let outline = sorted(&w.outline);
                format!("{} {outline} {:.3} {openings:?}", w.id, w.net_area)
            };
            sets.house.layout.walls().map(|(_, w)| of(w)).collect()
        }
        Err(refusal) => vec![format!("refused: {}", refusal.0.code().word())],
    };
    let of = |f: &Finding| format!("{} {:?} {:?}", f.code().word(), f.at, f.also);
    let list = |f: &Finding| match f.code().word() {
        "drawn-unused" => f.severity() == Severity::Info,
        code => code == "layer-unmapped",
    };
    let told = found.all().iter().filter(|f| !list(f)).map(of);
    (walls, told.collect())
}

#[test]
fn nothing_outside_of_a_region_is_seen() {
    let mut wrong: Vec<String> = Vec::new();
    for habit in ["outline", "hatch", "lines"] {
        let inside = elevation(habit);
        let (walls, told) = read(&inside, "");
        // 240 x 96 less 36 x 48 and 36 x 80: 18,432 sq in, 128 sq ft.
        assert_eq!(walls.len(), 1, "{habit}: {walls:?}");
        assert!(walls[0].contains(" 128.000 "), "{habit}: {walls:?}");
        for (what, more) in outside() {
            // Before what is inside and after it: the first of something is told with its place.
            for all in [format!("{more}{inside}"), format!("{inside}{more}")] {
                let found = read(&all, "");
                if found != (walls.clone(), told.clone()) {
                    wrong.push(format!("{habit}, {what}: {found:#?}"));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}
