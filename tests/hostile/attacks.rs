//! Files of some kilobytes or megabytes that ask for all memory or for hours: each is laid out or refused
//! within seconds.

use std::fmt::Write as _;

use super::{Case, Ends, SVG, case, dxf, ring_on, wall_and};

/// Every case; their names begin with `attack`.
pub(super) fn cases() -> Vec<Case> {
    let all = [of_svg(), of_styles_and_words(), of_entities(), of_names()];
    all.into_iter().flatten().collect()
}

const TOO_BIG: Ends = Ends::Refused(&["svg-too-big"]);

fn of_svg() -> Vec<Case> {
    use Ends::{Laid, Refused};
    let svg = |name, make, sizes, ends| case(name, "svg", make, sizes, ends);
    vec![
        svg("attack: SVG markers in markers", markers, (6, 4), Laid),
        svg("attack: SVG markers in markers, by a style sheet", markers_by_style, (6, 4), Laid),
        svg("attack: SVG patterns in patterns", patterns, (30, 10), Laid),
        svg("attack: SVG masks in masks", masks, (30, 10), Laid),
        svg("attack: SVG clips in clips", clips, (30, 10), Laid),
        svg("attack: SVG filters of pictures of filters", filters, (30, 10), Laid),
        svg("attack: SVG symbols that use symbols", symbols, (25, 25), TOO_BIG),
        svg("attack: SVG element of 100,000 attributes", attributes, (100_000, 300), TOO_BIG),
        svg("attack: SVG of attributes without end", many_attributes, (60_000, 30_000), TOO_BIG),
        svg("attack: SVG of namespaces", namespaces, (60_000, 300), TOO_BIG),
        svg("attack: SVG entities within attributes", entities, (1_000, 100), TOO_BIG),
        svg(
            "attack: SVG path of 200,000 points, used again",
            path_used,
            (2_000, 200),
            Refused(&["svg-too-big", "points-too-many"]),
        ),
        svg(
            "attack: SVG path of 3,000,000 points",
            long_path,
            (1_500_000, 10_000),
            Refused(&["points-too-many", "svg-too-big"]),
        ),
        svg("attack: SVG elements in 300 groups", deep_leaves, (100_000, 1_000), Laid),
        svg(
            "attack: SVG groups, each its own layer",
            layer_groups,
            (1_000_000, 6_000),
            Refused(&["layers-too-many", "svg-too-big"]),
        ),
        Case {
            seconds: Some(1.5),
            ..svg("attack: SVG of 28,000 paths from a sheet", converted, (28_000, 300), Laid)
        },
        Case {
            seconds: Some(1.5),
            ..svg("attack: SVG of 82,000 paths from a sheet", converted, (82_000, 300), Laid)
        },
    ]
}

fn of_styles_and_words() -> Vec<Case> {
    use Ends::{Laid, Told};
    let svg = |name, make, sizes, ends| case(name, "svg", make, sizes, ends);
    vec![
        svg(
            "attack: SVG style rules against elements",
            rules,
            (20_000, 500),
            Told(&["svg-too-big", "unit-taken"]),
        ),
        svg("attack: SVG style rules within one another", rules_within, (60, 60), TOO_BIG),
        svg("attack: SVG of 50,000 style sheets", sheets, (50_000, 500), Laid),
        svg("attack: SVG style of 500,000 declarations", long_style, (500_000, 40_000), TOO_BIG),
        svg("attack: SVG classes against rules", classes, (300_000, 300_000), TOO_BIG),
        svg("attack: SVG text of 100,000 letters", letters, (100_000, 2_000), Laid),
        svg("attack: SVG letters, each with its place", placed_letters, (50_000, 500), Laid),
        svg("attack: SVG letter places in lists", listed_letters, (100_000, 1_000), Laid),
        svg("attack: SVG of 20,000 texts", texts, (20_000, 200), Laid),
        svg("attack: SVG text used again", text_used, (3_000, 600), TOO_BIG),
    ]
}

