//! The real house's sheets, DXF and DWG, without a job: walls as a person reads them. Square feet are those
//! of the folder's own page, measured over the hatches by ezdxf and shapely.

use lapwright::finding::{Finding, Findings, Severity, Subject, gathered};
use lapwright::geom::boolean::difference;
use lapwright::geom::polygon::Polygon;
use lapwright::geom::vocabulary::Point;
use lapwright::job::Job;
use lapwright::layout::Layout;
use lapwright::layout::wall::LaidWall;
use lapwright::pipeline;
use lapwright::units::LengthStyle;
use lapwright::write::findings::findings_text;

use crate::corpus;

/// A side as a person reads it: the first word of its name, hatched siding in square feet, planes.
type Side = (&'static str, f64, usize);

const SHEETS: [(&str, [Side; 2]); 2] = [
    ("H1_south_east", [("South", 222.2, 3), ("East", 405.3, 3)]),
    ("H2_north_west", [("North", 213.0, 3), ("West", 737.2, 2)]),
];

fn laid(file: &str) -> (Layout, Findings) {
    let bytes = std::fs::read(corpus().join("house").join(file)).unwrap();
    let mut findings = Findings::default();
    let job = Job::default();
    let sets = pipeline::layout(&bytes, file, &job, &mut findings, &mut |_| {}).unwrap();
    (sets.house.layout, findings)
}

/// Corners that stand on an elevation: one post each, however many lengths it takes.
fn posts(layout: &Layout, elevation: &str) -> usize {
    let on = |c: &&lapwright::model::corner::Corner| {
        c.sides.iter().any(|s| s.elevation.as_str() == elevation)
    };
    layout.corners.iter().filter(on).count()
}

/// Parts of a wall that bands, stone, roofs and decks leave, of a square foot and more: no opening parts a
/// field.
fn fields(w: &LaidWall) -> usize {
    let ring = |r: &[[f64; 2]]| {
        Polygon::simple(r.iter().map(|p| Point::new(p[0], p[1])).collect()).wound()
    };
    let hidden: Vec<Polygon> = w.hidden.iter().flat_map(|h| &h.outline).map(|r| ring(r)).collect();
    difference(&[ring(&w.outline)], &hidden).iter().filter(|p| p.area() >= 144.0).count()
}

#[test]
fn a_real_house_is_read_as_a_person_reads_it() {
    for (sheet, sides) in SHEETS {
        for kind in ["dxf", "dwg"] {
            let file = format!("{sheet}.{kind}");
            let (layout, findings) = laid(&file);
            assert_eq!(layout.elevations.len(), 2, "{file}");
            for (name, siding, planes) in sides {
                let e = layout.elevations.iter().find(|e| e.name.starts_with(name)).unwrap();
                let net: f64 = e.walls.iter().map(|w| w.net_area).sum();
                let said = format!("{file}, {name}: {net:.2} of {siding} sq ft");
                assert!((net - siding).abs() <= 0.01 * siding, "{said}");
                assert_eq!(e.walls.len(), planes, "{said}: planes");
                let fields: usize = e.walls.iter().map(fields).sum();
                assert!(fields <= 6, "{said}: {fields} fields");
                let posts = posts(&layout, &e.name);
                assert!(posts <= 8, "{said}: {posts} posts");
            }
            let broken: Vec<String> = layout
                .verify
                .rules
                .iter()
                .filter(|r| !r.violations.is_empty())
                .map(|r| format!("{:?} {:?}", r.rule, r.violations))
                .collect();
            assert!(broken.is_empty(), "{file}: {broken:#?}");
            assert_eq!(findings.count(Severity::Error), 0, "{file}");
            // What is about one subject is told as one finding, its kinds under it with all their places.
            let warned = findings.all().iter().chain(&layout.findings);
            let mut all: Vec<Finding> = Vec::new();
            for f in warned {
                if !all.contains(f) {
                    all.push(f.clone());
                }
            }
            let subjects: Vec<Subject> = gathered(&all).iter().map(|g| g.subject).collect();
            assert!(subjects.len() <= 12, "{file}: {subjects:?}");
            let text = findings_text(&all, LengthStyle::Feet);
            let heads: Vec<&str> = text.lines().filter(|l| !l.starts_with("   ")).collect();
            assert_eq!(heads.len(), subjects.len(), "{file}: {heads:#?}");
            // None is lost under a head.
            for f in &all {
                assert!(text.contains(f.code().word()), "{file}: {}", f.code());
            }
        }
    }
}
