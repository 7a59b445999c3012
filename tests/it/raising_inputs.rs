//! A small drawing, job or command for each code of a finding.

use std::fmt::Write;

use lapwright::finding::FindingCode;
use lapwright::read::Limits;

use crate::support::{dxf, rect};

/// What raises a code.
pub(crate) enum Input {
    /// A drawing with a job, laid out.
    Drawing { bytes: Vec<u8>, job: String },
    /// A drawing read with smaller limits than the usual ones.
    SmallLimits { bytes: Vec<u8>, limits: Limits },
    /// A command in a folder with these files.
    Command { args: Vec<&'static str>, files: Vec<(&'static str, &'static str)> },
    /// A command whose output goes to a full device.
    FullDevice,
    /// A layout where the system gives no thread but the program's own.
    OneThread,
    /// A layout's file, read back.
    LayoutFile { bytes: Vec<u8> },
    /// Errors of other crates' writers are passed on rather than stopped at; no input is known that leads
    /// to one.
    NoneKnown,
}

const INCH: &str = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n";
const WALL: &str = "A-WALL-OTLN";

/// A wall 20 ft by 8 ft.
fn wall() -> String {
    dxf(&[(WALL, &rect(0.0, 0.0, 240.0, 96.0))])
}

/// The wall for a command's folder.
fn drawing() -> &'static str {
    Box::leak(wall().into_boxed_str())
}

/// A layout of the wall, as its file has it.
fn earlier() -> &'static str {
    let layout = crate::support::lay(wall().as_bytes(), &crate::support::inches());
    Box::leak(String::from_utf8(lapwright::write::json::layout(&layout)).unwrap().into_boxed_str())
}

/// The wall with more entities.
fn with(entities: &str) -> String {
    wall().replace("0\nENDSEC\n", &format!("{entities}0\nENDSEC\n"))
}

/// The wall with blocks defined, and more entities.
fn with_block(block: &str, entities: &str) -> String {
    let head = "0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n8\n0\n2\nB\n70\n0\n10\n0\n20\n0\n";
    format!("{head}{block}0\nENDBLK\n8\n0\n0\nENDSEC\n{}", with(entities))
}

fn line(layer: &str, from: (f64, f64), to: (f64, f64)) -> String {
    format!("0\nLINE\n8\n{layer}\n10\n{}\n20\n{}\n11\n{}\n21\n{}\n", from.0, from.1, to.0, to.1)
}

fn text(layer: &str, at: (f64, f64), words: &str) -> String {
    format!("0\nTEXT\n8\n{layer}\n10\n{}\n20\n{}\n40\n9\n1\n{words}\n", at.0, at.1)
}

fn point(layer: &str, x: f64, y: f64) -> String {
    format!("0\nPOINT\n8\n{layer}\n10\n{x}\n20\n{y}\n")
}

/// A dimension 240 in long whose text says otherwise.
fn dimension() -> &'static str {
    "0\nDIMENSION\n8\nA-ANNO-DIMS\n70\n0\n1\n24'-0\"\n10\n0\n20\n-20\n13\n0\n23\n0\n14\n240\n24\n0\n50\n0\n"
}

/// A siding hatch of level lines 8 in apart.
fn hatch() -> String {
    let mut out = String::from(
        "0\nHATCH\n8\nA-WALL-PATT\n10\n0\n20\n0\n30\n0\n2\nLAP\n70\n0\n71\n0\n91\n1\n92\n7\n72\n0\n73\n1\n93\n4\n",
    );
    for (x, y) in rect(0.0, 0.0, 240.0, 96.0) {
        let _ = write!(out, "10\n{x}\n20\n{y}\n");
    }
    out + "97\n0\n75\n0\n76\n1\n52\n0\n41\n1\n77\n0\n78\n1\n53\n0\n43\n0\n44\n0\n45\n0\n46\n8\n79\n0\n98\n0\n"
}

/// A siding hatch with holes.
fn hatches(holes: &[&[(f64, f64)]]) -> String {
    let mut more = String::new();
    for hole in holes {
        more.push_str("92\n2\n72\n0\n73\n1\n93\n4\n");
        hole.iter().for_each(|(x, y)| {
            let _ = write!(more, "10\n{x}\n20\n{y}\n");
        });
        more.push_str("97\n0\n");
    }
    let paths = format!("91\n{}\n92", 1 + holes.len());
    hatch().replace("91\n1\n92", &paths).replace("75\n0\n76", &(more + "75\n0\n76"))
}

fn only(entities: &str) -> String {
    format!("0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n")
}

/// Lines of a front that overshoot at its corners, and what else is drawn.
fn loose(more: &str) -> String {
    let l = |a, b| line(WALL, a, b);
    only(&format!(
        "{}{}{}{}{more}",
        l((-3.0, 0.0), (203.0, 0.0)),
        l((200.0, -3.0), (200.0, 103.0)),
        l((203.0, 100.0), (-3.0, 100.0)),
        l((0.0, 103.0), (0.0, -3.0))
    ))
}

