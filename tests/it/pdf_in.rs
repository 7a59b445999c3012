//! A drawing printed to PDF and read again, against the drawing itself; and PDFs that are none.

use lapwright::finding::Findings;
use lapwright::geom::vocabulary::Point;
use lapwright::job::{Job, file};
use lapwright::model::drawing::{Across, Dash, Drawing, Pen, Polyline, Shape, Text, Up};
use lapwright::model::sheet::Sheet;
use lapwright::pipeline;
use lapwright::read::{self, Limits};
use lapwright::write::{pdf, svg};

use crate::support::{bare_corners, dxf, lay, lay_set};

/// Corners of the wall, two windows and a door, inches.
const WALL: [(f64, f64); 4] = [(0.0, 0.0), (300.0, 0.0), (300.0, 96.0), (0.0, 96.0)];
const WINDOWS: [f64; 2] = [40.0, 130.0];
const DOOR: [(f64, f64); 4] = [(230.0, 0.0), (266.0, 0.0), (266.0, 80.0), (230.0, 80.0)];

fn window(x: f64) -> [(f64, f64); 4] {
    [(x, 36.0), (x + 36.0, 36.0), (x + 36.0, 84.0), (x, 84.0)]
}

/// The elevation on paper, 1/4 in to the foot, its lower left corner at 2, 3 in.
fn printed(title: &str) -> Sheet {
    printed_with(title, &[])
}

/// The same with more words, one under the other.
fn printed_with(title: &str, more: &[&str]) -> Sheet {
    let on_paper = |(x, y): (f64, f64)| Point::new(2.0 + x / 48.0, 3.0 + y / 48.0);
    let mut drawing = Drawing::default();
    let pen = |width, color| Pen { width, color, dash: Dash::Solid, fill: None };
    // 0.5 mm and 0.25 mm are 1.42 and 0.71 points.
    let wall = drawing.layer("wall", pen(0.5, [0, 0, 0]));
    let glass = drawing.layer("glass", pen(0.25, [0, 0, 0]));
    let door = drawing.layer("door", pen(0.25, [0, 0, 200]));
    let words_layer = drawing.layer("words", pen(0.25, [0, 0, 0]));
    let mut ring = |layer, corners: &[(f64, f64)]| {
        let ring = Polyline::ring(corners.iter().map(|p| on_paper(*p)));
        drawing.draw(layer, Shape::Polyline(ring));
    };
    ring(wall, &WALL);
    WINDOWS.iter().for_each(|x| ring(glass, &window(*x)));
    ring(door, &DOOR);
    let say = |drawing: &mut Drawing, content: &str, y: f64| {
        let (height, angle, mirrored, bold) = (0.2, 0.0, false, false);
        let (at, across, up) = (Point::new(2.0, y), Across::Left, Up::Baseline);
        let content = content.to_owned();
        let text = Text { at, height, angle, mirrored, content, across, up, bold };
        drawing.draw(words_layer, Shape::Text(text));
    };
    say(&mut drawing, title, 2.0);
    say(&mut drawing, "1/4\" = 1'-0\"", 1.6);
    more.iter().enumerate().for_each(|(i, words)| say(&mut drawing, words, 1.2 - 0.3 * i as f64));
    // Lines enough for a drawing: ground, off the wall and short.
    for i in 0..60 {
        let x = 0.5 + f64::from(i) * 0.02;
        let line = Polyline::line(Point::new(x, 0.5), Point::new(x + 0.01, 0.6));
        drawing.draw(glass, Shape::Polyline(line));
    }
    let (name, description) = ("sheet".to_owned(), String::new());
    Sheet {
        name,
        title: title.to_owned(),
        description,
        width: 11.0,
        height: 8.5,
        full_size: false,
        drawing,
    }
}

fn pdf_of(sheets: &[Sheet]) -> Vec<u8> {
    let svgs: Vec<String> = sheets.iter().map(svg::document).collect();
    pdf::document(sheets, &svgs, "set", "").unwrap()
}

/// Pens are named in place of layers; 25 ft of wall are 450 points of paper, from 144, 216.
pub(crate) fn job() -> Job {
    let text = "[drawing]\nknown = \"144,216 594,216 = 25'-0\\\"\"\naccept = [\"opening-outside\"]\n\
                [layers]\nwall = [\"stroke 1.42 pt black\"]\nwindow = [\"stroke 0.71 pt black\"]\n\
                door = [\"stroke 0.71 pt #0000c8\"]\n[seams]\neffort = \"brief\"\n";
    bare_corners(file::parse(text, "job").unwrap())
}

