//! The page for a browser: everything of the layout is on it, nothing is fetched, and no text of a drawing
//! becomes part of it.

use lapwright::layout::set::LaidSet;
use lapwright::layout::told;
use lapwright::write::review;

use crate::support::{dxf, inches, laid_set, lay_set, rect};

/// A page without what its style and its script say.
pub(crate) fn without_code(page: &str) -> String {
    let mut out = page.to_owned();
    for tag in ["style", "script"] {
        while let Some(from) = out.find(&format!("<{tag}>")) {
            let end = format!("</{tag}>");
            let Some(to) = out[from..].find(&end) else { break };
            out.replace_range(from..from + to + end.len(), "");
        }
    }
    out
}

fn page(set: &LaidSet) -> String {
    review::page(&set.layout, &set.takeoff, &set.backdrops)
}

fn count(page: &str, what: &str) -> usize {
    page.matches(what).count()
}

#[test]
fn every_piece_is_drawn_once_listed_once_and_given_by_its_panel_with_one_length() {
    let set = laid_set("curlew-cottage");
    let (layout, page) = (&set.layout, page(&set));
    // It goes by mail: under 3 MB.
    assert!(page.len() < 3_000_000, "{}", page.len());
    let style = layout.job.sheet.lengths;
    let mut pieces = 0;
    for (.., p) in layout.pieces() {
        let length = style
            .length(told::piece(p, style).length)
            .replace('\'', "&#39;")
            .replace('"', "&quot;");
        let mark = p.mark.as_str();
        assert_eq!(count(&page, &format!("id=\"m-{mark}\"")), 1, "{mark}");
        assert_eq!(count(&page, &format!("id=\"r-{mark}\"")), 1, "{mark}");
        assert_eq!(count(&page, &format!("<title>{mark}, {length}</title>")), 1, "{mark} {length}");
        // In the saw list of its wall, and with its panel, the length beside it.
        assert_eq!(count(&page, &format!("data-go=\"{mark}\"")), 2, "{mark}");
        let given = format!("data-go=\"{mark}\">{mark}</button> {length}");
        assert_eq!(count(&page, &given), 1, "{given}");
        for what in ["cut", "hung"] {
            assert_eq!(
                count(&page, &format!("data-tick=\"{what}\" data-of=\"{mark}\"")),
                1,
                "{mark}"
            );
        }
        pieces += 1;
    }
    assert_eq!(count(&page, "class=\"pc\""), pieces);
    for p in &layout.panels {
        assert_eq!(count(&page, &format!("id=\"{}\"", p.id)), 1, "{}", p.id);
    }
    assert_eq!(count(&page, "class=\"view\""), layout.elevations.len());
    assert_eq!(count(&page, "<li class=\"s"), layout.findings.len());
    let rows = page.split("Order, and why").nth(1).unwrap().split("</table>").next().unwrap();
    assert_eq!(count(rows, "<tr><td>"), set.takeoff.lines.len());
}

#[test]
fn the_page_fetches_nothing_and_may_not() {
    let page = page(&laid_set("one-window"));
    assert!(page.contains("Content-Security-Policy") && page.contains("default-src 'none'"));
    for word in [
        "http:",
        "https:",
        "src=",
        "url(",
        "@import",
        "import(",
        "fetch(",
        "XMLHttpRequest",
        "WebSocket",
    ] {
        assert!(!page.contains(word), "{word}");
    }
    // Links lead to places of the page itself.
    assert_eq!(count(&page, "href=\"#"), count(&page, "href=\""));
}

#[test]
fn names_of_a_drawing_stay_text() {
    let evil = "</title></svg><script>alert(1)</script><img onerror=x>\"'&";
    let title = format!("0\nTEXT\n8\nA-ELEV-IDEN\n10\n40\n20\n-30\n40\n9\n1\n{evil}\n0\nENDSEC\n");
    let drawing = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0))]);
    let mut set = lay_set(drawing.replace("0\nENDSEC\n", &title).as_bytes(), &inches());
    set.layout.laid.drawing.name = evil.to_owned();
    let page = page(&set);
    // One script, the page's own, and no picture.
    assert_eq!((count(&page, "<script"), count(&page, "<img")), (1, 0));
    assert!(page.contains("&lt;script&gt;alert(1)"));
}

#[test]
fn a_failed_check_is_over_everything() {
    let mut set =
        lay_set(dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0))]).as_bytes(), &inches());
    assert!(!page(&set).contains("class=\"alarm\""));
    // A panel the less: pieces are cut from one that is not there.
    set.layout.laid.panels.pop();
    set.layout.verify = lapwright::verify::check(&set.layout);
    let page = page(&set);
    let (alarm, first) = (page.find("class=\"alarm\"").unwrap(), page.find("<svg").unwrap());
    assert!(alarm < first && page.contains("CHECK FAILED"));
}
