//! What is said where there is nothing to side: why, by what is seen, and what to do.

use lapwright::finding::{Finding, Findings};
use lapwright::job::file as job_file;
use lapwright::pipeline;

use crate::support::{advised, rect, said};

const INCH: &str = "[drawing]\nunit = \"inch\"\n";

/// A hatch of lines at an angle, `apart` from one another, 10 ft by 8 ft with its left foot at `x`, 0.
fn hatch(layer: &str, x: f64, angle: f64, apart: f64) -> String {
    let corners: String =
        rect(x, 0.0, x + 120.0, 96.0).iter().map(|(x, y)| format!("10\n{x}\n20\n{y}\n")).collect();
    let (s, c) = angle.to_radians().sin_cos();
    format!(
        "0\nHATCH\n8\n{layer}\n10\n0\n20\n0\n30\n0\n2\nP\n70\n0\n71\n0\n91\n1\n92\n7\n72\n0\n73\n1\n93\n4\n{corners}97\n0\n75\n0\n76\n1\n52\n0\n41\n1\n77\n0\n78\n1\n53\n{angle}\n43\n0\n44\n0\n45\n{}\n46\n{}\n79\n0\n98\n0\n",
        -s * apart,
        c * apart
    )
}

fn line(layer: &str, (x0, y0): (f64, f64), (x1, y1): (f64, f64)) -> String {
    format!("0\nLINE\n8\n{layer}\n10\n{x0}\n20\n{y0}\n11\n{x1}\n21\n{y1}\n")
}

fn refused(tables: &str, entities: &str, job: &str) -> Finding {
    let text = format!("{tables}0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n");
    let job = job_file::parse(job, "job").unwrap();
    let mut findings = Findings::default();
    let read = pipeline::reading(text.as_bytes(), "d.dxf", &job, &mut findings);
    let found = *read.unwrap_err().0;
    assert_eq!(found.code().word(), "no-walls");
    found
}

/// The facts, as they are told.
fn seen(finding: &Finding) -> String {
    let all = said(finding);
    let from = all.split_once(" Seen: ").map_or("", |(_, s)| s);
    from.split_once(". Layers found:").map_or(from, |(s, _)| s).to_owned()
}

#[test]
fn upright_lines_are_counted_with_their_distance() {
    let entities: String =
        (0..24).map(|n| hatch("SIDING", f64::from(n) * 130.0, 90.0, 16.0)).collect();
    let found = refused("", &entities, INCH);
    assert_eq!(seen(&found), "24 hatches with upright lines 16 in apart on SIDING");
    assert!(advised(&found).contains("boards and battens"), "{}", advised(&found));
}

#[test]
fn level_lines_that_are_no_siding_say_why() {
    // 24 in apart no course is; on a layer of notes 4 in are left alone.
    let found = refused("", &hatch("PATT", 0.0, 0.0, 24.0), INCH);
    assert_eq!(seen(&found), "1 hatch with level lines 24 in apart on PATT, which no courses are");
    let found = refused("", &hatch("A-ROOF-PATT", 0.0, 0.0, 4.0), INCH);
    assert_eq!(
        seen(&found),
        "1 hatch with level lines 4 in apart on A-ROOF-PATT, a layer of something else"
    );
    assert!(advised(&found).contains("`wall`"));
    // What is advised works.
    let job = format!("{INCH}[layers]\nwall = [\"A-ROOF-PATT\"]\n");
    let text = format!(
        "0\nSECTION\n2\nENTITIES\n{}0\nENDSEC\n0\nEOF\n",
        hatch("A-ROOF-PATT", 0.0, 0.0, 4.0)
    );
    let job = job_file::parse(&job, "job").unwrap();
    let read = pipeline::reading(text.as_bytes(), "d.dxf", &job, &mut Findings::default());
    assert!(read.is_ok());
    let found = refused("", &hatch("BRICK", 0.0, 45.0, 4.0), INCH);
    assert_eq!(seen(&found), "1 hatch with sloped, broken or crossing lines");
}

#[test]
fn pictures_sheets_and_an_empty_model_are_named() {
    let image = "0\nIMAGE\n8\nSCAN\n10\n0\n20\n0\n";
    let found = refused("", &image.repeat(2), INCH);
    assert_eq!(seen(&found), "pictures only (2)");
    assert!(advised(&found).contains("DXF"));
    let found = refused("", "", INCH);
    assert_eq!(seen(&found), "nothing is drawn in model space");
    let sheet = "0\nLINE\n8\nX\n67\n1\n10\n0\n20\n0\n11\n9\n21\n0\n";
    assert_eq!(seen(&refused("", sheet, INCH)), "1 item on sheets, none in model space");
}

#[test]
fn layers_that_are_off_beside_one_that_is_on_are_counted() {
    let tables = "0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLAYER\n70\n1\n0\nLAYER\n2\nA-WALL-OTLN\n70\n0\n62\n-7\n0\nENDTAB\n0\nENDSEC\n";
    let entities =
        line("A-WALL-OTLN", (0.0, 0.0), (240.0, 0.0)) + &line("SITE", (0.0, -9.0), (9.0, -9.0));
    let found = refused(tables, &entities, INCH);
    assert_eq!(seen(&found), "1 layer is off or frozen, 1 item on it not read");
    assert!(advised(&found).contains("hidden_layers = true"));
}

#[test]
fn a_region_or_layer_of_the_job_that_holds_nothing_is_named() {
    let entities =
        line("WALLS", (0.0, 0.0), (240.0, 0.0)) + &line("WALLS", (240.0, 0.0), (240.0, 96.0));
    let job =
        format!("{INCH}[[elevation]]\nname = \"front\"\nregion = [5000.0, 0.0, 6000.0, 500.0]\n");
    let found = refused("", &entities, &job);
    assert_eq!(
        seen(&found),
        "0 strokes in the region of front, while strokes lie from (0, 0) to (240, 96)"
    );
    assert!(advised(&found).contains("`region`"));
    let found = refused("", &entities, &format!("{INCH}[layers]\nwall = [\"WALL-OUT\"]\n"));
    assert!(seen(&found).starts_with("nothing on WALL-OUT, which the job names as `wall`"));
}

#[test]
fn a_plan_is_named_by_its_title() {
    let entities = line("X", (0.0, 0.0), (240.0, 0.0))
        + "0\nTEXT\n8\nX\n10\n60\n20\n-30\n40\n12\n1\nFIRST FLOOR PLAN\n";
    let found = refused("", &entities, INCH);
    assert_eq!(seen(&found), "a plan, by the title FIRST FLOOR PLAN");
    assert!(advised(&found).contains("the sheet that shows the elevations"));
}