/// The wall and its openings on a page by hand, at 18 points to the foot, with dimensions over it: from
/// where to where, inches of the house, and what they say.
fn dimensioned(dimensions: &[(f64, f64, &str)]) -> Vec<u8> {
    let at = |x: f64, y: f64| format!("{} {}", 144.0 + 1.5 * x, 216.0 + 1.5 * y);
    let mut content = String::new();
    let mut ring = |pen: &str, corners: &[(f64, f64)]| {
        content += &format!("{pen} RG\n");
        for (i, (x, y)) in corners.iter().enumerate() {
            content += &format!("{} {}\n", at(*x, *y), if i == 0 { "m" } else { "l" });
        }
        content += "s\n";
    };
    ring("1.42 w 0 0 0", &WALL);
    WINDOWS.iter().for_each(|x| ring("0.71 w 0 0 0", &window(*x)));
    ring("0.71 w 0 0 0.784", &DOOR);
    content += "0.3 w 0 0 0 RG\n";
    for (i, (from, to, words)) in dimensions.iter().enumerate() {
        let y = 110.0 + 12.0 * i as f64;
        content += &format!("{} m {} l S\n", at(*from, y), at(*to, y));
        // Words of 6 points over the middle of the line; about 3 points a letter.
        let left = f64::midpoint(*from, *to) - words.len() as f64;
        content += &format!("BT /F 6 Tf {} Td ({words}) Tj ET\n", at(left, y + 2.0));
    }
    content += "BT /F 12 Tf 144 150 Td (FRONT ELEVATION) Tj ET\n";
    for i in 0..60 {
        content += &format!("{i} 10 m {i} 20 l S\n");
    }
    by_hand(&[
        "<< /Type /Catalog /Pages 2 0 R >>".to_owned(),
        "<< /Type /Pages /Kids [3 0 R] /Count 1 >>".to_owned(),
        "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 792 612] /Contents 4 0 R /Resources << /Font \
         << /F 5 0 R >> >> >>"
            .to_owned(),
        format!("<< /Length {} >>\nstream\n{content}\nendstream", content.len()),
        "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>".to_owned(),
    ])
}

/// A page by hand with a line that is written as dashed, one that is drawn dash by dash, and courses between
/// windows.
fn with_dashes() -> Vec<u8> {
    let mut content = String::from("0.5 w 0 0 0 RG\n[6 2] 0 d 100 300 m 400 300 l S\n[] 0 d\n");
    // 20 dashes of 6 and gaps of 2: 158 points.
    for i in 0..20 {
        content += &format!("{} 200 m {} 200 l S\n", 100 + 8 * i, 106 + 8 * i);
    }
    for (i, y) in (0..10).flat_map(|i| (0..8).map(move |k| (i, 40 + 6 * k))) {
        content += &format!("{} {y} m {} {y} l S\n", 50 + 30 * i, 68 + 30 * i);
    }
    by_hand(&[
        "<< /Type /Catalog /Pages 2 0 R >>".to_owned(),
        "<< /Type /Pages /Kids [3 0 R] /Count 1 >>".to_owned(),
        "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 792 612] /Contents 4 0 R >>".to_owned(),
        format!("<< /Length {} >>\nstream\n{content}\nendstream", content.len()),
    ])
}

#[test]
fn dashes_are_joined_to_their_line_and_lie_by_themselves() {
    let mut findings = Findings::default();
    let drawing = read::drawing(&with_dashes(), "x", &Limits::default(), &mut findings).unwrap();
    let on = |name: &str| -> Vec<f64> {
        let mine = drawing.items.iter().filter(|i| drawing.layers[i.layer].name == name);
        mine.map(|i| match &i.shape {
            Shape::Polyline(p) => (p.vertices[1].at - p.vertices[0].at).hypot(),
            other => panic!("{other:?}"),
        })
        .collect()
    };
    assert_eq!(on("stroke 0.5 pt black dashed"), [300.0, 158.0]);
    assert_eq!(on("stroke 0.5 pt black"), [18.0; 80]);
}

/// Dimensions of the whole wall, of a window and of the place between two, and one that is wrong.
const DIMENSIONS: [(f64, f64, &str); 4] = [
    (0.0, 300.0, "25'-0\""),
    (40.0, 76.0, "3'-0\""),
    (76.0, 130.0, "4'-6\""),
    (130.0, 166.0, "5'-0\""),
];

