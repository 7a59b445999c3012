//! Inputs that ask for more than any house does: what each is, and how it must end.

mod attacks;
mod print;

use std::fmt::Write as _;

/// How a case must end.
pub(crate) enum Ends {
    /// Refused, with one of these codes.
    Refused(&'static [&'static str]),
    /// With a layout.
    Laid,
    /// With one of these findings, laid out or not.
    Told(&'static [&'static str]),
}

/// One input.
pub(crate) struct Case {
    pub name: &'static str,
    /// `svg`, `dxf`, `pdf`, or `toml` for a job file.
    pub kind: &'static str,
    /// The whole job file, with a drawing.
    pub job: &'static str,
    /// The input, `n` times as large as one.
    pub make: fn(usize) -> Vec<u8>,
    /// How large it is made to be measured, and in a quick test.
    #[allow(dead_code, reason = "tests and bench each use one")]
    pub full: usize,
    #[allow(dead_code, reason = "tests and bench each use one")]
    pub quick: usize,
    pub ends: Ends,
    /// The command that is measured.
    #[allow(dead_code, reason = "the bench alone measures")]
    pub verb: &'static str,
    /// Seconds it may take, where they are fewer than of the others.
    #[allow(dead_code, reason = "the bench alone measures")]
    pub seconds: Option<f64>,
    /// The system gives the program no thread but its own.
    pub one_thread: bool,
}

const INCH: &str = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n";
const KNOWN: &str = "[drawing]\nknown = \"0,0 1,0 = 1\"\n[product]\nexposure = 2\n[courses]\nleast_strip = 1\n[seams]\neffort = \"crew\"\n";

fn case(
    name: &'static str,
    kind: &'static str,
    make: fn(usize) -> Vec<u8>,
    (full, quick): (usize, usize),
    ends: Ends,
) -> Case {
    let (job, verb, seconds, one_thread) = (INCH, "layout", None, false);
    Case { name, kind, job, make, full, quick, ends, verb, seconds, one_thread }
}