#[allow(clippy::too_many_lines)] // One table: a line an input.
fn of_entities() -> Vec<Case> {
    use Ends::{Laid, Refused};
    const POINTS: Ends = Refused(&["points-too-many", "items-too-many", "vertices-too-many"]);
    let dxf = |name, make, sizes, ends| case(name, "dxf", make, sizes, ends);
    let fine = || Refused(&["outline-too-fine", "wall-too-full"]);
    vec![
        dxf(
            "attack: grade of 240,000 points",
            |n| fine_on("C-TOPO-PROF", n),
            (240_000, 2_100),
            Refused(&["grade-too-fine"]),
        ),
        dxf("attack: grade of 2,000 points", fine_ground, (2_000, 200), Laid),
        dxf(
            "attack: roof of 240,000 corners",
            |n| fine_on("A-ROOF-OTLN", n),
            (240_000, 2_100),
            fine(),
        ),
        dxf(
            "attack: window of 240,000 corners",
            |n| fine_on("A-GLAZ", n),
            (240_000, 2_100),
            fine(),
        ),
        dxf(
            "attack: band of 240,000 corners",
            |n| fine_on("A-WALL-BAND", n),
            (240_000, 2_100),
            fine(),
        ),
        dxf(
            "attack: bare area of 240,000 corners",
            |n| fine_on("A-WALL-BASE", n),
            (240_000, 2_100),
            fine(),
        ),
        dxf(
            "attack: fixture of 240,000 corners",
            |n| fine_on("A-ELEV-OBST", n),
            (240_000, 2_100),
            fine(),
        ),
        dxf(
            "attack: 20,000 roofs",
            |n| small_on("A-ROOF-OTLN", n),
            (20_000, 5_100),
            Refused(&["outlines-too-many"]),
        ),
        dxf(
            "attack: 20,000 bands",
            |n| small_on("A-WALL-BAND", n),
            (20_000, 600),
            Refused(&["outlines-too-many"]),
        ),
        dxf(
            "attack: 20,000 bare areas",
            |n| small_on("A-WALL-BASE", n),
            (20_000, 600),
            Refused(&["outlines-too-many"]),
        ),
        dxf("attack: 200,000 splines", splines, (200_000, 2_000), POINTS),
        dxf("attack: splines of degree 25", high_splines, (3_000, 300), POINTS),
        dxf("attack: 200,000 circles as wide as the limit", circles, (200_000, 25_000), POINTS),
        dxf("attack: 200,000 ellipses as wide as the limit", ellipses, (200_000, 25_000), POINTS),
        dxf("attack: polyline of 900,000 arcs", arcs, (900_000, 19_000), POINTS),
        dxf("attack: paragraph of 20,000,000 lines", paragraph, (20_000_000, 5_000), Laid),
        dxf("attack: 500 paragraphs of 20,000 lines", paragraphs, (500, 10), POINTS),
        dxf("attack: array of a long text", array_of_text, (700, 400), POINTS),
        dxf("attack: array of a hatch of many lines", array_of_hatch, (700, 400), POINTS),
        dxf("attack: array with long attributes", array_of_attributes, (700, 50), Laid),
        Case {
            one_thread: true,
            ..dxf(
                "attack: no threads to be had",
                |_| wall_and(240.0, 96.0, |_| {}),
                (1, 1),
                Refused(&["threads-missing"]),
            )
        },
    ]
}

fn of_names() -> Vec<Case> {
    use Ends::{Laid, Refused};
    const LAYERS: Ends = Refused(&["layers-too-many"]);
    const LONG: Ends = Refused(&["name-too-long"]);
    let dxf = |name, make, sizes, ends| case(name, "dxf", make, sizes, ends);
    vec![
        dxf("attack: a million layers in the table", layers_of_table, (1_000_000, 21_000), LAYERS),
        dxf(
            "attack: a million layers of entities",
            layers_of_entities,
            (1_000_000, 21_000),
            LAYERS,
        ),
        dxf("attack: 20,000 layers", layers_of_entities, (19_000, 1_000), Laid),
        dxf("attack: layer names of 20,000 letters", |n| long_layers(n, 20_000), (200, 3), LONG),
        dxf(
            "attack: 10,000 layer names of 400 letters",
            |n| long_layers(n, 400),
            (10_000, 50),
            Laid,
        ),
        dxf("attack: block name of 20,000 letters", long_block, (700, 3), LONG),
        dxf("attack: handle of 20,000 letters, arrayed", long_handle, (700, 3), Laid),
        dxf("attack: title of 20,000 letters", long_title, (20_000, 20_000), Laid),
        dxf(
            "attack: 200 measures of 20,000 digits",
            long_measures,
            (200, 3),
            Refused(&["dimension-disagrees"]),
        ),
        case("attack: SVG labels of 20,000 letters", "svg", long_labels, (500, 3), LONG),
        case(
            "attack: job of words of 20,000 letters",
            "toml",
            long_words,
            (20_000, 20_000),
            Refused(&["job-unreadable"]),
        ),
    ]
}

