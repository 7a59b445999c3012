//! Ways to a wall other than an outline in a DXF, against areas reckoned by hand.

use lapwright::finding::Findings;
use lapwright::model::house::OpeningKind;
use lapwright::pipeline;

use crate::support::{broken, inches, lay, root};

#[test]
fn an_svg_with_named_groups_is_laid_out() {
    let bytes = std::fs::read(root().join("tests/samples/front.svg")).unwrap();
    let l = lay(&bytes, &inches());
    assert_eq!(broken(&l), Vec::<String>::new());
    let e = &l.elevations[0];
    assert_eq!(e.name, "FRONT ELEVATION");
    let w = &e.walls[0];
    // 240 x 96 less two windows of 36 x 48, one of them a symbol, and a door of 36 x 80.
    assert_eq!(w.gross_area, 160.0);
    assert_eq!(w.net_area, (240.0 * 96.0 - 2.0 * 36.0 * 48.0 - 36.0 * 80.0) / 144.0);
    assert_eq!(w.openings.iter().filter(|o| o.kind == OpeningKind::Door).count(), 1);
    // What is not displayed is not there.
    assert_eq!(e.walls.len(), 1);
}

#[test]
fn hostile_svgs_end_in_a_named_finding() {
    let refused = |svg: &str| {
        pipeline::reading(svg.as_bytes(), "x.svg", &inches(), &mut Findings::default())
            .unwrap_err()
            .0
            .code()
            .word()
    };
    // Ten symbols, each using the one before it ten times: ten thousand million elements.
    let mut bomb = String::from(
        "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'><g id='a0'><rect width='1' height='1'/></g>",
    );
    for i in 1..=10 {
        bomb.push_str(&format!("<g id='a{i}'>"));
        bomb.push_str(&format!("<use href='#a{}'/>", i - 1).repeat(10));
        bomb.push_str("</g>");
    }
    bomb.push_str("</svg>");
    assert_eq!(refused(&bomb), "svg-too-big");
    let deep = format!(
        "<svg xmlns='http://www.w3.org/2000/svg'>{}{}</svg>",
        "<g>".repeat(2000),
        "</g>".repeat(2000)
    );
    assert!(["svg-too-big", "svg-unreadable"].contains(&refused(&deep)));
    let entities = "<!DOCTYPE svg [<!ENTITY a 'aaaaaaaaaa'><!ENTITY b '&a;&a;&a;&a;&a;&a;&a;&a;'><!ENTITY c '&b;&b;&b;&b;&b;&b;&b;&b;'><!ENTITY d '&c;&c;&c;&c;&c;&c;&c;&c;'>]><svg xmlns='http://www.w3.org/2000/svg'><text>&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;</text></svg>";
    assert!(["svg-unreadable", "no-walls"].contains(&refused(entities)));
    assert_eq!(refused("<svg xmlns='http://www.w3.org/2000/svg'><g></svg>"), "svg-unreadable");
    assert_eq!(refused("<html></html>"), "not-dxf");
}