/// Every case.
#[allow(clippy::too_many_lines)] // One table: a line an input.
pub(crate) fn cases() -> Vec<Case> {
    use Ends::{Laid, Refused, Told};
    const MB: usize = 1 << 20;
    let (junk, small) = (200 * MB, MB);
    let mut all = vec![
        case("junk: bytes at random", "dxf", random, (junk, small), Refused(&["not-dxf"])),
        case(
            "junk: lines after a good head",
            "dxf",
            lines,
            (junk, small),
            Refused(&["line-bad", "no-walls"]),
        ),
        case(
            "junk: entities of no kind",
            "dxf",
            kinds,
            (junk, small),
            Refused(&["no-walls", "items-too-many"]),
        ),
        case(
            "junk: one entity without end",
            "dxf",
            endless,
            (junk, small),
            Refused(&["no-walls", "vertices-too-many"]),
        ),
        case("junk: one line without end", "dxf", one_line, (junk, small), Refused(&["no-walls"])),
        case(
            "junk: layers, each its own",
            "dxf",
            layers,
            (junk, small),
            Refused(&["layers-too-many", "no-walls"]),
        ),
        case("junk: texts", "dxf", texts, (junk, small), Refused(&["no-walls"])),
        case(
            "junk: binary, cut off",
            "dxf",
            binary,
            (junk, small),
            Refused(&["no-walls", "file-truncated"]),
        ),
        case(
            "junk: SVG of one long comment",
            "svg",
            comment,
            (junk, small),
            Refused(&["no-walls"]),
        ),
        case(
            "junk: SVG without end",
            "svg",
            unclosed,
            (junk, small),
            Refused(&["svg-unreadable", "svg-too-big"]),
        ),
        case(
            "junk: SVG of shapes",
            "svg",
            shapes,
            (junk, small),
            Refused(&["no-walls", "svg-too-big"]),
        ),
        case(
            "junk: loose lines",
            "dxf",
            loose,
            (junk, small),
            Refused(&["no-walls", "items-too-many"]),
        ),
        case("wall of 10,000 vertices, round", "dxf", round, (10_000, 1_000), Laid),
        Case { job: KNOWN, ..case("wall of 1,200 courses", "dxf", tall, (1_200, 100), Laid) },
        case("wall of a thousand feet", "dxf", long, (12_000, 5_000), Laid),
        case(
            "array of a block",
            "dxf",
            array,
            (32_767, 32_767),
            Refused(&["items-too-many", "points-too-many", "block-nesting", "no-walls"]),
        ),
        case(
            "array of a block of many points",
            "dxf",
            points,
            (200_000, 200_000),
            Refused(&["items-too-many", "points-too-many", "block-nesting", "no-walls"]),
        ),
        case(
            "blocks that multiply",
            "dxf",
            blocks,
            (15, 15),
            Refused(&["items-too-many", "points-too-many", "block-nesting", "no-walls"]),
        ),
        case(
            "blocks that insert themselves",
            "dxf",
            cycle,
            (2_000, 100),
            Refused(&["items-too-many", "points-too-many", "block-nesting", "no-walls"]),
        ),
        case(
            "junk: lines too far away",
            "dxf",
            far,
            (junk, small),
            Refused(&["numbers-absurd", "no-walls"]),
        ),
        case(
            "junk: a block that inserts itself, again and again",
            "dxf",
            looped,
            (junk, small),
            Refused(&["block-nesting", "no-walls"]),
        ),
        case(
            "junk: dimensions typed over",
            "dxf",
            typed,
            (junk, small),
            Refused(&["dimension-disagrees"]),
        ),
        case("groups of extension data", "dxf", nested, (10 * MB, small), Refused(&["no-walls"])),
        case(
            "hatch of many loops",
            "dxf",
            hatch,
            (50_000, 1_000),
            Refused(&["no-walls", "hatch-loops", "unit-implausible"]),
        ),
        case("wall of 100,000 vertices", "dxf", saw, (100_000, 1_000), Refused(&["wall-too-fine"])),
        case(
            "wall of 100,000 vertices, round",
            "dxf",
            round,
            (100_000, 1_000),
            Refused(&["wall-too-fine"]),
        ),
        case(
            "wall of 100,000 vertices, crossing",
            "dxf",
            star,
            (100_000, 1_000),
            Refused(&["wall-too-fine", "wall-crosses"]),
        ),
        case("wall of 5,000 openings", "dxf", openings, (5_000, 100), Refused(&["wall-too-full"])),
        case("wall of 5,000 fixtures", "dxf", fixtures, (5_000, 100), Refused(&["wall-too-full"])),
        case(
            "5,000 openings outside",
            "dxf",
            outside,
            (5_000, 100),
            Told(&["opening-outside", "outside-views"]),
        ),
        Case {
            job: KNOWN,
            ..case("wall of 10,000 courses", "dxf", tall, (10_000, 100), Refused(&["wall-too-big"]))
        },
        case("wall ten miles long", "dxf", long, (633_600, 5_000), Refused(&["wall-too-big"])),
        case("5,000 walls", "dxf", walls, (5_000, 100), Refused(&["walls-too-many"])),
        case(
            "2,000 walls on one another",
            "dxf",
            stack,
            (2_000, 50),
            Refused(&["walls-overlap", "walls-too-many"]),
        ),
        case("5,000 roofs over a wall", "dxf", roofs, (5_000, 50), Laid),
        case(
            "200,000 loose lines on the wall layer",
            "dxf",
            soup,
            (200_000, 500),
            Refused(&["wall-open", "no-walls", "unit-implausible"]),
        ),
        case("20,000 frames and titles", "dxf", frames, (20_000, 50), Laid),
        case(
            "SVG groups in groups",
            "svg",
            groups,
            (1_000_000, 1_000),
            Refused(&["svg-too-big", "svg-unreadable"]),
        ),
        case(
            "SVG entities that multiply",
            "svg",
            entities,
            (20, 20),
            Refused(&["svg-unreadable", "svg-too-big"]),
        ),
        case(
            "SVG entities in a row",
            "svg",
            entity_row,
            (100_000, 100),
            Refused(&["svg-unreadable", "svg-too-big", "no-walls"]),
        ),
        case("SVG uses that multiply", "svg", uses, (30, 30), Refused(&["svg-too-big"])),
        case(
            "SVG uses of one large symbol",
            "svg",
            uses_of_much,
            (1_500, 1_500),
            Refused(&["svg-too-big", "no-walls"]),
        ),
        case(
            "SVG uses that go round",
            "svg",
            use_cycle,
            (10_000, 100),
            Refused(&["svg-too-big", "no-walls", "svg-unreadable"]),
        ),
        case(
            "SVG clip paths that multiply",
            "svg",
            clips,
            (1_000, 60),
            Refused(&["no-walls", "svg-too-big"]),
        ),
        case(
            "job of lists in lists",
            "toml",
            job_lists,
            (10 * MB, 100_000),
            Refused(&["job-unreadable"]),
        ),
        case(
            "job of unknown keys",
            "toml",
            job_keys,
            (1_000_000, 1_000),
            Refused(&["job-unreadable"]),
        ),
        case("job of views", "toml", job_views, (100_000, 100), Laid),
    ];
    all.extend(attacks::cases().into_iter().chain(print::cases()));
    all
}

