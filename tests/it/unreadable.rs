//! Numbers that cannot be read, and files that are not what they are named: said with their place, never
//! taken for 0, 1 or another drawing.

use lapwright::finding::{Finding, Findings, Severity};
use lapwright::model::drawing::{Drawing, Shape};
use lapwright::read::{self, Limits};

use crate::support::{advised, dxf, rect, said};

fn read_all(bytes: &[u8]) -> (Option<Drawing>, Vec<Finding>) {
    let mut findings = Findings::default();
    let drawing = read::drawing(bytes, "d", &Limits::default(), &mut findings);
    let mut all = findings.all().to_vec();
    let drawing = drawing.map_err(|r| all.push(*r.0)).ok();
    (drawing, all)
}

fn of_code(found: &[Finding], code: &str) -> Vec<Finding> {
    found.iter().filter(|f| f.code().word() == code).cloned().collect()
}

/// A wall, and entities with it.
fn with(entities: &str) -> String {
    let wall = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0))]);
    wall.replace("0\nENDSEC\n", &format!("{entities}0\nENDSEC\n"))
}

fn line_of(text: &str, value: &str) -> usize {
    // The group's code stands on the line before its value.
    text.lines().position(|l| l == value).unwrap()
}

const BLOCK: &str = "0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nB\n10\n0\n20\n0\n0\nLINE\n8\n0\n10\n0\n20\n0\n11\n9\n21\n9\n0\nENDBLK\n0\nENDSEC\n";

#[test]
fn each_number_of_each_entity_is_found_by_its_line() {
    let ring = "0\nPOLYLINE\n8\nA-GLAZ\n66\n1\n70\n1\n0\nVERTEX\n8\nA-GLAZ\n10\n30\n20\n30\n42\n0.5\n0\nVERTEX\n8\nA-GLAZ\n10\n60\n20\n31\n0\nSEQEND\n";
    let insert =
        "0\nINSERT\n8\nA-GLAZ\n2\nB\n10\n33\n20\n34\n41\n1.5\n42\n1.25\n50\n15\n70\n2\n44\n7\n";
    let spline = "0\nSPLINE\n8\nA-GLAZ\n70\n0\n71\n2\n40\n0\n40\n0\n40\n0\n40\n1.75\n40\n1.75\n40\n1.75\n10\n35\n20\n36\n10\n37\n20\n38\n10\n39\n20\n41\n41\n0.9\n41\n0.9\n41\n0.9\n";
    let hatch = "0\nHATCH\n8\nA-GLAZ\n10\n0\n20\n0\n30\n0\n2\nLAP\n70\n0\n71\n0\n91\n1\n92\n7\n72\n1\n73\n1\n93\n3\n10\n43\n20\n44\n42\n0.3\n10\n45\n20\n46\n42\n0.2\n10\n47\n20\n48\n42\n0.1\n97\n0\n75\n0\n76\n1\n52\n3\n41\n1\n77\n0\n78\n1\n53\n13\n43\n0\n44\n0\n45\n0\n46\n8.5\n79\n0\n98\n0\n";
    let others = [
        ("LINE", "10\n51\n20\n52\n11\n53\n21\n54\n"),
        ("LWPOLYLINE", "90\n2\n70\n0\n10\n55\n20\n56\n42\n0.6\n10\n57\n20\n58\n"),
        ("ARC", "10\n61\n20\n62\n40\n63\n50\n64\n51\n65\n"),
        ("CIRCLE", "10\n66\n20\n67\n40\n68\n"),
        ("ELLIPSE", "10\n71\n20\n72\n11\n73\n21\n74\n40\n0.4\n41\n0.1\n42\n3.5\n"),
        ("SOLID", "10\n75\n20\n76\n11\n77\n21\n78\n12\n79\n22\n81\n13\n82\n23\n83\n"),
    ];
    let mut inputs: Vec<(&str, String)> = vec![
        ("POLYLINE", ring.to_owned()),
        ("INSERT", insert.to_owned()),
        ("SPLINE", spline.to_owned()),
        ("HATCH", hatch.to_owned()),
    ];
    inputs.extend(others.iter().map(|(k, g)| (*k, format!("0\n{k}\n8\nA-GLAZ\n{g}"))));
    let mut tried = 0;
    for (kind, entity) in inputs {
        let whole = format!("{BLOCK}{}", with(&entity));
        assert!(of_code(&read_all(whole.as_bytes()).1, "number-unreadable").is_empty(), "{kind}");
        let lines: Vec<&str> = entity.lines().collect();
        for (i, pair) in lines.chunks(2).enumerate() {
            let code: i32 = pair[0].parse().unwrap();
            if !matches!(code, 10..=59) {
                continue;
            }
            for word in ["abc", "1,5", "12.o", "", "nan", "--3"] {
                let mut broken: Vec<&str> = lines.clone();
                broken[2 * i + 1] = word;
                let text = format!("{BLOCK}{}", with(&(broken.join("\n") + "\n")));
                let (_, all) = read_all(text.as_bytes());
                let found = of_code(&all, "number-unreadable");
                assert_eq!(found.len(), 1, "{kind} {code} `{word}`: {all:?}");
                assert_eq!(found[0].severity(), Severity::Error);
                let first = text.rfind(&entity[..12]).unwrap();
                let line = text[..first].lines().count() + 2 * i + 1;
                let message = said(&found[0]);
                assert!(message.contains(&format!("line {line}: group {code}")), "{message}");
                assert!(message.contains("A-GLAZ"), "{message}");
                tried += 1;
            }
        }
    }
    assert!(tried > 300, "{tried}");
}

