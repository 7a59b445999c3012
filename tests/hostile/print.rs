//! PDFs that ask for much: sheets as large as architects print them, forms within forms, pages as wide as
//! a county.

use super::{Case, Ends, case};

/// One known distance, and the wall's pen.
const JOB: &str = "[drawing]\nknown = \"100,100 460,100 = 20'-0\\\"\"\n[layers]\nwall = [\"stroke 1.42 pt black\"]\n[seams]\neffort = \"crew\"\n";

/// Every case.
pub(super) fn cases() -> Vec<Case> {
    use Ends::{Laid, Refused};
    let pdf = |name, make, sizes, ends| Case { job: JOB, ..case(name, "pdf", make, sizes, ends) };
    let checked = |seconds, of: Case| Case { seconds: Some(seconds), verb: "check", ..of };
    let too_much = Refused(&["pdf-pages"]);
    vec![
        checked(0.5, pdf("attack: PDF of 28,000 strokes, checked", sheet, (28_000, 300), Laid)),
        checked(1.5, pdf("attack: PDF of 82,000 strokes, checked", sheet, (82_000, 300), Laid)),
        pdf("attack: PDF forms that draw forms", forms, (40, 25), too_much),
        pdf("attack: PDF page as wide as a county", wide, (1_000_000_000, 1_000_000), Laid),
        pdf(
            "attack: PDF of 3,000,000 strokes",
            sheet,
            (3_000_000, 300),
            Ends::Told(&["pdf-pages", "siding", "set-back-taken"]),
        ),
        pdf("attack: PDF dashes without end", dashes, (1_000_000, 1_000), Laid),
        pdf("attack: PDF states within states", states, (1_000_000, 1_000), Laid),
        pdf("attack: PDF clips within clips", clips, (3_000, 100), Laid),
    ]
}

/// A file of objects by their numbers from 1, the first its root.
fn by_hand(objects: &[String]) -> Vec<u8> {
    let mut out = String::from("%PDF-1.4\n");
    let mut places = Vec::new();
    for (i, object) in objects.iter().enumerate() {
        places.push(out.len());
        out += &format!("{} 0 obj\n{object}\nendobj\n", i + 1);
    }
    let table = out.len();
    out += &format!("xref\n0 {}\n0000000000 65535 f \n", objects.len() + 1);
    places.iter().for_each(|at| out += &format!("{at:010} 00000 n \n"));
    let size = objects.len() + 1;
    out += &format!("trailer\n<< /Size {size} /Root 1 0 R >>\nstartxref\n{table}\n%%EOF\n");
    out.into_bytes()
}

fn stream(dict: &str, content: &str) -> String {
    format!("<< {dict} /Length {} >>\nstream\n{content}\nendstream", content.len())
}

/// A page of that width with a wall of 20 ft by 8 ft and what else is drawn.
fn page(wide: f64, more: &str, forms: &[String]) -> Vec<u8> {
    let wall = "1.42 w 0 G 100 100 m 460 100 l 460 244 l 100 244 l s\n";
    let named: String = (0..forms.len()).map(|i| format!("/F{i} {} 0 R ", i + 5)).collect();
    let mut objects = vec![
        "<< /Type /Catalog /Pages 2 0 R >>".to_owned(),
        "<< /Type /Pages /Kids [3 0 R] /Count 1 >>".to_owned(),
        format!(
            "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 {wide} 1584] /Contents 4 0 R \
             /Resources << /XObject << {named}>> >> >>"
        ),
        stream("", &format!("{wall}{more}{}", short(60))),
    ];
    objects.extend(forms.iter().cloned());
    by_hand(&objects)
}

/// Short strokes of three pens over the page, as stone, ground and roofs are printed.
fn short(n: usize) -> String {
    let one = |i: usize| {
        let (x, y) = ((i * 7919 % 2003) as f64, 300.0 + (i * 104_729 % 1200) as f64);
        let pen = ["0.24 w 0 G", "0.24 w 0.6 G", "0.24 w 0.378 0.234 0.148 RG"][i % 3];
        let (dx, dy) = [(3.3, 0.0), (0.4, 2.9)][i % 2];
        format!("{pen} {x:.2} {y:.2} m {:.2} {:.2} l S\n", x + dx, y + dy)
    };
    (0..n).map(one).collect()
}

/// A sheet of so many strokes, some hundred of them courses.
fn sheet(n: usize) -> Vec<u8> {
    let course = |i: usize| {
        let y = 100.0 + 6.0 * i as f64;
        format!("0.24 w 0.766 G 100 {y} m 460 {y} l S\n")
    };
    let courses: String = (1..24).map(course).collect();
    page(2448.0, &(courses + &short(n)), &[])
}

/// Forms of which each draws the next one twice.
fn forms(depth: usize) -> Vec<u8> {
    let form = |i: usize| {
        let dict = format!(
            "/Type /XObject /Subtype /Form /BBox [0 0 600 600] /Resources << /XObject << /N {} 0 R >> >>",
            i + 6
        );
        stream(&dict, if i + 1 < depth { "/N Do /N Do" } else { "1 1 m 2 2 l S" })
    };
    let all: Vec<String> = (0..depth).map(form).collect();
    page(612.0, "/F0 Do\n", &all)
}

fn wide(points: usize) -> Vec<u8> {
    page(points as f64, "", &[])
}

fn dashes(n: usize) -> Vec<u8> {
    page(612.0, &"[0.0001 0.0001] 0 d 0.24 w 0 300 m 600 300 l S\n".repeat(n / 100), &[])
}

fn states(n: usize) -> Vec<u8> {
    page(612.0, &("q ".repeat(n) + "\n" + &"Q ".repeat(n) + "\n"), &[])
}

fn clips(n: usize) -> Vec<u8> {
    let clip = "q 90 90 m 600 91 l 601 600 l 91 601 l h W n\n";
    let strokes = "0.24 w 100 300 m 400 320 l S\n".repeat(200);
    page(612.0, &(clip.repeat(n) + &strokes + &"Q\n".repeat(n)), &[])
}