/// Two walls of one front, the first taken for one at an angle.
fn angled(more: &str) -> Input {
    let d = dxf(&[
        (WALL, &rect(0.0, 0.0, 24.0, 96.0)),
        (WALL, &rect(24.0, 0.0, 144.0, 96.0)),
        ("A-GLAZ", &rect(6.0, 32.0, 18.0, 72.0)),
    ]);
    let view = "[[elevation]]\nname = \"front\"\nregion = [-100.0, -100.0, 300.0, 300.0]\n";
    drawn(&d, &format!("{INCH}{view}{more}"))
}

/// Front and rear, and the sides between them 8 in higher.
fn four_sides(more: &str) -> Input {
    four_sides_with(&[], more)
}

/// Four walls of a house, with more rings on the front.
fn four_sides_with(front: &[(&'static str, &[(f64, f64)])], more: &str) -> Input {
    let mut rings: Vec<_> = front.iter().map(|(l, r)| (*l, r.to_vec())).collect();
    let mut job = INCH.to_owned();
    for (i, (name, high)) in
        [("FRONT", 96.0), ("RIGHT", 104.0), ("REAR", 96.0), ("LEFT", 104.0)].iter().enumerate()
    {
        let dx = 2000.0 * i as f64;
        rings.push((WALL, rect(dx, 0.0, dx + 240.0, *high).to_vec()));
        let region = format!("[{:.1}, -500.0, {:.1}, 900.0]", dx - 500.0, dx + 1400.0);
        let _ = write!(job, "[[elevation]]\nname = \"{name}\"\nregion = {region}\n");
    }
    let rings: Vec<(&str, &[(f64, f64)])> = rings.iter().map(|(l, r)| (*l, &r[..])).collect();
    drawn(&dxf(&rings), &(job + more))
}

fn drawn(drawing: &str, job: &str) -> Input {
    Input::Drawing { bytes: drawing.as_bytes().to_vec(), job: job.to_owned() }
}

fn rings(list: &[(&str, &[(f64, f64)])]) -> Input {
    drawn(&dxf(list), INCH)
}

/// Points round a circle in the middle of the wall.
fn round(n: usize) -> Vec<(f64, f64)> {
    let on = |i: usize| std::f64::consts::TAU * i as f64 / n as f64;
    (0..n).map(|i| (120.0 + 40.0 * on(i).cos(), 48.0 + 40.0 * on(i).sin())).collect()
}

fn many(n: usize, one: impl Fn(usize) -> String) -> String {
    (0..n).map(one).collect()
}

/// What raises a code; none for one that nothing is written down for.
pub(crate) fn input(code: FindingCode) -> Option<Input> {
    let word = code.word();
    of_files(word).or_else(|| of_lines(word)).or_else(|| of_house(word)).or_else(|| of_laying(word))
}

#[allow(clippy::too_many_lines)] // One table: an input a code.
fn of_files(code: &str) -> Option<Input> {
    let raw = |bytes: &[u8]| Input::Drawing { bytes: bytes.to_vec(), job: INCH.to_owned() };
    let command = |args: &[&'static str], files: &[(&'static str, &'static str)]| Input::Command {
        args: args.to_vec(),
        files: files.to_vec(),
    };
    let limits = Limits { points: 3, ..Limits::default() };
    Some(match code {
        "measured-unreadable" => command(
            &["check", "a.dxf", "--measured", "m.csv"],
            &[("a.dxf", ""), ("m.csv", "measure,taped\nfront-1/foot-width,long\n")],
        ),
        "measure-left-out" => {
            let narrow = "[[wall]]\noutline = [[300, 0], [305, 96]]\n[drawing]\nunit = \"inch\"\n";
            command(&["measure", "d.dxf", "--job", "n.toml"], &[("d.dxf", drawing()), ("n.toml", narrow)])
        }
        "measure-unknown" | "taped-taken" | "taped-leans" | "taped-start" | "taped-top"
        | "taped-slopes"
        | "taped-contradicts" => {
            let front = text("A-ELEV-IDEN", (90.0, -20.0), "FRONT ELEVATION");
            let said = match code {
                "measure-unknown" => "\"rear-1/foot-width\" = 9\n",
                "taped-taken" => "\"front-1/foot-width\" = 241\n",
                "taped-leans" => "\"front-1/left-lean\" = 0.5\n",
                "taped-start" => "\"front-1/left-foot\" = -0.5\n",
                "taped-top" => "\"front-1/left-height\" = 94\n\"front-1/right-height\" = 95\n",
                "taped-slopes" => "\"front-1/left-lean\" = 2\n",
                _ => "\"front-1/foot-width\" = 240\n\"front-1/top-width\" = 240\n\"front-1/right-lean\" = 1\n",
            };
            drawn(&with(&front), &format!("{INCH}[taped]\n{said}"))
        }
        "job-no-drawing" => command(&["layout", "a.toml"], &[("a.toml", "[product]\n")]),
        "job-not-given" => {
            command(&["layout", "a.dxf", "--strict"], &[("a.dxf", drawing()), ("a.toml", INCH)])
        }
        "houses-alike" => {
            command(&["layout", "a.dxf", "a.svg", "--out", "o"], &[("a.dxf", ""), ("a.svg", "")])
        }
        "no-houses" => command(&["layout", ".", "--out", "o"], &[]),
        "one-house-alone" => command(
            &["layout", "a.dxf", "b.dxf", "--compare-waiting"],
            &[("a.dxf", ""), ("b.dxf", "")],
        ),
        // Nothing is read of it but its size.
        "file-too-big" => Input::Drawing { bytes: vec![0; (1 << 30) + 1], job: INCH.to_owned() },
        "not-dxf" => raw(b"\x89PNG"),
        "pdf-unreadable" => raw(b"%PDF-1.7"),
        "pdf-pages" => raw(&crate::pdf_in::without_lines()),
        "pdf-pages-read" => raw(&crate::pdf_in::three_pages()),
        "pdf-letters-mute" => raw(&crate::pdf_in::with_mute_letters()),
        "scale-of-paper" => Input::Drawing {
            bytes: crate::pdf_in::one_page(),
            job: "[drawing]\nknown = \"0,0 450,0 = 25'-0\\\"\"\n".to_owned(),
        },
        "scales-on-page" => raw(&crate::pdf_in::of_two_scales()),
        "view-scaled" | "view-scale-unknown" => Input::Drawing {
            bytes: match code {
                "view-scaled" => crate::pdf_in::of_half_scale(),
                _ => crate::pdf_in::of_unknown_scale(),
            },
            job: "[layers]\nwall = [\"stroke 1.42 pt black\"]\nwindow = [\"stroke 0.71 pt black\"]\n"
                .to_owned(),
        },
        "scale-unknown" => raw(&crate::pdf_in::one_page()),
        "dwg-unreadable" => raw(b"AC1014"),
        "dwg-texts-lost" => raw(&crate::dwgcase::dwg_with_a_broken_text()),
        "file-truncated" => raw(b"0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n"),
        "line-bad" => drawn(&wall().replace("0\nENDSEC\n", "rubbish\n0\nENDSEC\n"), INCH),
        "layers-too-many" => {
            let far = |i: usize| point(&format!("L{i}"), 0.0, 0.0);
            drawn(&with(&many(20_001, far)), INCH)
        }
        "items-too-many" => {
            let array = "0\nINSERT\n8\n0\n2\nB\n10\n0\n20\n0\n70\n1000\n71\n1000\n44\n1\n45\n1\n";
            drawn(&with_block(&point("0", 0.0, 0.0), array), INCH)
        }
        "points-too-many" => Input::SmallLimits { bytes: wall().into_bytes(), limits },
        "vertices-too-many" => {
            let head = "0\nPOLYLINE\n8\n0\n66\n1\n70\n0\n".to_owned();
            let many = "0\nVERTEX\n8\n0\n10\n1\n20\n2\n".repeat(1_000_001);
            drawn(&with(&(head + &many + "0\nSEQEND\n8\n0\n")), INCH)
        }
        "hatch-loops" => drawn(&with("0\nHATCH\n8\n0\n70\n0\n91\n6000\n"), INCH),
        "layers-all-off" => drawn(
            &format!(
                "0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLAYER\n70\n1\n0\nLAYER\n2\n{WALL}\n70\n0\n62\n-7\n0\nENDTAB\n0\nENDSEC\n{}",
                wall()
            ),
            INCH,
        ),
        "numbers-absurd" => drawn(&with(&line("0", (2e9, 0.0), (0.0, 1.0))), INCH),
        "block-nesting" => {
            let itself = "0\nINSERT\n8\n0\n2\nB\n10\n0\n20\n0\n";
            drawn(&with_block(itself, itself), INCH)
        }
        "block-external" => {
            let insert = "0\nINSERT\n8\nA-GLAZ\n2\nB\n10\n60\n20\n40\n";
            let block = with_block("", insert);
            drawn(&block.replace("2\nB\n70\n0\n", "2\nB\n70\n4\n1\nwindows.dwg\n"), INCH)
        }
        "block-missing" => drawn(&with("0\nINSERT\n8\n0\n2\nNONE\n10\n0\n20\n0\n"), INCH),
        "entity-broken" => {
            drawn(&with("0\nSPLINE\n8\n0\n70\n0\n71\n99\n40\n0\n10\n0\n20\n0\n"), INCH)
        }
        "number-unreadable" => drawn(&wall().replacen("20\n0", "20\no.0", 1), INCH),
        "name-too-long" => drawn(&with(&point(&"L".repeat(501), 0.0, 0.0)), INCH),
        "text-too-long" => drawn(&with(&text("A-NOTE", (0.0, 0.0), &"a ".repeat(33_000))), INCH),
        "threads-missing" => Input::OneThread,
        "entity-skipped" => drawn(&with("0\nREGION\n8\n0\n10\n0\n20\n0\n"), INCH),
        "letters-not-drawn" => {
            drawn(&wall(), &format!("{INCH}[title]\nproject = \"\u{6a39}\u{5c4b}\"\n"))
        }
        "svg-unreadable" => raw(b"<svg"),
        "svg-too-big" => raw(
            b"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'><g id='a'><use href='#a'/></g></svg>",
        ),
        "layout-format" => {
            Input::LayoutFile { bytes: b"{\"format\": \"lapwright-layout/1\"}".to_vec() }
        }
        "layout-unreadable" => {
            Input::LayoutFile { bytes: b"{\"format\": \"lapwright-layout/2\", ".to_vec() }
        }
        "overlay-apart" => drawn(&wall().replace("0\nENDSEC\n", ""), INCH),
        "job-unreadable" => drawn(&wall(), "[product]\nlenght = 150\n"),
        "job-old-spelling" => {
            drawn(&wall(), &format!("{INCH}[product]\nkind = \"fibre-cement\"\n"))
        }
        "job-value" => drawn(&wall(), "[product]\ncarton = 0\n"),
        "write-failed" => Input::NoneKnown,
        "known-unreadable" => command(&["check", "d.dxf", "--known", "16 feet"], &[]),
        "no-layout-folder" => command(&["compare", ".", "house.dxf"], &[]),
        "layout-not-kept" => command(
            &["layout", "d.dxf", "--job", "j.toml", "--out", "o"],
            &[("d.dxf", drawing()), ("j.toml", "[[built]]\nwall = \"elevation-1\"\n")],
        ),
        "stock-unreadable" => command(
            &["layout", "d.dxf", "--keep", ".", "--stock", "s.csv", "--out", "o"],
            &[("d.dxf", drawing()), ("layout.json", earlier()), ("s.csv", "length\n")],
        ),
        "ticks-unreadable" => command(
            &["layout", "d.dxf", "--job", "j.toml", "--keep", ".", "--out", "o"],
            &[
                ("d.dxf", drawing()),
                ("layout.json", earlier()),
                ("j.toml", "[[built]]\nticks = \"t.json\"\n"),
                ("t.json", "{}"),
            ],
        ),
        "file-unreadable" => command(&["check", "no-such.dxf"], &[]),
        "out-failed" => Input::FullDevice,
        "out-refused" => command(&["template", "."], &[("job.toml", "# mine")]),
        "page-not-made" => command(&["page"], &[]),
        "prices-unreadable" => {
            command(&["takeoff", "d.dxf", "--prices", "p.csv"], &[("p.csv", "item,price\n")])
        }
        "takeoff-line" => command(
            &["takeoff", "d.svg", "--explain", "j-chanel"],
            &[("d.svg", "<svg xmlns='http://www.w3.org/2000/svg' width='6000mm' viewBox='0 0 6000 2400'><g id='A-WALL-OTLN'><path d='M0 0H6000V2400H0Z'/></g></svg>")],
        ),
        _ => return None,
    })
}

#[allow(clippy::too_many_lines)] // One table: an input a code.
fn of_lines(code: &str) -> Option<Input> {
    let big = rect(0.0, 0.0, 240.0, 96.0);
    let accepting = INCH.replace("[drawing]\n", "[drawing]\naccept = [\"dimension-disagrees\"]\n");
    let frozen = "0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLAYER\n70\n1\n0\nLAYER\n2\nA-GLAZ\n70\n1\n62\n7\n6\nCONTINUOUS\n0\nENDTAB\n0\nENDSEC\n";
    let glass = dxf(&[(WALL, &big), ("A-GLAZ", &rect(60.0, 32.0, 96.0, 72.0))]);
    Some(match code {
        "unit-assumed" => drawn(&wall(), "[seams]\neffort = \"crew\"\n"),
        "unit-unsure" => drawn(
            &format!(
                "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n1\n0\nENDSEC\n{}",
                dxf(&[(WALL, &rect(0.0, 0.0, 600.0, 250.0))])
            ),
            "[seams]\neffort = \"crew\"\n",
        ),
        "unit-taken" => drawn(&wall(), INCH),
        "unit-implausible" => rings(&[(WALL, &rect(0.0, 0.0, 7000.0, 2400.0))]),
        "dimension-disagrees" => drawn(&with(dimension()), INCH),
        "dimensions-more" => drawn(&with(&dimension().repeat(101)), &accepting),
        "point-left-out" => drawn(&with(&point("A-ELEV-MBLK", 60.0, 40.0)), INCH),
        "layer-unmapped" => rings(&[(WALL, &big), ("FACADE", &rect(10.0, 10.0, 20.0, 20.0))]),
        "layer-hidden" => drawn(&format!("{frozen}{glass}"), INCH),
        "line-zero" => drawn(&with(&line("A-GLAZ", (60.0, 40.0), (60.0, 40.0))), INCH),
        "line-twice" => rings(&[(WALL, &big), (WALL, &big)]),
        "ends-joined" => {
            let corners = [(0.0, 0.03), (0.0, 96.0), (240.0, 96.0), (240.0, 0.0), (0.0, 0.0)];
            let sides = corners.windows(2).map(|w| line(WALL, w[0], w[1])).collect::<String>();
            drawn(&only(&sides), INCH)
        }
        "lines-squared" => {
            rings(&[(WALL, &[(0.0, 0.0), (240.0, 0.1), (240.0, 96.0), (0.0, 96.0)])])
        }
        "siding-from-lines" | "courses-unended" | "lines-no-siding" => {
            let level = |x: f64, y: f64| line("L", (x, y), (x + 240.0, y));
            let mut all: String = (0..24).map(|k| level(0.0, 4.0 * f64::from(k))).collect();
            // Rows of a table beside it.
            all.extend((0..12).map(|k| level(400.0, 9.0 * f64::from(k))));
            all.push_str(&line("L", (500.0, 0.0), (500.0, 99.0)));
            let head = "0\nSECTION\n2\nENTITIES\n";
            drawn(&format!("{head}{all}0\nENDSEC\n0\nEOF\n"), INCH)
        }
        "gaps-closed" => {
            let at = [(60.1, 40.0), (96.0, 40.0), (96.0, 72.0), (60.0, 72.0), (60.0, 40.0)];
            let sides: String = at.windows(2).map(|w| line("A-GLAZ", w[0], w[1])).collect();
            drawn(&with(&sides), INCH)
        }
        "view-turned" | "view-set-upright" | "view-skipped" => {
            let title = "0\nTEXT\n8\nA-ELEV-IDEN\n10\n150\n20\n120\n40\n9\n50\n180\n1\nFRONT\n";
            let asked = match code {
                "view-turned" => "",
                "view-skipped" => "[[elevation]]\nname = \"FRONT\"\nskip = true\n",
                _ => "[[elevation]]\nname = \"FRONT\"\nturn = 180\n",
            };
            drawn(&with(title), &format!("{INCH}{asked}"))
        }
        "model-variant" | "variant-unknown" | "model-mirrored" => {
            let front = text("A-ELEV-IDEN", (90.0, -20.0), "FRONT ELEVATION B");
            let asked = match code {
                "model-variant" => "[model]\nvariant = \"B\"\n",
                "variant-unknown" => "[model]\nvariant = \"C\"\n",
                _ => "[model]\nmirrored = true\n",
            };
            drawn(&with(&front), &format!("{INCH}{asked}"))
        }
        "view-doubted" => rings(&[
            (WALL, &big),
            ("A-GLAZ", &rect(20.0, 28.0, 50.0, 78.0)),
            ("A-GLAZ", &rect(80.0, 28.0, 110.0, 64.0)),
            ("A-GLAZ", &rect(140.0, 28.0, 170.0, 88.0)),
        ]),
        "view-left-alone" => {
            let more = text("A-ELEV-IDEN", (2100.0, -20.0), "FLOOR PLAN");
            let second = dxf(&[(WALL, &big), (WALL, &rect(2000.0, 0.0, 2240.0, 96.0))]);
            drawn(&second.replace("0\nENDSEC\n", &format!("{more}0\nENDSEC\n")), INCH)
        }
        "view-section" => {
            let title = text("A-ELEV-IDEN", (100.0, -20.0), "SECTION A-A");
            drawn(&only(&(hatch() + &title)), INCH)
        }
        "view-untitled" | "level-assumed" => {
            rings(&[(WALL, &big), (WALL, &rect(2000.0, 0.0, 2240.0, 96.0))])
        }
        "outside-views" => rings(&[
            ("A-ELEV-FRAM", &rect(-50.0, -50.0, 300.0, 150.0)),
            (WALL, &big),
            ("A-GLAZ", &rect(900.0, 32.0, 936.0, 72.0)),
        ]),
        "walls-too-many" => {
            let boxes: Vec<_> = (0..501)
                .map(|i| rect(20.0 * f64::from(i), 0.0, 20.0 * f64::from(i) + 18.0, 96.0))
                .collect();
            let list: Vec<(&str, &[(f64, f64)])> = boxes.iter().map(|b| (WALL, &b[..])).collect();
            rings(&list)
        }
        "part-unknown" => drawn(
            &wall(),
            &format!("{INCH}[[band]]\nelevation = \"Nroth\"\nbottom = 40\ntop = 48\n"),
        ),
        _ => return None,
    })
}

/// Two walls side by side, one beyond and over them; keys of no table stand first.
fn by_names(more: &str) -> Input {
    let d = dxf(&[
        (WALL, &rect(0.0, 0.0, 100.0, 96.0)),
        (WALL, &rect(110.0, 0.0, 200.0, 96.0)),
        (WALL, &rect(210.0, 100.0, 300.0, 196.0)),
    ]);
    drawn(&d, &format!("{more}\n{INCH}"))
}

#[allow(clippy::too_many_lines)] // One table: an input a code.
fn of_house(code: &str) -> Option<Input> {
    let big = rect(0.0, 0.0, 240.0, 96.0);
    let joint = "[[movement_joint]]\nelevation = \"elevation\"\nat = 80\n";
    Some(match code {
        "no-walls" => rings(&[("FACADE", &big)]),
        "wall-open" => drawn(
            &only(
                &(line(WALL, (0.0, 0.0), (240.0, 0.0)) + &line(WALL, (240.0, 0.0), (240.0, 96.0))),
            ),
            INCH,
        ),
        "wall-crosses" => rings(&[(WALL, &[(0.0, 0.0), (240.0, 0.0), (0.0, 96.0), (240.0, 96.0)])]),
        "wall-unknown" => by_names("skip = [\"wall-9\"]"),
        "given-stays" => by_names("skip = [\"wall-1\"]\n[[wall]]\noutline = [[0, 0], [240, 96]]"),
        "left-out-by-job" => by_names("skip = [\"wall-1\"]"),
        "walls-joined" => by_names("join = [[\"wall-1\", \"wall-2\"]]"),
        "walls-apart" => by_names("join = [[\"wall-1\", \"wall-3\"]]"),
        "wall-gives-way" => by_names("[[wall]]\noutline = [[0, 0], [100, 96]]"),
        "given-outside" => by_names("[[opening]]\noutline = [[9000, 0], [9100, 96]]"),
        "siding-layer-empty" => {
            by_names("[[elevation]]\nname = \"elevation\"\nsiding_layer = \"NONE\"")
        }
        "walls-overlap" => rings(&[(WALL, &big), (WALL, &rect(120.0, 0.0, 360.0, 96.0))]),
        "wall-too-fine" => {
            let on = |i: usize| std::f64::consts::TAU * i as f64 / 10_001.0;
            let round: Vec<(f64, f64)> =
                (0..10_001).map(|i| (2000.0 * on(i).cos(), 250.0 + 240.0 * on(i).sin())).collect();
            rings(&[(WALL, &round)])
        }
        "wall-too-big" => rings(&[(WALL, &rect(0.0, 0.0, 12_024.0, 96.0))]),
        "wall-too-full" => {
            let hole = |i: usize| {
                let (x, y) = (12.0 * (i / 2) as f64 + 2.0, 20.0 + 30.0 * (i % 2) as f64);
                rect(x, y, x + 9.0, y + 9.0)
            };
            let holes: Vec<_> = (0..1001).map(hole).collect();
            let wall = rect(0.0, 0.0, 6100.0, 96.0);
            let mut list: Vec<(&str, &[(f64, f64)])> = vec![(WALL, &wall)];
            list.extend(holes.iter().map(|h| ("A-GLAZ", &h[..])));
            rings(&list)
        }
        "outline-too-fine" => rings(&[(WALL, &big), ("A-ROOF-OTLN", &round(2_001))]),
        "outlines-too-many" => {
            let bands: Vec<_> = (0..501)
                .map(|i| rect(0.4 * f64::from(i), 50.0, 0.4 * f64::from(i) + 9.0, 58.0))
                .collect();
            let list = bands.iter().map(|b| ("A-WALL-BAND", &b[..]));
            let all: Vec<(&str, &[(f64, f64)])> =
                std::iter::once((WALL, &big[..])).chain(list).collect();
            rings(&all)
        }
        "grade-too-fine" => rings(&[(WALL, &big), ("C-TOPO-PROF", &round(2_001))]),
        "walls-from-hatch" => drawn(&only(&hatch()), INCH),
        "openings-off-siding" => {
            let ring = "10\n260\n20\n30\n10\n290\n20\n30\n10\n290\n20\n70\n10\n260\n20\n70\n";
            let window = format!("0\nLWPOLYLINE\n8\nA-GLAZ\n90\n4\n70\n1\n{ring}");
            drawn(&only(&(hatch() + &window)), INCH)
        }
        // 180 x 92 over a wall of 240 x 96.
        "opening-too-large" => {
            let ring = "10\n20\n20\n2\n10\n200\n20\n2\n10\n200\n20\n94\n10\n20\n20\n94\n";
            let window = format!("0\nLWPOLYLINE\n8\nA-GLAZ\n90\n4\n70\n1\n{ring}");
            drawn(&only(&(hatch() + &window)), INCH)
        }
        // A facade of 1000 x 600 with 240 x 96 of siding.
        "facade-share" => {
            let corners = rect(0.0, 0.0, 1000.0, 600.0);
            let sides = (0..4).map(|i| line("X", corners[i], corners[(i + 1) % 4]));
            let view = "[[elevation]]\nname = \"S\"\nregion = [-9.0, -9.0, 1009.0, 609.0]\n";
            drawn(&only(&(hatch() + &sides.collect::<String>())), &format!("{INCH}{view}"))
        }
        // Lines 6 in apart over a wall whose courses are 8 in.
        "wall-doubted" => {
            let foot = "73\n1\n93\n4\n10\n0\n20\n0\n10\n240\n20\n0\n";
            let over = hatch()
                .replace(foot, &foot.replace("20\n0\n", "20\n108\n"))
                .replace("20\n96\n", "20\n168\n")
                .replace("46\n8\n", "46\n6\n");
            drawn(&only(&(hatch() + &over)), INCH)
        }
        // A hole that nothing is drawn in; a strip 1 in wide at the hatch's side.
        "plane-assumed" => drawn(&only(&hatches(&[&rect(80.0, 30.0, 120.0, 70.0)])), INCH),
        "siding-detail" => drawn(
            &only(&hatches(&[&rect(80.0, 30.0, 120.0, 70.0), &rect(121.0, 30.0, 160.0, 70.0)])),
            INCH,
        ),
        "walls-from-lines" => drawn(&loose(""), INCH),
        "wall-foot" => drawn(&loose(&line("A-FLOR-LEVL", (0.0, 12.0), (200.0, 12.0))), INCH),
        // A strip 3 in high under the top: no wall and no opening.
        "faces-left" => drawn(&loose(&line(WALL, (0.0, 97.0), (200.0, 97.0))), INCH),
        "side-leans" => {
            // Too short to be squared.
            let step = [(240.0, 96.0), (220.0, 96.0), (220.03, 110.0), (0.0, 110.0)];
            let ring: Vec<_> = [(0.0, 0.0), (240.0, 0.0)].into_iter().chain(step).collect();
            rings(&[(WALL, &ring)])
        }
        "layer-speaks" => rings(&[(WALL, &big), ("Windows", &rect(60.0, 40.0, 96.0, 76.0))]),
        "drawn-unused" => drawn(&with(&line("A-GLAZ", (60.0, 40.0), (90.0, 40.0))), INCH),
        "opening-outside" => rings(&[(WALL, &big), ("A-GLAZ", &rect(10.0, 110.0, 46.0, 140.0))]),
        "opening-size-disagrees" => drawn(
            &with(&format!(
                "{}{}",
                &dxf(&[("A-GLAZ", &rect(60.0, 32.0, 84.0, 72.0))])
                    .replace("0\nSECTION\n2\nENTITIES\n", "")
                    .replace("0\nENDSEC\n0\nEOF\n", ""),
                text("A-GLAZ-IDEN", (64.0, 50.0), "36x80")
            )),
            INCH,
        ),
        "opening-straddles" => rings(&[(WALL, &big), ("A-GLAZ", &rect(60.0, 60.0, 96.0, 102.0))]),
        "fixture-outside" => {
            rings(&[(WALL, &big), ("A-ELEV-MBLK", &rect(60.0, 110.0, 66.0, 116.0))])
        }
        "siding-stops-short" => rings(&[
            (WALL, &rect(0.0, 0.0, 120.0, 96.0)),
            ("A-ROOF-OTLN", &rect(-12.0, 102.0, 132.0, 150.0)),
        ]),
        "joint-in-opening" => drawn(
            &dxf(&[(WALL, &big), ("A-GLAZ", &rect(60.0, 32.0, 96.0, 72.0))]),
            &format!("{INCH}{joint}"),
        ),
        "return-not-drawn" | "set-back-taken" => drawn(&wall(), INCH),
        // Two outside posts of 2 in and a wall 3 in wide between them.
        "wall-behind-posts" => drawn(
            &dxf(&[(WALL, &rect(0.0, 0.0, 240.0, 96.0)), (WALL, &rect(300.0, 0.0, 303.0, 96.0))]),
            INCH,
        ),
        "corner-heights-disagree" => four_sides(""),
        "return-corner-unknown" => {
            four_sides("[[return]]\ncorner = \"front-9/left\"\nwidth = 24\n")
        }
        "post-angle" => angled("[[angled]]\nwall = \"front-1\"\nwidth = 34\n"),
        "angled-unknown" => angled("[[angled]]\nwall = \"front-7\"\nwidth = 68\n"),
        "angled-narrow" => angled("[[angled]]\nwall = \"front-1\"\nwidth = 20\n"),
        "angled-outside" => {
            angled("[[angled]]\nwall = \"front-1\"\nwidth = 34\nopenings = { front-W1 = 30 }\n")
        }
        "angled-zone" => angled(
            "[[angled]]\nwall = \"front-1\"\nwidth = 34\n[[zone]]\nname = \"foot\"\ncladding = \"shingle\"\n[[zone.region]]\ntop = 24\n",
        ),
        _ => return None,
    })
}

fn of_laying(code: &str) -> Option<Input> {
    let cut = dxf(&[
        (WALL, &rect(1000.0, 500.0, 1240.0, 597.0)),
        ("A-GLAZ", &rect(1010.0, 557.25, 1034.0, 584.0)),
    ]);
    let courses = format!("{INCH}[courses]\ndatum = 0.0\n[product]\nlength = 300\n");
    let zone = "[[zone]]\nname = \"gable\"\nlayers = [\"A-WALL-SHNG\"]\ncladding = \"shingle\"\n";
    let crowded =
        "[product]\nlength = 150\n[seams]\neffort = \"brief\"\nstagger = 60\nclear_courses = 2\n";
    Some(match code {
        "block-moved" => drawn(
            &dxf(&[
                (WALL, &rect(0.0, 0.0, 240.0, 96.0)),
                ("A-ELEV-MBLK", &rect(100.0, 42.0, 106.0, 48.0)),
            ]),
            &courses,
        ),
        "peak-left" => drawn(
            &dxf(&[(WALL, &[(0.0, 0.0), (82.0, 0.0), (82.0, 40.0), (41.0, 81.0), (0.0, 40.0)])]),
            &courses,
        ),
        "strip-thin" | "panel-short" | "notch-thin" => drawn(&cut, &courses),
        "movement-gap" => {
            drawn(&wall(), &format!("{INCH}[weather]\ninstalled_f = 0.0\nhighest_f = 180.0\n"))
        }
        "seam-rules-conflict" => drawn(
            &dxf(&[(WALL, &rect(0.0, 0.0, 299.5, 72.0))]),
            &format!("[drawing]\nunit = \"inch\"\n{crowded}"),
        ),
        "wall-bare" => rings(&[
            (WALL, &rect(0.0, 0.0, 240.0, 96.0)),
            ("A-ROOF-OTLN", &rect(60.0, 40.0, 180.0, 70.0)),
        ]),
        "ragged-foot" => drawn(&dxf(&[(WALL, &crate::questions::CHAIR)]), INCH),
        "post-past-stone" => four_sides_with(&[("A-WALL-BASE", &rect(0.0, 0.0, 240.0, 30.0))], ""),
        // Two panels just cover the one course: 298 + 1 1/4 in of 300, so the seam is between 148 7/8 and
        // 149 5/8 in from the left, where an opening begins over it.
        "seam-on-jamb" => drawn(
            &dxf(&[
                (WALL, &rect(0.0, 0.0, 298.5, 8.0)),
                ("A-GLAZ", &rect(149.25, 4.0, 160.0, 8.0)),
            ]),
            &format!("{INCH}[product]\noutside_post_set_back = 0\n"),
        ),
        // Grade is drawn over the lower half of the wall.
        "check-failed" => drawn(&with(&line("C-TOPO-PROF", (-50.0, 40.0), (290.0, 40.0))), INCH),
        "long-panel-gap" => drawn(&wall(), &format!("{INCH}[product]\nlength = 240\n")),
        "one-lot" => drawn(&wall(), INCH),
        "crew-takes-more" => drawn(
            &dxf(&[
                (WALL, &rect(0.0, 0.0, 240.0, 96.0)),
                ("A-GLAZ", &rect(60.0, 40.0, 100.0, 72.0)),
            ]),
            "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"brief\"\n[courses]\ndatum = 0\n[product]\ncarton = 1\n[takeoff]\nspare = 0\n",
        ),
        "zone-empty" => drawn(&wall(), &format!("{INCH}{zone}")),
        _ => return of_openings(code),
    })
}

/// Openings near one another or a soffit.
fn of_openings(code: &str) -> Option<Input> {
    Some(match code {
        "filler-board" => drawn(
            &dxf(&[
                (WALL, &rect(0.0, 0.0, 240.0, 96.0)),
                ("A-GLAZ", &rect(100.0, 30.0, 140.0, 95.0)),
            ]),
            INCH,
        ),
        "openings-joined" => drawn(
            &dxf(&[
                (WALL, &rect(0.0, 0.0, 240.0, 96.0)),
                ("A-GLAZ", &rect(60.0, 30.0, 96.0, 78.0)),
                ("A-GLAZ", &rect(96.0, 30.0, 132.0, 78.0)),
            ]),
            INCH,
        ),
        _ => return None,
    })
}