/// One view of a page by hand: its lower left corner, points to the inch of the house, its title, what is
/// written under that, and dimensions.
struct Drawn<'a>((f64, f64), f64, &'a str, &'a str, &'a [(f64, f64, &'a str)]);

/// A page by hand with views, each the same wall with its windows and door.
fn views(all: &[Drawn]) -> Vec<u8> {
    let mut content = String::new();
    for Drawn((x0, y0), k, title, written, dimensions) in all {
        let at = |x: f64, y: f64| format!("{} {}", x0 + k * x, y0 + k * y);
        let mut ring = |pen: &str, corners: &[(f64, f64)]| {
            content += &format!("{pen} RG\n");
            for (i, (x, y)) in corners.iter().enumerate() {
                content += &format!("{} {}\n", at(*x, *y), if i == 0 { "m" } else { "l" });
            }
            content += "s\n";
        };
        ring("1.42 w 0 0 0", &WALL);
        WINDOWS.iter().for_each(|x| ring("0.71 w 0 0 0", &window(*x)));
        ring("0.71 w 0 0 0.784", &DOOR);
        content += "0.3 w 0 0 0 RG\n";
        for (i, (from, to, words)) in dimensions.iter().enumerate() {
            let y = 96.0 + (14.0 + 18.0 * i as f64) / k;
            content += &format!("{} m {} l S\n", at(*from, y), at(*to, y));
            let left = f64::midpoint(*from, *to) - 1.5 * words.len() as f64 / k;
            content += &format!("BT /F 6 Tf {} Td ({words}) Tj ET\n", at(left, y + 3.0 / k));
        }
        let below = |points: f64| at(0.0, -points / k);
        content += &format!("BT /F 12 Tf {} Td ({title}) Tj ET\n", below(40.0));
        content += &format!("BT /F 8 Tf {} Td ({written}) Tj ET\n", below(54.0));
    }
    for i in 0..60 {
        content += &format!("{i} 10 m {i} 20 l S\n");
    }
    by_hand(&[
        "<< /Type /Catalog /Pages 2 0 R >>".to_owned(),
        "<< /Type /Pages /Kids [3 0 R] /Count 1 >>".to_owned(),
        "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 792 1000] /Contents 4 0 R /Resources << /Font \
         << /F 5 0 R >> >> >>"
            .to_owned(),
        format!("<< /Length {} >>\nstream\n{content}\nendstream", content.len()),
        "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>".to_owned(),
    ])
}

/// The whole wall, a window, and the place between two.
const THREE: [(f64, f64, &str); 3] =
    [(0.0, 300.0, "25'-0\""), (40.0, 76.0, "3'-0\""), (76.0, 130.0, "4'-6\"")];
/// Where the two views stand on their page.
const PLACES: [(f64, f64); 2] = [(144.0, 200.0), (144.0, 700.0)];

/// A page with a view that nothing gives a scale, beside one of two.
pub(crate) fn of_unknown_scale() -> Vec<u8> {
    let (quarter, eighth) = ("1/4\" = 1'-0\"", "1/8\" = 1'-0\"");
    views(&[
        Drawn(PLACES[0], 1.5, "FRONT ELEVATION", quarter, &THREE),
        Drawn(PLACES[1], 0.75, "REAR ELEVATION", "AS NOTED", &[]),
        Drawn((600.0, 200.0), 0.375, "PLAN", eighth, &[]),
    ])
}

/// A page with a view at half the scale of the other.
pub(crate) fn of_half_scale() -> Vec<u8> {
    views(&[
        Drawn(PLACES[0], 1.5, "FRONT ELEVATION", "", &THREE),
        Drawn(PLACES[1], 0.75, "REAR ELEVATION", "", &THREE),
    ])
}

#[test]
fn views_of_two_scales_are_each_laid_out_at_its_own() {
    // Points to the inch of paper by those to the inch of the house: 1:48 and 1:96, printed at 80 percent.
    let net = (300.0 * 96.0 - 2.0 * 36.0 * 48.0 - 36.0 * 80.0) / 144.0;
    let both = |bytes: &[u8], job: &Job| {
        let laid = lay_set(bytes, job);
        let areas: Vec<(String, f64)> = laid
            .layout
            .elevations
            .iter()
            .map(|e| (e.name.to_string(), e.walls.iter().map(|w| w.net_area).sum()))
            .collect();
        let said = |name: &str| areas.iter().any(|a| a.0.contains(name));
        assert!(areas.len() == 2 && said("FRONT") && said("REAR"), "{areas:?}");
        assert!(areas.iter().all(|a| (a.1 - net).abs() < 0.004 * net), "{areas:?} for {net}");
        // The overlay lies on the view as it is drawn: points to the inch of the house.
        laid.layout.elevations.iter().map(|e| e.to_source[0]).collect::<Vec<f64>>()
    };
    let near = |found: &[f64], wanted: [f64; 2]| {
        let mut found = found.to_vec();
        found.sort_by(f64::total_cmp);
        assert!(found.iter().zip(wanted).all(|(f, w)| (f - w).abs() < 0.01 * w), "{found:?}");
    };
    let mut plain = job();
    plain.drawing.known = None;
    near(&both(&of_half_scale(), &plain), [0.75, 1.5]);
    // By what is written, where the page is printed at 80 percent and one length is known.
    let (quarter, eighth) = ("1/4\" = 1'-0\"", "1/8\" = 1'-0\"");
    let printed = views(&[
        Drawn(PLACES[0], 1.2, "FRONT ELEVATION", quarter, &[]),
        Drawn(PLACES[1], 0.6, "REAR ELEVATION", eighth, &[]),
    ]);
    let mut known = plain.clone();
    known.drawing.known = Some("144,200 504,200 = 25'-0\"".to_owned());
    near(&both(&printed, &known), [0.6, 1.2]);
    assert!(told(&printed, &known).contains(&"view-scaled"));
    // By a distance that the job gives in the other.
    let bare = views(&[
        Drawn(PLACES[0], 1.2, "FRONT ELEVATION", "", &[]),
        Drawn(PLACES[1], 0.6, "REAR ELEVATION", "", &[]),
    ]);
    let text =
        "[[elevation]]\nname = \"REAR ELEVATION\"\nknown = \"144,700 324,700 = 25'-0\\\"\"\n";
    let mut given = known.clone();
    given.elevation = file::parse(text, "job").unwrap().elevation;
    near(&both(&bare, &given), [0.6, 1.2]);
}

#[test]
fn a_view_of_no_known_scale_on_a_page_of_several_is_refused() {
    let mut plain = job();
    plain.drawing.known = None;
    let found = told(&of_unknown_scale(), &plain);
    assert!(found.contains(&"view-scale-unknown"), "{found:?}");
    let text = "[[elevation]]\nname = \"REAR ELEVATION\"\nskip = true\n";
    plain.elevation = file::parse(text, "job").unwrap().elevation;
    assert!(!told(&of_unknown_scale(), &plain).contains(&"view-scale-unknown"));
}

/// A page that states two scales.
pub(crate) fn of_two_scales() -> Vec<u8> {
    pdf_of(&[printed_with("FRONT ELEVATION", &["1/8\" = 1'-0\""])])
}

/// One page, for tests of what is told of it.
pub(crate) fn one_page() -> Vec<u8> {
    pdf_of(&[printed("FRONT ELEVATION")])
}

/// A plan and two elevations.
pub(crate) fn three_pages() -> Vec<u8> {
    pdf_of(&[printed("FLOOR PLAN"), printed("REAR ELEVATION"), printed("LEFT ELEVATION")])
}

/// A page without lines.
pub(crate) fn without_lines() -> Vec<u8> {
    let mut empty = printed("FRONT ELEVATION");
    empty.drawing = Drawing::default();
    pdf_of(&[empty])
}

/// A page by hand, with lines and a letter of a font that draws it and gives it no name that says which.
pub(crate) fn with_mute_letters() -> Vec<u8> {
    let mut content = String::from("BT /F 12 Tf 100 100 Td (a) Tj ET\n");
    for i in 0..60 {
        content += &format!("{i} 10 m {i} 20 l S\n");
    }
    let letter = "500 0 0 0 500 500 d1 0 0 500 500 re f";
    let stream = |dict: &str, data: &str| {
        format!("<< {dict} /Length {} >>\nstream\n{data}\nendstream", data.len())
    };
    let objects = [
        "<< /Type /Catalog /Pages 2 0 R >>".to_owned(),
        "<< /Type /Pages /Kids [3 0 R] /Count 1 >>".to_owned(),
        "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents 4 0 R \
         /Resources << /Font << /F 5 0 R >> >> >>"
            .to_owned(),
        stream("", &content),
        "<< /Type /Font /Subtype /Type3 /FontBBox [0 0 500 500] /FontMatrix [0.001 0 0 0.001 0 0] \
         /CharProcs << /one 6 0 R >> /Encoding << /Type /Encoding /Differences [97 /one] >> \
         /FirstChar 97 /LastChar 97 /Widths [500] /Resources << >> >>"
            .replace("/one", "/qqxx"),
        stream("", letter),
    ];
    by_hand(&objects)
}

/// A PDF of objects by their numbers from 1, the first its root, with a table of them as text.
pub(crate) fn by_hand(objects: &[String]) -> Vec<u8> {
    let mut out = String::from("%PDF-1.4\n");
    let mut places = Vec::new();
    for (i, object) in objects.iter().enumerate() {
        places.push(out.len());
        out += &format!("{} 0 obj\n{object}\nendobj\n", i + 1);
    }
    let table = out.len();
    out += &format!("xref\n0 {}\n0000000000 65535 f \n", objects.len() + 1);
    places.iter().for_each(|at| out += &format!("{at:010} 00000 n \n"));
    out += &format!(
        "trailer\n<< /Size {} /Root 1 0 R >>\nstartxref\n{table}\n%%EOF\n",
        objects.len() + 1
    );
    out.into_bytes()
}

fn code(bytes: &[u8], job: &Job) -> &'static str {
    let refusal = pipeline::reading(bytes, "x.pdf", job, &mut Findings::default()).unwrap_err();
    refusal.0.code().word()
}

#[test]
fn a_print_is_laid_out_as_the_drawing_it_was_made_of() {
    let print = lay_set(&one_page(), &job());
    let (a, b) = (window(WINDOWS[0]), window(WINDOWS[1]));
    let drawn = dxf(&[
        ("A-WALL-OTLN", &WALL[..]),
        ("A-GLAZ", &a[..]),
        ("A-GLAZ", &b[..]),
        ("A-DOOR", &DOOR[..]),
    ]);
    let of_dxf = lay(drawn.as_bytes(), &crate::support::inches());
    let wall = &print.layout.elevations[0].walls[0];
    assert_eq!(print.layout.elevations[0].name, "FRONT ELEVATION");
    // 25 ft by 8 ft less two windows of 36 by 48 and a door of 36 by 80.
    let net = (300.0 * 96.0 - 2.0 * 36.0 * 48.0 - 36.0 * 80.0) / 144.0;
    assert!((wall.net_area - net).abs() < 0.002 * net, "{} for {net}", wall.net_area);
    assert_eq!(wall.openings.len(), 3);
    assert_eq!(print.layout.panels.len(), of_dxf.panels.len());
}

#[test]
fn strokes_lie_by_their_pens_and_letters_make_words() {
    let bytes = one_page();
    let mut findings = Findings::default();
    let drawing = read::drawing(&bytes, "x", &Limits::default(), &mut findings).unwrap();
    let layers: Vec<&str> = drawing.layers.iter().map(|l| l.name.as_str()).collect();
    for pen in ["stroke 1.42 pt black", "stroke 0.71 pt black", "stroke 0.71 pt #0000c8"] {
        assert!(layers.contains(&pen), "{pen} is not among {layers:?}");
    }
    let said: Vec<&Text> = drawing
        .items
        .iter()
        .filter_map(|i| match &i.shape {
            Shape::Text(t) => Some(t),
            _ => None,
        })
        .collect();
    let title = said.iter().find(|t| t.content == "FRONT ELEVATION").unwrap();
    // It stands where it was drawn, in points: 2 in from both edges.
    assert!((title.at.x - 144.0).abs() < 2.0 && (title.at.y - 144.0).abs() < 1.0, "{title:?}");
    assert!(said.iter().any(|t| t.content == "1/4\" = 1'-0\""));
}

#[test]
fn without_a_known_length_the_scale_is_asked_for() {
    let bytes = one_page();
    let mut plain = job();
    plain.drawing.known = None;
    assert_eq!(code(&bytes, &plain), "scale-unknown");
}

#[test]
fn pages_with_elevations_are_taken_and_others_told() {
    let bytes = three_pages();
    let read = |pages: &[usize]| {
        let mut findings = Findings::default();
        let limits = Limits { pages: pages.to_vec(), ..Limits::default() };
        let drawing = read::drawing(&bytes, "x", &limits, &mut findings);
        (drawing, findings.all().iter().map(|f| f.code().word()).collect::<Vec<_>>())
    };
    let titles = |d: &Drawing| -> Vec<String> {
        let text = |s: &Shape| match s {
            Shape::Text(t) if !t.content.contains('=') => Some(t.content.clone()),
            _ => None,
        };
        d.items.iter().filter_map(|i| text(&i.shape)).collect()
    };
    let (drawing, told) = read(&[]);
    assert_eq!(titles(&drawing.unwrap()), ["REAR ELEVATION", "LEFT ELEVATION"]);
    assert_eq!(told, ["pdf-pages-read"]);
    assert_eq!(titles(&read(&[3]).0.unwrap()), ["LEFT ELEVATION"]);
    assert_eq!(read(&[4]).0.unwrap_err().0.code().word(), "pdf-pages");
}

#[test]
fn what_is_no_pdf_that_can_be_measured_is_named() {
    let whole = one_page();
    assert_eq!(code(b"%PDF-1.7 and no more", &job()), "pdf-unreadable");
    assert_eq!(code(&without_lines(), &job()), "pdf-pages");
    // Cut short: the list of its parts at the end is gone. What can be found again is read, else it is refused.
    let cut = &whole[..whole.len() / 2];
    let end = pipeline::reading(cut, "x.pdf", &job(), &mut Findings::default());
    assert!(end.is_err());
}

#[test]
fn two_hundred_mutants_of_a_print_end_in_a_drawing_or_a_refusal() {
    let whole = one_page();
    let (read, refused) = crate::dwgcase::mutants::run(&whole, 0..200);
    assert_eq!(read + refused, 200);
    assert!(read > 0 && refused > 0, "{read} read, {refused} refused");
}

/// Its content is not packed: bytes that change are those of strokes, words, dictionaries and tables.
pub(crate) fn unpacked() -> Vec<u8> {
    dimensioned(&DIMENSIONS)
}

#[test]
fn two_hundred_mutants_of_unpacked_content_end_in_a_drawing_or_a_refusal() {
    let (read, refused) = crate::dwgcase::mutants::run(&unpacked(), 0..200);
    assert_eq!(read + refused, 200);
    assert!(read > 50 && refused > 0, "{read} read, {refused} refused");
}

/// Codes of what is found in reading.
fn told(bytes: &[u8], job: &Job) -> Vec<&'static str> {
    let mut findings = Findings::default();
    let _ = pipeline::reading(bytes, "x.pdf", job, &mut findings);
    findings.all().iter().map(|f| f.code().word()).collect()
}