#[test]
fn what_cannot_be_read_is_left_out_whole_and_a_note_is_no_error() {
    let ring = "0\nPOLYLINE\n8\nA-GLAZ\n66\n1\n70\n1\n0\nVERTEX\n8\nA-GLAZ\n10\n30\n20\n3o\n0\nVERTEX\n8\nA-GLAZ\n10\n60\n20\n30\n0\nVERTEX\n8\nA-GLAZ\n10\n60\n20\n70\n0\nSEQEND\n";
    let (drawing, _) = read_all(with(ring).as_bytes());
    assert_eq!(drawing.unwrap().items.len(), 1, "the wall alone is left");
    // A vertex without its y is no point on the x axis, nor passed over.
    let (drawing, all) = read_all(with(&ring.replace("20\n3o\n", "")).as_bytes());
    assert_eq!(drawing.unwrap().items.len(), 1);
    assert_eq!(of_code(&all, "entity-broken").len(), 1);
    let note = "0\nTEXT\n8\nA-NOTE\n10\n3\n20\n4\n40\nhigh\n1\nPAINTED\n";
    let found = of_code(&read_all(with(note).as_bytes()).1, "number-unreadable");
    assert_eq!(found[0].severity(), Severity::Warning);
    // Where a block is inserted by cannot be read: nothing that inserts it is drawn at its own 0, 0.
    let insert = "0\nINSERT\n8\nA-GLAZ\n2\nB\n10\n33\n20\n34\n";
    let text = format!("{}{}", BLOCK.replacen("10\n0\n", "10\nx0\n", 1), with(insert));
    let (drawing, all) = read_all(text.as_bytes());
    assert_eq!(drawing.unwrap().items.len(), 1);
    let message = said(&of_code(&all, "number-unreadable")[0]);
    assert!(
        message.contains("BLOCK") && message.contains(&format!("line {}", line_of(&text, "x0")))
    );
}