fn dxf(blocks: &str, entities: &str) -> Vec<u8> {
    format!("0\nSECTION\n2\nBLOCKS\n{blocks}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n").into_bytes()
}

fn ring_on(out: &mut String, layer: &str, points: impl IntoIterator<Item = (f64, f64)>) {
    let _ = write!(out, "0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n");
    for (x, y) in points {
        let _ = write!(out, "0\nVERTEX\n8\n{layer}\n10\n{x}\n20\n{y}\n");
    }
    out.push_str("0\nSEQEND\n");
}

fn rect_on(out: &mut String, layer: &str, x: f64, y: f64, w: f64, h: f64) {
    ring_on(out, layer, [(x, y), (x + w, y), (x + w, y + h), (x, y + h)]);
}

fn wall_and(width: f64, height: f64, more: impl Fn(&mut String)) -> Vec<u8> {
    let mut out = String::new();
    rect_on(&mut out, "A-WALL-OTLN", 0.0, 0.0, width, height);
    more(&mut out);
    dxf("", &out)
}

const HEAD: &str = "0\nSECTION\n2\nENTITIES\n";

fn filled(head: &str, part: &str, n: usize, tail: &str) -> Vec<u8> {
    let mut out = String::with_capacity(n + part.len() + tail.len());
    out.push_str(head);
    while out.len() < n {
        out.push_str(part);
    }
    out.push_str(tail);
    out.into_bytes()
}

fn random(n: usize) -> Vec<u8> {
    let mut state = 0x2545_f491_4f6c_dd1du64;
    (0..n)
        .map(|_| {
            state ^= state << 13;
            state ^= state >> 7;
            state ^= state << 17;
            state as u8
        })
        .collect()
}

fn lines(n: usize) -> Vec<u8> {
    filled(HEAD, "no group code\n", n, "")
}

fn kinds(n: usize) -> Vec<u8> {
    let mut out = String::from(HEAD);
    let mut i = 0;
    while out.len() < n {
        let _ = write!(out, "0\nKIND{i}\n8\n0\n");
        i += 1;
    }
    out.into_bytes()
}

fn endless(n: usize) -> Vec<u8> {
    filled(&format!("{HEAD}0\nLWPOLYLINE\n8\n0\n90\n9\n70\n1\n"), "10\n1.25\n20\n3.5\n", n, "")
}

fn one_line(n: usize) -> Vec<u8> {
    filled(
        &format!("{HEAD}0\nTEXT\n8\n0\n10\n0\n20\n0\n40\n1\n1\n"),
        "no end ",
        n,
        "\n0\nENDSEC\n0\nEOF\n",
    )
}

fn layers(n: usize) -> Vec<u8> {
    let mut out = String::from("0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLAYER\n");
    let mut i = 0;
    while out.len() < n {
        let _ = write!(out, "0\nLAYER\n2\nL{i}\n70\n0\n62\n7\n");
        i += 1;
    }
    out.push_str("0\nENDTAB\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n");
    out.into_bytes()
}

fn texts(n: usize) -> Vec<u8> {
    let part = "0\nTEXT\n8\nA-ELEV-IDEN\n10\n5\n20\n6\n40\n6\n1\nFRONT ELEVATION\n";
    filled(HEAD, part, n, "0\nENDSEC\n0\nEOF\n")
}

fn binary(n: usize) -> Vec<u8> {
    let mut out = lapwright::read::dxf::tags::BINARY_MAGIC.to_vec();
    out.extend(b"\0\0SECTION\0\x02\0ENTITIES\0");
    while out.len() < n {
        out.extend(b"\0\0LINE\0\x08\x000\0\x0a\0\0\0\0\0\0\0\x04\x40\x14\0\0\0\0\0\0\0\x04\x40");
    }
    out
}