#[test]
fn dimensions_that_agree_set_the_scale_of_a_page() {
    let mut plain = job();
    plain.drawing.known = None;
    let three = dimensioned(&DIMENSIONS);
    let print = lay_set(&three, &plain);
    let net = (300.0 * 96.0 - 2.0 * 36.0 * 48.0 - 36.0 * 80.0) / 144.0;
    let wall = &print.layout.elevations[0].walls[0];
    assert!((wall.net_area - net).abs() < 0.002 * net, "{} for {net}", wall.net_area);
    assert!(told(&three, &plain).contains(&"scale-of-paper"));
    // Two are not enough, and a written scale never is.
    let two = dimensioned(&DIMENSIONS[..2]);
    assert_eq!(code(&two, &plain), "scale-unknown");
}

#[test]
fn a_written_scale_that_the_page_is_not_printed_at_is_a_warning() {
    let severity = |known: &str| {
        let mut job = job();
        job.drawing.known = Some(known.to_owned());
        let mut findings = Findings::default();
        let _ = pipeline::reading(&one_page(), "x.pdf", &job, &mut findings);
        let found = findings.all().iter().find(|f| f.code().word() == "scale-of-paper").unwrap();
        found.severity()
    };
    use lapwright::finding::Severity;
    // 450 points are 25 ft at 1/4 in to the foot; at half of that the sheet says 200 percent.
    assert_eq!(severity("144,216 594,216 = 25'-0\""), Severity::Info);
    assert_eq!(severity("144,216 594,216 = 50'-0\""), Severity::Warning);
}

#[test]
fn views_of_two_scales_on_a_page_are_told() {
    assert!(told(&of_two_scales(), &job()).contains(&"scales-on-page"));
    assert!(!told(&one_page(), &job()).contains(&"scales-on-page"));
}