#[test]
fn numbers_past_the_limit_are_named_as_that() {
    let line = |x: &str| format!("0\nLINE\n8\nA-GLAZ\n10\n{x}\n20\n1\n11\n2\n21\n3\n");
    for x in ["2e9", "-1e300", "1e400", &"9".repeat(400)] {
        let (_, all) = read_all(with(&line(x)).as_bytes());
        assert_eq!(of_code(&all, "numbers-absurd").len(), 1, "{x}");
        assert!(of_code(&all, "number-unreadable").is_empty(), "{x}");
        assert!(of_code(&all, "entity-broken").is_empty(), "{x}");
    }
    for x in ["2e9", "1e39", "99999999999"] {
        let far = svg(&format!(
            "<rect x=\"{x}\" y=\"1\" width=\"5\" height=\"5\"/>\n<path d=\"M0 0H{x}\"/>"
        ));
        let (_, all) = read_all(far.as_bytes());
        let found = of_code(&all, "numbers-absurd");
        assert!(said(&found[0]).starts_with("2 shapes"), "{x}: {all:?}");
        assert_eq!(found[0].origin.as_ref().map(|o| o.line), Some(2), "{x}");
    }
}

#[test]
fn meshes_and_dimensions_that_are_valid_are_not_called_broken() {
    let vertex = |x: i32, y: i32, flags: i32| {
        format!("0\nVERTEX\n8\n0\n10\n{x}\n20\n{y}\n30\n0\n70\n{flags}\n")
    };
    let corners = |flags| -> String {
        [(0, 0), (1, 0), (1, 1), (0, 1)].iter().map(|(x, y)| vertex(*x, *y, flags)).collect()
    };
    let face = "0\nVERTEX\n8\n0\n10\n0\n20\n0\n30\n0\n70\n128\n71\n1\n72\n2\n73\n3\n74\n4\n";
    let polyface = format!(
        "0\nPOLYLINE\n8\n0\n66\n1\n70\n64\n71\n4\n72\n1\n{}{face}0\nSEQEND\n",
        corners(192)
    );
    let mesh =
        format!("0\nPOLYLINE\n8\n0\n66\n1\n70\n16\n71\n2\n72\n2\n{}0\nSEQEND\n", corners(64));
    // Aligned, angular, by diameter, by radius, by three points, by ordinate; a linear one that leaves
    // its points to its block.
    let dimension = |kind: i32, points: &str| {
        format!("0\nDIMENSION\n8\nA-ANNO-DIMS\n2\n*D1\n70\n{kind}\n10\n1\n20\n2\n{points}")
    };
    let dimensions = [
        dimension(33, "13\n0\n23\n0\n14\n9\n24\n0\n"),
        dimension(34, "13\n0\n23\n0\n14\n9\n24\n0\n15\n4\n25\n4\n16\n3\n26\n3\n"),
        dimension(35, "15\n2\n25\n2\n40\n0\n"),
        dimension(36, "15\n2\n25\n2\n40\n0\n"),
        dimension(37, "13\n0\n23\n0\n14\n9\n24\n0\n15\n4\n25\n4\n"),
        dimension(38, "13\n0\n23\n0\n14\n9\n24\n0\n"),
        dimension(32, ""),
        dimension(32, "13\n0\n23\n0\n14\n9\n24\n0\n").replace("10\n1\n20\n2\n", ""),
    ]
    .concat();
    let (_, all) = read_all(with(&(polyface + &mesh + &dimensions)).as_bytes());
    assert!(of_code(&all, "entity-broken").is_empty(), "{all:?}");
    let skipped: Vec<String> = of_code(&all, "entity-skipped").iter().map(said).collect();
    assert!(skipped.iter().any(|s| s.contains("POLYLINE (mesh)")), "{skipped:?}");
    assert!(skipped.iter().any(|s| s.contains("POLYLINE (polyface mesh)")), "{skipped:?}");
}

const SVG: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"300in\" height=\"96in\" viewBox=\"0 0 300 96\">\n";

fn svg(body: &str) -> String {
    format!("{SVG}{body}\n<g id=\"A-WALL-OTLN\"><path d=\"M0 0H240V96H0Z\"/></g></svg>")
}