/// An SVG with a wall, and what else is in it.
fn svg_with(body: &str) -> Vec<u8> {
    format!("{SVG}{body}<g id=\"A-WALL-OTLN\"><path d=\"M0 0H240V96H0Z\"/></g></svg>").into_bytes()
}

/// One after another.
fn each(n: usize, one: impl Fn(usize) -> String) -> String {
    (0..n).map(one).collect()
}

fn marked_path(by: &str) -> String {
    format!("<path {by} d=\"M0 0{}\"/>", "L1 1".repeat(100))
}

fn markers(depth: usize) -> Vec<u8> {
    let by = |i: usize| marked_path(&format!("stroke=\"red\" marker-mid=\"url(#m{i})\""));
    let one = |i: usize| format!("<marker id=\"m{i}\">{}</marker>", by(i + 1));
    svg_with(&format!("<defs>{}</defs>{}", each(depth, one), by(0)))
}

fn markers_by_style(depth: usize) -> Vec<u8> {
    let style = |i: usize| format!(".c{i}{{marker:url(#m{i})}}");
    let by = |i: usize| marked_path(&format!("class=\"c{i}\""));
    let one = |i: usize| format!("<marker id=\"m{i}\">{}</marker>", by(i + 1));
    svg_with(&format!(
        "<style>{}</style><defs>{}</defs>{}",
        each(depth, style),
        each(depth, one),
        by(0)
    ))
}

/// Each refers to the next twice.
fn doubling(tag: &str, attribute: &str, depth: usize) -> Vec<u8> {
    let rect = |i: usize| format!("<rect width=\"9\" height=\"9\" {attribute}=\"url(#n{i})\"/>");
    let one = |i: usize| {
        format!(
            "<{tag} id=\"n{i}\" width=\"9\" height=\"9\">{}{}</{tag}>",
            rect(i + 1),
            rect(i + 1)
        )
    };
    svg_with(&format!("<defs>{}</defs>{}", each(depth, one), rect(0)))
}

fn patterns(depth: usize) -> Vec<u8> {
    doubling("pattern", "fill", depth)
}

fn masks(depth: usize) -> Vec<u8> {
    doubling("mask", "mask", depth)
}

fn clips(depth: usize) -> Vec<u8> {
    doubling("clipPath", "clip-path", depth)
}

fn filters(depth: usize) -> Vec<u8> {
    let one = |i: usize| {
        let rect = format!("<rect width=\"9\" height=\"9\" filter=\"url(#f{})\"/>", i + 1);
        format!(
            "<filter id=\"f{i}\"><feImage href=\"#r{i}\"/></filter><g id=\"r{i}\">{rect}{rect}</g>"
        )
    };
    svg_with(&format!(
        "<defs>{}</defs><rect width=\"9\" height=\"9\" filter=\"url(#f0)\"/>",
        each(depth, one)
    ))
}

fn symbols(depth: usize) -> Vec<u8> {
    let one = |i: usize| {
        let used = format!("<use href=\"#s{}\"/>", i + 1);
        format!("<symbol id=\"s{i}\">{used}{used}</symbol>")
    };
    svg_with(&format!("<defs>{}</defs><use href=\"#s0\"/>", each(depth, one)))
}

fn attributes(n: usize) -> Vec<u8> {
    svg_with(&format!("<rect {}/>", each(n, |i| format!("a{i}=\"1\" "))))
}

/// Each element with as many as one may have.
fn many_attributes(n: usize) -> Vec<u8> {
    let one = format!("<g {}/>", each(190, |i| format!("a{i}=\"\" ")));
    svg_with(&one.repeat(n))
}

fn namespaces(n: usize) -> Vec<u8> {
    svg_with(&each(n, |i| format!("<g xmlns:a{i}=\"urn:{i}\"/>")))
}

fn entities(n: usize) -> Vec<u8> {
    let head = format!("<!DOCTYPE svg [<!ENTITY a \"{}\">]>", "x".repeat(1_000_000));
    [head.into_bytes(), svg_with(&"<g class=\"&a;\"/>".repeat(n))].concat()
}

