//! The overlay on the pages of a PDF: the source's bytes first, then layers that an independent reader
//! finds, with strokes where the drawing has its walls.

use lapwright::finding::Findings;
use lapwright::geom::vocabulary::Rect;
use lapwright::layout::set::LaidSet;
use lapwright::model::drawing::{Drawing, Shape};
use lapwright::outputs;
use lapwright::read::{self, Limits};

use crate::pdf_in::{by_hand, job, one_page, three_pages};
use crate::support::lay_set;

/// The wall on the page as it is read, points: 25 ft by 8 ft at 18 points to the foot, from 144, 216.
const WALL: Rect = Rect::new(144.0, 216.0, 594.0, 360.0);

fn overlay(set: &LaidSet, source: &[u8]) -> Vec<u8> {
    let files = outputs::set::files(set, source, false).unwrap();
    files.into_iter().find(|f| f.0 == "overlay.pdf").expect("an overlay.pdf").1
}

fn read_back(bytes: &[u8]) -> Drawing {
    read::drawing(bytes, "overlay", &Limits::default(), &mut Findings::default()).unwrap()
}

/// The box round all lines on a layer.
fn frame(drawing: &Drawing, name: &str) -> Rect {
    let layer = drawing.layers.iter().position(|l| l.name == name).unwrap();
    let lines = drawing.items.iter().filter(|i| i.layer == layer).filter_map(|i| match &i.shape {
        Shape::Polyline(line) => Some(line),
        _ => None,
    });
    let points = lines.flat_map(|l| l.vertices.iter().map(|v| v.at));
    points.map(|p| Rect::from_points(p, p)).reduce(|a, b| a.union(b)).unwrap()
}

fn holds(source: &[u8], set: &LaidSet, wall: Rect) -> Drawing {
    let whole = overlay(set, source);
    assert_eq!(&whole[..source.len()], source);
    let drawing = read_back(&whole);
    let found = frame(&drawing, "Z-ELEV-OTLN");
    let near = |a: f64, b: f64| (a - b).abs() < 0.1;
    assert!(
        near(found.x0, wall.x0)
            && near(found.y0, wall.y0)
            && near(found.x1, wall.x1)
            && near(found.y1, wall.y1),
        "{found:?}"
    );
    // What the page showed is there as before.
    let before = read_back(source);
    let kept = drawing.items.iter().filter(|i| !drawing.layers[i.layer].name.starts_with("Z-"));
    let texts = |d: &Drawing| d.items.iter().filter(|i| matches!(i.shape, Shape::Text(_))).count();
    let lines = kept.filter(|i| !matches!(i.shape, Shape::Text(_))).count();
    assert_eq!(lines, before.items.len() - texts(&before));
    for layer in ["Z-ELEV-CRSE", "Z-ELEV-TRIM", "Z-ELEV-IDEN"] {
        assert!(drawing.layers.iter().any(|l| l.name == layer), "{layer}");
    }
    drawing
}

#[test]
fn a_print_has_the_layout_on_its_page_on_layers() {
    let source = one_page();
    let drawing = holds(&source, &lay_set(&source, &job()), WALL);
    // Marks of pieces are words on the page.
    let said = |text: &str| {
        drawing.items.iter().any(|i| matches!(&i.shape, Shape::Text(t) if t.content == text))
    };
    assert!(said("1-1-1") || said("F1-1-1") || said("1-1"));
}

#[test]
fn of_several_pages_each_has_its_own_views() {
    let source = three_pages();
    let mut job = job();
    job.drawing.pages = vec![3];
    let set = lay_set(&source, &job);
    let whole = overlay(&set, &source);
    let layers = |page: usize| {
        let limits = Limits { pages: vec![page], ..Limits::default() };
        let d = read::drawing(&whole, "o", &limits, &mut Findings::default()).unwrap();
        d.layers.iter().filter(|l| l.name.starts_with("Z-")).count()
    };
    assert_eq!(layers(2), 0);
    assert!(layers(3) > 3);
}

/// A page on its side, with a table of objects as text, layers of its own and what it draws with on the
/// pages' node: places are turned as a reader turns them, x from y, y down from x.
fn turned() -> Vec<u8> {
    let ring = |width: f64, color: &str, corners: &[(f64, f64)]| {
        let mut out = format!("{width} w {color} RG\n");
        for (i, (x, y)) in corners.iter().enumerate() {
            let (x, y) = (612.0 - (216.0 + y * 1.5), 144.0 + x * 1.5);
            out += &format!("{x} {y} {}\n", if i == 0 { "m" } else { "l" });
        }
        out + "s\n"
    };
    let boxed = |x0: f64, y0: f64, x1: f64, y1: f64| [(x0, y0), (x1, y0), (x1, y1), (x0, y1)];
    let mut content = ring(1.42, "0 0 0", &boxed(0.0, 0.0, 300.0, 96.0));
    content += &ring(0.71, "0 0 0", &boxed(40.0, 36.0, 76.0, 84.0));
    content += &ring(0.71, "0 0 0.784", &boxed(230.0, 0.0, 266.0, 80.0));
    content += "/OC /Own BDC 1 w\n";
    for i in 0..60 {
        content += &format!("{} 10 m {} 20 l S\n", i + 1, i + 1);
    }
    content += "EMC\nBT /F 12 Tf 0 12 -12 0 560 150 Tm (FRONT ELEVATION) Tj ET\n";
    by_hand(&[
        "<< /Type /Catalog /Pages 2 0 R /OCProperties << /OCGs [6 0 R] /D << /BaseState /OFF /ON [6 0 R] >> >> >>".to_owned(),
        "<< /Type /Pages /Kids [3 0 R] /Count 1 /Rotate 90 /MediaBox [0 0 612 792] /Resources << /Font \
         << /F 5 0 R >> /Properties << /Own 6 0 R >> >> >>"
            .to_owned(),
        "<< /Type /Page /Parent 2 0 R /Contents [4 0 R] >>".to_owned(),
        format!("<< /Length {} >>\nstream\n{content}\nendstream", content.len()),
        "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>".to_owned(),
        "<< /Type /OCG /Name (OWN) >>".to_owned(),
    ])
}

#[test]
fn a_turned_page_with_layers_of_its_own_has_the_layout_where_its_wall_is() {
    let source = turned();
    let text = "[drawing]\nknown = \"144,216 594,216 = 25'-0\\\"\"\naccept = [\"opening-outside\"]\n\
                [layers]\nwall = [\"stroke 1.42 pt black\"]\nwindow = [\"stroke 0.71 pt black\"]\n\
                door = [\"stroke 0.71 pt #0000c8\"]\n[seams]\neffort = \"crew\"\n";
    let job = crate::support::bare_corners(lapwright::job::file::parse(text, "job").unwrap());
    let drawing = holds(&source, &lay_set(&source, &job), WALL);
    assert!(drawing.layers.iter().any(|l| l.name == "OWN"));
    // The table is text, as the source's is, and the new layers are on where others are off.
    let whole = overlay(&lay_set(&source, &job), &source);
    let added = String::from_utf8_lossy(&whole[source.len()..]).into_owned();
    assert!(
        added.contains("\nxref\n0 1\n0000000000 65535 f \n") && added.contains("/BaseState /OFF")
    );
}

#[test]
fn a_pdf_that_takes_no_additions_is_told() {
    let whole = one_page();
    // Without its last line the file is read all the same, and nothing can go on from there.
    let at = whole.windows(9).rposition(|w| w == b"startxref").unwrap();
    assert!(lapwright::write::pdf_update::takes(&whole));
    assert!(!lapwright::write::pdf_update::takes(&whole[..at]));
}