#[test]
fn numbers_of_an_svg_are_found_by_element_and_line() {
    for (element, says) in [
        ("<path d=\"M0 0L5 5 6x 7\"/>", "`d` of path says `x`"),
        ("<path d=\"M0 0 L5\"/>", "`d` of path is empty"),
        ("<rect x=\"2O\" y=\"1\" width=\"5\" height=\"5\"/>", "`x` of rect says `2O`"),
        ("<circle cx=\"5\" cy=\"5\" r=\"five\"/>", "`r` of circle says `five`"),
        ("<ellipse cx=\"5\" cy=\"5\" rx=\"1\" ry=\"1 mm\"/>", "`ry` of ellipse says `mm`"),
        ("<line x1=\"0\" y1=\"0\" x2=\"3,5x\" y2=\"9\"/>", "`x2` of line says `5x`"),
        ("<polyline points=\"0,0 5,5 6,b\"/>", "`points` of polyline says `b`"),
        ("<polygon points=\"0,0 5,5 6\"/>", "`points` of polygon is empty"),
        (
            "<g transform=\"scale(a)\"><rect width=\"5\" height=\"5\"/></g>",
            "`transform` of g says `a)`",
        ),
        ("<use href=\"#a\" x=\"left\"/>", "`x` of use says `left`"),
    ] {
        let (_, all) = read_all(svg(&format!("<g id=\"A-GLAZ\">\n{element}</g>")).as_bytes());
        let found = of_code(&all, "number-unreadable");
        assert_eq!(found.len(), 1, "{element}: {all:?}");
        let message = said(&found[0]);
        assert!(message.contains(says) && message.starts_with("line 3:"), "{message}");
        assert_eq!(found[0].severity(), Severity::Error);
    }
    // What style sheets and programs write is no fault.
    let good = "<rect x=\"5%\" y=\"1mm\" width=\"auto\" height=\"calc(1px + 2px)\"/><path d=\"\"/><path d=\"M0 0a1 1 0 01.5.5z\"/><g transform=\"\"/><text x=\"1 2 3\" y=\"4\">a b</text>";
    let (_, all) = read_all(svg(good).as_bytes());
    assert!(of_code(&all, "number-unreadable").is_empty(), "{all:?}");
}

fn outlines(drawing: &Drawing) -> Vec<(String, usize)> {
    let of = |s: &Shape| match s {
        Shape::Polyline(p) => p.vertices.len(),
        Shape::Curve(c) => c.elements().len(),
        _ => 0,
    };
    drawing.items.iter().map(|i| (drawing.layers[i.layer].name.clone(), of(&i.shape))).collect()
}

#[test]
fn what_fills_clips_or_marks_an_outline_does_not_change_it() {
    let shape = |by: &str| format!("<g id=\"A-GLAZ\"><path {by} d=\"M10 10H40V50H10Z\"/></g>");
    let plain = outlines(&read_all(svg(&shape("")).as_bytes()).0.unwrap());
    assert_eq!(plain, [("A-GLAZ".to_owned(), 4), ("A-WALL-OTLN".to_owned(), 4)]);
    let defs = "<defs><pattern id=\"p\" width=\"4\" height=\"4\"><path d=\"M0 0L9 9\"/></pattern><clipPath id=\"c\"><rect width=\"300\" height=\"96\"/></clipPath><mask id=\"k\"><rect width=\"300\" height=\"96\" fill=\"white\"/></mask><marker id=\"m\"><path d=\"M0 0L1 1\"/></marker><filter id=\"f\"><feOffset dx=\"1\"/></filter><linearGradient id=\"g\"><stop stop-color=\"red\"/></linearGradient></defs><style>#A-GLAZ path{fill:url(#p);marker:url(#m);filter:url(#f)}</style>";
    for by in [
        "fill=\"url(#p)\"",
        "fill=\"none\" stroke=\"url(#g)\"",
        "clip-path=\"url(#c)\"",
        "mask=\"url(#k)\"",
        "stroke=\"red\" marker-start=\"url(#m)\" marker-end=\"url(#m)\"",
        "filter=\"url(#f)\"",
        "style=\"fill:url(#p);filter:url(#f);marker-mid:url(#m)\"",
        "fill=\"red\"",
    ] {
        let (drawing, all) = read_all(svg(&format!("{defs}{}", shape(by))).as_bytes());
        assert_eq!(outlines(&drawing.unwrap()), plain, "{by}: {all:?}");
    }
    // What stands within a clip may be used, and what has the id of another keeps its own layer.
    let used = "<clipPath id=\"c\"><path id=\"w\" d=\"M10 10H40V50H10Z\"/></clipPath><g id=\"A-GLAZ\"><use href=\"#w\"/></g>";
    assert_eq!(outlines(&read_all(svg(used).as_bytes()).0.unwrap()), plain);
    let twice =
        format!("{}<g id=\"A-DOOR\"><path id=\"x\" d=\"M1 1H2V2Z\"/></g>", shape("id=\"x\""));
    let found = outlines(&read_all(svg(&twice).as_bytes()).0.unwrap());
    assert_eq!(found[1], ("A-DOOR".to_owned(), 3));
}