fn far(n: usize) -> Vec<u8> {
    let part = "0\nLINE\n8\n0\n10\n2e9\n20\n0\n11\n1\n21\n1\n";
    filled(HEAD, part, n, "0\nENDSEC\n0\nEOF\n")
}

fn looped(n: usize) -> Vec<u8> {
    let insert = "0\nINSERT\n2\nB\n8\n0\n10\n0\n20\n0\n";
    let block = format!("0\nBLOCK\n2\nB\n10\n0\n20\n0\n{insert}0\nENDBLK\n");
    dxf(&block, &insert.repeat(n / insert.len()))
}

fn typed(n: usize) -> Vec<u8> {
    let part = "0\nDIMENSION\n8\nA-ANNO-DIMS\n70\n0\n1\n99'-0\"\n10\n0\n20\n9\n13\n0\n23\n0\n14\n50\n24\n0\n50\n0\n";
    filled(HEAD, part, n, "0\nENDSEC\n0\nEOF\n")
}

fn loose(n: usize) -> Vec<u8> {
    let part = "0\nLINE\n8\n0\n10\n0\n20\n0\n11\n1\n21\n1\n";
    filled(HEAD, part, n, "0\nENDSEC\n0\nEOF\n")
}

const SVG: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" width=\"300in\" height=\"96in\" viewBox=\"0 0 300 96\">";

fn comment(n: usize) -> Vec<u8> {
    filled(&format!("{SVG}<!--"), "nothing to see ", n, "--></svg>")
}

fn unclosed(n: usize) -> Vec<u8> {
    filled(SVG, "<g id=\"A\"><rect width=\"3\" height=\"4\"/></g>", n, "")
}

fn shapes(n: usize) -> Vec<u8> {
    filled(SVG, "<rect width=\"3\" height=\"4\"/>", n, "</svg>")
}

fn array(n: usize) -> Vec<u8> {
    let block =
        "0\nBLOCK\n2\nB\n10\n0\n20\n0\n0\nLINE\n8\n0\n10\n0\n20\n0\n11\n1\n21\n1\n0\nENDBLK\n";
    let insert = format!("0\nINSERT\n2\nB\n8\n0\n10\n0\n20\n0\n70\n{n}\n71\n{n}\n44\n1\n45\n1\n");
    dxf(block, &insert)
}

fn points(n: usize) -> Vec<u8> {
    let mut block = String::from("0\nBLOCK\n2\nB\n10\n0\n20\n0\n");
    ring_on(&mut block, "0", (0..n).map(|i| (i as f64 / 100.0, (i % 2) as f64)));
    block.push_str("0\nENDBLK\n");
    dxf(&block, "0\nINSERT\n2\nB\n8\n0\n10\n0\n20\n0\n70\n1000\n71\n1000\n44\n1\n45\n1\n")
}

fn blocks(depth: usize) -> Vec<u8> {
    let mut out = String::from(
        "0\nBLOCK\n2\nB0\n10\n0\n20\n0\n0\nLINE\n8\n0\n10\n0\n20\n0\n11\n1\n21\n1\n0\nENDBLK\n",
    );
    for d in 1..depth {
        let _ = write!(out, "0\nBLOCK\n2\nB{d}\n10\n0\n20\n0\n");
        for i in 0..10 {
            let _ = write!(out, "0\nINSERT\n2\nB{}\n8\n0\n10\n{i}\n20\n0\n", d - 1);
        }
        out.push_str("0\nENDBLK\n");
    }
    dxf(&out, &format!("0\nINSERT\n2\nB{}\n8\n0\n10\n0\n20\n0\n", depth - 1))
}

fn cycle(n: usize) -> Vec<u8> {
    let mut out = String::new();
    for i in 0..n {
        let _ = write!(out, "0\nBLOCK\n2\nB{i}\n10\n0\n20\n0\n");
        for j in [1, 2] {
            let _ = write!(out, "0\nINSERT\n2\nB{}\n8\n0\n10\n1\n20\n0\n", (i + j) % n);
        }
        out.push_str("0\nENDBLK\n");
    }
    dxf(&out, "0\nINSERT\n2\nB0\n8\n0\n10\n0\n20\n0\n")
}

fn nested(n: usize) -> Vec<u8> {
    filled(
        &format!("{HEAD}0\nLINE\n8\n0\n10\n0\n20\n0\n11\n1\n21\n1\n"),
        "102\n{A\n",
        n,
        "0\nENDSEC\n0\nEOF\n",
    )
}