fn path_used(n: usize) -> Vec<u8> {
    let path = format!("<path id=\"p\" d=\"M0 0{}\"/>", "h1v1".repeat(100_000));
    svg_with(&format!("<defs>{path}</defs>{}", "<use href=\"#p\"/>".repeat(n)))
}

fn long_path(n: usize) -> Vec<u8> {
    svg_with(&format!("<path d=\"M0 0{}\"/>", "h1v1l2-1 -2 1l1 1".repeat(n)))
}

fn deep_leaves(n: usize) -> Vec<u8> {
    let (open, close) = ("<g>".repeat(300), "</g>".repeat(300));
    svg_with(&format!("{open}{}{close}", "<rect width=\"1\" height=\"1\"/>".repeat(n)))
}

fn layer_groups(n: usize) -> Vec<u8> {
    svg_with(&each(n, |i| format!("<g id=\"L{i}\"><rect width=\"1\" height=\"1\"/></g>")))
}

/// As a program writes it that turns a sheet of a PDF into an SVG.
fn converted(n: usize) -> Vec<u8> {
    let style = "fill:none;stroke-width:0.12;stroke-linecap:round;stroke-linejoin:round;stroke:rgb(0%,0%,0%);stroke-opacity:1;stroke-miterlimit:10;";
    let one = |i: usize| {
        let (x, y) = ((i * 7919 % 2003) as f64, (i * 104_729 % 1499) as f64);
        format!(
            "<path style=\"{style}\" d=\"M {x:.6} {y:.6} L {:.6} {y:.6} M {:.6} {:.6} C {:.6} {:.6} {:.6} {:.6} {:.6} {:.6} \" transform=\"matrix(1,0,0,-1,0,1584)\"/>\n",
            x + 17.3,
            x + 3.0,
            y + 2.0,
            x + 4.0,
            y + 5.0,
            x + 7.0,
            y + 1.0,
            x + 9.0,
            y + 3.0
        )
    };
    svg_with(&format!("<g id=\"surface1\">\n{}</g>\n", each(n, one)))
}

fn rules(n: usize) -> Vec<u8> {
    let one = |i: usize| format!(".c{i} g > rect{{fill:#00{}}}", i % 10);
    let rects = "<rect class=\"c1\" width=\"1\" height=\"1\"/>".repeat(n);
    svg_with(&format!("<style>{}</style>{rects}", each(n / 4, one)))
}

/// Each rule asks for what lies in what lies in what: every way of choosing them is tried.
fn rules_within(depth: usize) -> Vec<u8> {
    let (open, close) = ("<g>".repeat(depth), "</g>".repeat(depth));
    let rule = format!("<style>{}q{{fill:red}}</style>", "g ".repeat(9));
    svg_with(&format!("{rule}{open}<rect width=\"1\" height=\"1\"/>{close}"))
}

fn sheets(n: usize) -> Vec<u8> {
    svg_with(&"<style>a{fill:red}</style>".repeat(n))
}

fn long_style(n: usize) -> Vec<u8> {
    svg_with(&format!("<rect width=\"2\" height=\"2\" style=\"{}\"/>", "fill:red;".repeat(n)))
}

fn classes(n: usize) -> Vec<u8> {
    let rules = each(4_000, |i| format!(".k{i}{{fill:red}}"));
    let rect = format!("<rect width=\"2\" height=\"2\" class=\"{}\"/>", "ab ".repeat(n));
    svg_with(&format!("<style>{rules}</style>{rect}"))
}

fn letters(n: usize) -> Vec<u8> {
    svg_with(&format!(
        "<text x=\"1\" y=\"1\" font-size=\"5\">{}</text>",
        "a note of ".repeat(n / 10)
    ))
}

fn placed_letters(n: usize) -> Vec<u8> {
    svg_with(&format!(
        "<text>{}</text>",
        each(n, |i| format!("<tspan x=\"{i}\" y=\"5\">a</tspan>"))
    ))
}

fn listed_letters(n: usize) -> Vec<u8> {
    let places = each(n, |i| format!("{i} "));
    svg_with(&format!("<text x=\"{places}\" dy=\"{places}\">{}</text>", "a".repeat(n)))
}