fn wide(text: &str, big: bool, mark: bool) -> Vec<u8> {
    let order = |u: u16| if big { u.to_be_bytes() } else { u.to_le_bytes() };
    let mark = if mark { "\u{feff}" } else { "" };
    format!("{mark}{text}").encode_utf16().flat_map(order).collect()
}

#[test]
fn utf_16_is_read_as_what_it_says() {
    let title = "0\nTEXT\n8\nA-ELEV-IDEN\n10\n99\n20\n-20\n40\n6\n1\nFAÇADE \u{7acb}\u{9762}\n";
    let vector =
        svg("<g id=\"A-ELEV-IDEN\"><text x=\"9\" y=\"90\">FAÇADE \u{7acb}\u{9762}</text></g>");
    for text in [with(title), vector] {
        let plain = read_all(text.as_bytes()).0.unwrap();
        for (big, mark) in [(false, false), (false, true), (true, false), (true, true)] {
            let (drawing, all) = read_all(&wide(&text, big, mark));
            let drawing = drawing.unwrap_or_else(|| panic!("{all:?}"));
            assert_eq!(drawing.items, plain.items, "{big} {mark}");
            assert!(drawing.dialect.encoding.starts_with("UTF-16"), "{:?}", drawing.dialect);
        }
    }
    // Nothing can be put into its bytes: the overlay is a drawing of its own, and says why.
    let mut findings = Findings::default();
    let bytes = wide(&with(""), false, true);
    let job = crate::support::inches();
    lapwright::pipeline::reading(&bytes, "d", &job, &mut findings).unwrap();
    let apart = of_code(findings.all(), "overlay-apart");
    assert!(said(&apart[0]).contains("UTF-16"));
    // An SVG in another encoding that it names.
    let latin = svg("<g id=\"Fa\u{e7}ade\"><path d=\"M0 0H9\"/></g>");
    let head = "<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?>";
    let bytes: Vec<u8> = format!("{head}{latin}").chars().map(|c| c as u8).collect();
    assert_eq!(outlines(&read_all(&bytes).0.unwrap())[0].0, "Fa\u{e7}ade");
}

#[test]
fn compressed_files_are_named_and_are_to_be_unpacked() {
    // First bytes as the formats' own specifications give them (from memory).
    let mut tar = vec![0u8; 512];
    tar[257..262].copy_from_slice(b"ustar");
    let heads: [(&[u8], &str); 9] = [
        (b"PK\x03\x04\x14\0\0\0", "zip"),
        (b"PK\x05\x06\0\0\0\0", "zip"),
        (b"\x1f\x8b\x08\0\0\0\0\0", "gzip"),
        (b"BZh91AY&SY", "compressed"),
        (b"\xfd7zXZ\0\0\x04", "compressed"),
        (b"\x28\xb5\x2f\xfd\x04\0", "compressed"),
        (b"7z\xbc\xaf\x27\x1c\0\x04", "compressed"),
        (b"Rar!\x1a\x07\x01\0", "compressed"),
        (&tar, "archive"),
    ];
    for (bytes, name) in heads {
        let (_, all) = read_all(bytes);
        let found = of_code(&all, "not-dxf");
        assert!(said(&found[0]).contains(name), "{bytes:?}: {all:?}");
        assert!(advised(&found[0]).contains("Unpack"), "{name}");
    }
}