fn hatch(loops: usize) -> Vec<u8> {
    let mut out =
        format!("0\nHATCH\n8\n0\n10\n0\n20\n0\n30\n0\n2\nLINE\n70\n0\n71\n0\n91\n{loops}\n");
    for i in 0..loops {
        let _ = write!(out, "92\n2\n72\n0\n73\n1\n93\n4\n");
        for (x, y) in [(0, 0), (1, 0), (1, 1), (0, 1)] {
            let _ = write!(out, "10\n{}\n20\n{y}\n", 2 * i + x);
        }
        out.push_str("97\n0\n");
    }
    out.push_str("75\n0\n76\n1\n52\n0\n41\n1\n77\n0\n78\n1\n53\n0\n43\n0\n44\n0\n45\n0\n46\n8\n79\n0\n98\n0\n");
    dxf("", &out)
}

/// A top of teeth a fifth of an inch wide and eight inches high.
fn saw(n: usize) -> Vec<u8> {
    let mut out = String::new();
    let width = n as f64 * 0.1;
    let top = (0..n - 2).map(|i| (width - i as f64 * 0.1, 96.0 + 8.0 * (i % 2) as f64));
    ring_on(&mut out, "A-WALL-OTLN", [(0.0, 0.0), (width, 0.0)].into_iter().chain(top));
    dxf("", &out)
}

fn round(n: usize) -> Vec<u8> {
    let mut out = String::new();
    let at = |i: usize| std::f64::consts::TAU * i as f64 / n as f64;
    ring_on(&mut out, "A-WALL-OTLN", (0..n).map(|i| (290.0 * at(i).cos(), 290.0 * at(i).sin())));
    dxf("", &out)
}

fn star(n: usize) -> Vec<u8> {
    let mut out = String::new();
    let at = |i: usize| 2.4 * i as f64;
    ring_on(&mut out, "A-WALL-OTLN", (0..n).map(|i| (290.0 * at(i).cos(), 290.0 * at(i).sin())));
    dxf("", &out)
}

fn openings(n: usize) -> Vec<u8> {
    wall_and(n as f64 / 15.0 * 30.0 + 30.0, 590.0, |out| {
        for i in 0..n {
            let (column, row) = ((i / 15) as f64, (i % 15) as f64);
            rect_on(out, "A-GLAZ", 30.0 * column + 6.0, 39.0 * row + 7.0, 18.0, 24.0);
        }
    })
}

fn fixtures(n: usize) -> Vec<u8> {
    wall_and(n as f64 / 15.0 * 30.0 + 30.0, 590.0, |out| {
        for i in 0..n {
            let (column, row) = ((i / 15) as f64, (i % 15) as f64);
            rect_on(out, "A-ELEV-MBLK", 30.0 * column + 6.0, 39.0 * row + 7.0, 8.0, 8.0);
        }
    })
}

fn outside(n: usize) -> Vec<u8> {
    wall_and(240.0, 96.0, |out| {
        for i in 0..n {
            rect_on(out, "A-GLAZ", 48.0 * i as f64, 200.0, 36.0, 48.0);
        }
    })
}

/// With courses of two inches.
fn tall(courses: usize) -> Vec<u8> {
    wall_and(240.0, 2.0 * courses as f64, |_| {})
}

fn long(n: usize) -> Vec<u8> {
    wall_and(n as f64, 96.0, |_| {})
}

fn walls(n: usize) -> Vec<u8> {
    let mut out = String::new();
    for i in 0..n {
        rect_on(&mut out, "A-WALL-OTLN", 60.0 * i as f64, 0.0, 48.0, 96.0);
    }
    dxf("", &out)
}

fn stack(n: usize) -> Vec<u8> {
    let mut out = String::new();
    for i in 0..n {
        rect_on(&mut out, "A-WALL-OTLN", i as f64, 0.0, 240.0, 96.0);
    }
    dxf("", &out)
}

fn roofs(n: usize) -> Vec<u8> {
    wall_and(n as f64 * 2.0, 96.0, |out| {
        for i in 0..n {
            let x = 2.0 * i as f64;
            ring_on(out, "A-ROOF-OTLN", [(x, 80.0), (x + 3.0, 80.0), (x + 1.5, 110.0)]);
        }
    })
}