fn texts(n: usize) -> Vec<u8> {
    let one = |i: usize| {
        format!("<text x=\"{}\" y=\"{}\" font-size=\"5\">general note {i}</text>", i % 300, i / 300)
    };
    svg_with(&format!("<g id=\"A-ANNO-NOTE\">{}</g>", each(n, one)))
}

fn text_used(n: usize) -> Vec<u8> {
    let text = format!("<text id=\"t\">{}</text>", "abc ".repeat(1_000));
    svg_with(&format!("{text}{}", "<use href=\"#t\"/>".repeat(n)))
}

/// A wall with a ring of so many corners on a layer, in a circle in its middle.
fn fine_on(layer: &str, n: usize) -> Vec<u8> {
    let at = |i: usize| std::f64::consts::TAU * i as f64 / n as f64;
    let wide = |i: usize| 20.0 + 2.0 * (i % 2) as f64;
    wall_and(240.0, 96.0, |out| {
        let points = (0..n).map(|i| (120.0 + wide(i) * at(i).cos(), 48.0 + wide(i) * at(i).sin()));
        ring_on(out, layer, points);
    })
}

/// A wall over rolling ground of so many points, open, all below the siding: what buries half of a wall is
/// failed by the check, and is another case.
fn fine_ground(n: usize) -> Vec<u8> {
    let at = |i: usize| i as f64 / n as f64;
    wall_and(240.0, 96.0, |out| {
        let _ = write!(out, "0\nLWPOLYLINE\n8\nC-TOPO-PROF\n90\n{n}\n70\n0\n");
        for i in 0..n {
            let y = -12.0 + 2.0 * (at(i) * 40.0).sin();
            let _ = write!(out, "10\n{}\n20\n{y}\n", 240.0 * at(i));
        }
    })
}

/// A wall with so many small outlines on a layer.
fn small_on(layer: &str, n: usize) -> Vec<u8> {
    wall_and(240.0, 96.0, |out| {
        for i in 0..n {
            let (x, y) = ((i % 200) as f64 * 1.19, (i / 200) as f64 * 0.95);
            ring_on(out, layer, [(x, y), (x + 0.5, y), (x + 0.5, y + 0.4), (x, y + 0.4)]);
        }
    })
}

fn wall_with(entities: &str) -> Vec<u8> {
    wall_and(240.0, 96.0, |out| out.push_str(entities))
}

fn spline(degree: usize, control: usize) -> String {
    let mut out = format!("0\nSPLINE\n8\n0\n70\n0\n71\n{degree}\n");
    for k in 0..control + degree + 1 {
        let _ = write!(out, "40\n{}\n", k.clamp(degree, control) - degree);
    }
    for i in 0..control {
        let _ = write!(out, "10\n{i}\n20\n{}\n", i % 3);
    }
    out
}

fn splines(n: usize) -> Vec<u8> {
    wall_with(&spline(3, 10).repeat(n))
}

fn high_splines(n: usize) -> Vec<u8> {
    wall_with(&spline(25, 200).repeat(n))
}

fn circles(n: usize) -> Vec<u8> {
    wall_with(&each(n, |i| format!("0\nCIRCLE\n8\n0\n10\n{i}\n20\n0\n40\n1e8\n")))
}

fn ellipses(n: usize) -> Vec<u8> {
    let one = |i: usize| {
        format!("0\nELLIPSE\n8\n0\n10\n{i}\n20\n0\n11\n1e8\n21\n0\n40\n.5\n41\n0\n42\n6.28\n")
    };
    wall_with(&each(n, one))
}

fn arcs(n: usize) -> Vec<u8> {
    let one = |i: usize| format!("10\n{}\n20\n{i}\n42\n1\n", 9e8 * (i % 2) as f64);
    wall_with(&format!("0\nLWPOLYLINE\n8\n0\n90\n{n}\n70\n0\n{}", each(n, one)))
}

fn mtext(lines: usize) -> String {
    format!("0\nMTEXT\n8\n0\n10\n0\n20\n0\n40\n1\n1\n{}\n", "a\\P".repeat(lines))
}

fn paragraph(n: usize) -> Vec<u8> {
    wall_with(&mtext(n))
}

fn paragraphs(n: usize) -> Vec<u8> {
    wall_with(&mtext(20_000).repeat(n))
}

/// A wall, and a block inserted `n` by `n` times.
fn arrayed(name: &str, contents: &str, more: &str, n: usize) -> Vec<u8> {
    let block = format!("0\nBLOCK\n2\n{name}\n10\n0\n20\n0\n{contents}0\nENDBLK\n");
    let mut wall = String::new();
    ring_on(&mut wall, "A-WALL-OTLN", [(0.0, 0.0), (240.0, 0.0), (240.0, 96.0), (0.0, 96.0)]);
    let array = format!("70\n{n}\n71\n{n}\n44\n.1\n45\n.1\n");
    dxf(&block, &format!("{wall}0\nINSERT\n2\n{name}\n8\n0\n10\n0\n20\n0\n{array}{more}"))
}

fn array_of_text(n: usize) -> Vec<u8> {
    let text = format!("0\nTEXT\n8\n0\n10\n0\n20\n0\n40\n1\n1\n{}\n", "N".repeat(20_000));
    arrayed("B", &text, "", n)
}

fn array_of_hatch(n: usize) -> Vec<u8> {
    let family = format!("53\n0\n43\n0\n44\n0\n45\n0\n46\n8\n79\n90\n{}", "49\n1\n".repeat(90));
    let head = "0\nHATCH\n8\n0\n10\n0\n20\n0\n30\n0\n2\nLINE\n70\n0\n71\n0\n91\n0\n75\n0\n76\n1\n52\n0\n41\n1\n77\n0\n78\n900\n";
    arrayed("B", &format!("{head}{}", family.repeat(900)), "", n)
}

fn array_of_attributes(n: usize) -> Vec<u8> {
    let value = "N".repeat(20_000);
    let one = format!("0\nATTRIB\n8\n0\n10\n0\n20\n0\n40\n1\n1\n{value}\n2\nT\n70\n1\n");
    arrayed("B", "", &format!("66\n1\n{}0\nSEQEND\n", one.repeat(20)), n)
}

fn layers_of_table(n: usize) -> Vec<u8> {
    let table = each(n, |i| format!("0\nLAYER\n2\nL{i}\n70\n0\n62\n7\n"));
    let head = "0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLAYER\n".as_bytes();
    let end = b"0\nENDTAB\n0\nENDSEC\n";
    [head, table.as_bytes(), end, &wall_with("")].concat()
}

fn point_on(layer: &str) -> String {
    format!("0\nPOINT\n8\n{layer}\n10\n1\n20\n1\n")
}

fn layers_of_entities(n: usize) -> Vec<u8> {
    wall_with(&each(n, |i| point_on(&format!("L{i}"))))
}

fn long_layers(n: usize, letters: usize) -> Vec<u8> {
    let name = "N".repeat(letters);
    wall_with(&each(n, |i| point_on(&format!("{name}{i}"))))
}

fn long_block(n: usize) -> Vec<u8> {
    arrayed(&"N".repeat(20_000), &point_on("0"), "", n)
}

fn long_handle(n: usize) -> Vec<u8> {
    let handle = format!("0\nPOINT\n5\n{}\n8\n0\n10\n0\n20\n0\n", "A".repeat(20_000));
    arrayed("B", &handle, "", n)
}

fn long_title(letters: usize) -> Vec<u8> {
    let title = format!("{} ELEVATION", "N".repeat(letters));
    wall_with(&format!("0\nTEXT\n8\nA-ELEV-IDEN\n10\n100\n20\n-20\n40\n6\n1\n{title}\n"))
}

fn long_measures(n: usize) -> Vec<u8> {
    let digits = "9".repeat(20_000);
    let one = format!(
        "0\nDIMENSION\n8\nA-ANNO-DIMS\n70\n0\n1\n{digits}\n10\n0\n20\n9\n13\n0\n23\n0\n14\n50\n24\n0\n50\n0\n"
    );
    wall_with(&one.repeat(n))
}

fn long_labels(n: usize) -> Vec<u8> {
    let label = "N".repeat(20_000);
    svg_with(&each(n, |i| format!("<g id=\"{label}{i}\"><rect width=\"1\" height=\"1\"/></g>")))
}

fn long_words(letters: usize) -> Vec<u8> {
    let word = "w".repeat(letters);
    let many = format!("\"{word}\", ").repeat(50);
    format!("[drawing]\naccept = [{many}]\n[{word}]\n{word} = \"{word}\"\n").into_bytes()
}