fn soup(n: usize) -> Vec<u8> {
    let mut out = String::new();
    for i in 0..n {
        let (x, y) = ((i * 7919 % 5003) as f64, (i * 104_729 % 499) as f64);
        let _ = write!(
            out,
            "0\nLINE\n8\nA-WALL-OTLN\n10\n{x}\n20\n{y}\n11\n{}\n21\n{}\n",
            x + 9.0,
            y + 7.0
        );
    }
    dxf("", &out)
}

fn frames(n: usize) -> Vec<u8> {
    wall_and(240.0, 96.0, |out| {
        for i in 0..n {
            let x = 400.0 * i as f64;
            rect_on(out, "A-ELEV-FRAM", x - 50.0, -50.0, 350.0, 200.0);
            let _ =
                write!(out, "0\nTEXT\n8\nA-ELEV-IDEN\n10\n{x}\n20\n-40\n40\n6\n1\nELEVATION {i}\n");
        }
    })
}

fn groups(depth: usize) -> Vec<u8> {
    format!("{SVG}{}{}</svg>", "<g>".repeat(depth), "</g>".repeat(depth)).into_bytes()
}

fn entities(depth: usize) -> Vec<u8> {
    let mut out = String::from("<!DOCTYPE svg [<!ENTITY e0 \"<rect width='1' height='1'/>\">");
    for d in 1..depth {
        let _ = write!(out, "<!ENTITY e{d} \"{}\">", format!("&e{};", d - 1).repeat(10));
    }
    let _ = write!(out, "]>{SVG}&e{};</svg>", depth - 1);
    out.into_bytes()
}

fn entity_row(n: usize) -> Vec<u8> {
    let long = "<rect width='1' height='1'/>".repeat(1000);
    format!("<!DOCTYPE svg [<!ENTITY e \"{long}\">]>{SVG}{}</svg>", "&e;".repeat(n)).into_bytes()
}

fn uses(depth: usize) -> Vec<u8> {
    let mut out = format!("{SVG}<defs><rect id=\"u0\" width=\"1\" height=\"1\"/>");
    for d in 1..depth {
        let _ =
            write!(out, "<g id=\"u{d}\">{}</g>", format!("<use href=\"#u{}\"/>", d - 1).repeat(10));
    }
    let _ = write!(out, "</defs><use href=\"#u{}\"/></svg>", depth - 1);
    out.into_bytes()
}

fn uses_of_much(n: usize) -> Vec<u8> {
    let symbol = "<rect width=\"1\" height=\"1\"/>".repeat(2_500);
    let used = "<use href=\"#s\"/>".repeat(n);
    format!("{SVG}<defs><g id=\"s\">{symbol}</g></defs>{used}</svg>").into_bytes()
}

fn use_cycle(n: usize) -> Vec<u8> {
    let mut out = String::from(SVG);
    for i in 0..n {
        let _ = write!(out, "<g id=\"c{i}\"><use xlink:href=\"#c{}\"/></g>", (i + 1) % n);
    }
    out.push_str("</svg>");
    out.into_bytes()
}

fn clips(n: usize) -> Vec<u8> {
    let mut out = format!("{SVG}<clipPath id=\"p0\"><rect width=\"9\" height=\"9\"/></clipPath>");
    for i in 1..n {
        let before = i - 1;
        let _ = write!(
            out,
            "<clipPath id=\"p{i}\" clip-path=\"url(#p{before})\"><rect width=\"9\" height=\"9\" clip-path=\"url(#p{before})\"/></clipPath>"
        );
    }
    let _ = write!(out, "<rect width=\"9\" height=\"9\" clip-path=\"url(#p{})\"/></svg>", n - 1);
    out.into_bytes()
}

fn job_lists(n: usize) -> Vec<u8> {
    format!("[layers]\nwall = {}", "[".repeat(n)).into_bytes()
}

fn job_keys(n: usize) -> Vec<u8> {
    (0..n)
        .fold(String::new(), |mut out, i| {
            let _ = writeln!(out, "key{i} = 1");
            out
        })
        .into_bytes()
}

fn job_views(n: usize) -> Vec<u8> {
    let mut out = String::from(INCH);
    for i in 0..n {
        let x = 1000 * i;
        let _ =
            write!(out, "[[elevation]]\nname = \"E{i}\"\nregion = [{x}, -10, {}, 500]\n", x + 900);
    }
    out.into_bytes()
}
