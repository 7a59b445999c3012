//! Seeded faults of the field and its sides, of boards, of what stands on the wall's face, of zones and
//! of a hanging first course; and that no rule of the checker is without a fault that breaks it.

use std::collections::BTreeSet;

use lapwright::job::{WaitingLimit, file as job_file};
use lapwright::layout::Layout;
use lapwright::layout::at_hand::{AtHand, BuiltSoFar, FactoryEnd};
use lapwright::layout::course::LaidRun;
use lapwright::layout::kept::{Kept, KeptPiece};
use lapwright::layout::piece::{EndCut, Panel, Piece};
use lapwright::layout::rule::Rule;
use lapwright::layout::wall::{LaidEdge, LaidWall};
use lapwright::model::half::Half;
use lapwright::model::house::EdgeKind;
use lapwright::model::receiver::{BareBy, Receiver};
use lapwright::model::seam::{Dual, MixedProof};
use lapwright::model::trim::{TrimEnd, TrimKind, TrimPiece};
use lapwright::model::waiting::OffcutReach;

use crate::faults::{self, Break, each_is_caught};
use crate::faults_shaped::{SHAPED, shaped};
use crate::fillers::{NARROW, near_windows};
use crate::held::{HELD, gable};
use crate::hems::{HEMS, on_lines};
use crate::seams_at_openings::{COUNTS, row_of_windows};
use crate::support::{dxf, laid, lay, rect, root};
use crate::{crumbs, pattern_prices};

fn wall(l: &mut Layout) -> &mut LaidWall {
    &mut l.elevations[0].walls[0]
}

/// A wall with a part too near to grade.
fn bare(l: &mut Layout) -> &mut LaidWall {
    let near = |w: &&mut LaidWall| w.bare.first().is_some_and(|b| b.by == BareBy::NearGrade);
    l.elevations.iter_mut().flat_map(|e| &mut e.walls).find(near).unwrap()
}

fn edge(l: &mut Layout, keep: impl Fn(&LaidEdge) -> bool) -> &mut LaidEdge {
    let all = l.elevations.iter_mut().flat_map(|e| &mut e.walls).flat_map(|w| &mut w.edges);
    all.into_iter().find(|e| keep(e)).unwrap()
}

fn run(l: &mut Layout, keep: impl Fn(&LaidRun) -> bool) -> &mut LaidRun {
    let walls = l.elevations.iter_mut().flat_map(|e| &mut e.walls);
    let mut runs = walls.flat_map(|w| &mut w.courses).flat_map(|c| &mut c.runs);
    runs.find(|r| keep(r)).unwrap()
}

/// Holds the first piece as it is, and then the change.
fn held(l: &mut Layout, change: impl Fn(&mut KeptPiece)) {
    let w = &l.elevations[0].walls[0];
    let (c, p) = (&w.courses[0], &w.courses[0].runs[0].pieces[0]);
    let mut piece = KeptPiece {
        mark: p.mark.clone(),
        wall: w.id.clone(),
        panel: p.panel.clone(),
        cut: [p.start, p.end],
        at_hand: None,
        x: [p.x0, p.x1],
        bottom: c.bottom,
    };
    change(&mut piece);
    l.laid.kept = Some(Kept { pieces: vec![piece], panels: 1, ..Kept::default() });
}

/// The first panel is an offcut that lies on the site, the others are to be ordered; and then the change.
fn on_site(l: &mut Layout, change: impl Fn(&mut Panel, &mut BuiltSoFar)) {
    let stock = vec![AtHand { length: l.panels[0].stock, count: 1, end: FactoryEnd::None }];
    let more = l.panels.len() - 1;
    let mut built = BuiltSoFar {
        more,
        order: more,
        offcuts_used: 1,
        stock: Some(stock),
        ..BuiltSoFar::default()
    };
    let panel = &mut l.laid.panels[0];
    panel.at_hand = Some([0.0, panel.stock]);
    change(panel, &mut built);
    l.laid.kept = Some(Kept { built: Some(built), ..Kept::default() });
}

fn gone(l: &mut Layout, kind: TrimKind) {
    l.trims.retain(|t| t.kind != kind);
}

/// Faults of the sample house.
const HOUSE: [(&str, Rule, Break); 32] = [
    ("a field over the wall's side", Rule::FieldExtent, |l| wall(l).field[0][0][0] -= 5.0),
    ("an opening that siding goes over", Rule::FieldExtent, |l| {
        let w = l.elevations.iter_mut().flat_map(|e| &mut e.walls);
        let w = w.into_iter().find(|w| !w.openings.is_empty()).unwrap();
        w.openings[0].outline.iter_mut().for_each(|p| p[0] += 20.0);
    }),
    ("a field that ends short of the wall", Rule::FieldExtent, |l| {
        let f = &mut wall(l).field[0];
        let top = f.iter().map(|p| p[1]).fold(f64::MIN, f64::max);
        f.iter_mut().filter(|p| p[1] == top).for_each(|p| p[1] -= 2.0);
    }),
    ("a wall without a piece", Rule::WallCovered, |l| wall(l).courses.clear()),
    ("a wall without its lower half of courses", Rule::WallCovered, |l| {
        let w = &mut l.elevations[1].walls[0];
        let laid = w.courses.len();
        w.courses.drain(..laid / 2);
    }),
    ("stone that nothing tells of", Rule::WallCovered, |l| {
        let walls = l.elevations.iter_mut().flat_map(|e| &mut e.walls);
        walls.into_iter().find(|w| !w.hidden.is_empty()).unwrap().hidden.clear();
    }),
    ("a field that leaves a strip out, and its pieces with it", Rule::WallCovered, |l| {
        let w = &mut l.elevations[1].walls[0];
        w.field.clear();
        w.courses.remove(4);
    }),
    ("net area with its bare wall", Rule::WallCovered, |l| {
        let w = bare(l);
        w.net_area += w.bare_area();
    }),
    ("bare wall that nothing tells of", Rule::BareWall, |l| bare(l).bare.clear()),
    ("wall told as bare that is sided", Rule::BareWall, |l| {
        let b = &mut bare(l).bare[0];
        b.outline.iter_mut().flatten().for_each(|p| p[1] += 24.0);
    }),
    ("bare wall told larger than it is", Rule::BareWall, |l| bare(l).bare[0].area += 10.0),
    ("a roof blamed for what grade takes", Rule::BareWall, |l| {
        bare(l).bare[0].by = BareBy::OverRoof
    }),
    ("a takeoff that measures no bare wall", Rule::BareWall, |l| {
        l.takeoff.retain(|t| t.id != "bare-wall")
    }),
    ("a side without a name", Rule::SidesAllRound, |l| {
        wall(l).edges.remove(1);
    }),
    ("a side named twice", Rule::SidesAllRound, |l| {
        let again = wall(l).edges[0].clone();
        wall(l).edges.push(again);
    }),
    ("an eave named a sill", Rule::SideNames, |l| {
        edge(l, |e| e.kind == EdgeKind::Eave).kind = EdgeKind::Sill
    }),
    ("a corner named an abutment", Rule::SideNames, |l| {
        edge(l, |e| e.kind == EdgeKind::OutsideCorner).kind = EdgeKind::Abutment
    }),
    ("a jamb of no opening", Rule::SideNames, |l| {
        edge(l, |e| e.kind == EdgeKind::Jamb).opening = None
    }),
    ("a rake told at another pitch", Rule::SideNames, |l| {
        edge(l, |e| e.kind == EdgeKind::Rake).pitch = Some(2.0)
    }),
    ("a head that a starter takes", Rule::SideNames, |l| {
        edge(l, |e| e.kind == EdgeKind::Head).receiver = Receiver::Starter
    }),
    ("a run that ends in the wrong trim", Rule::RunEnds, |l| {
        run(l, |r| r.ends[0].receiver == Receiver::OutsidePost).ends[0].receiver =
            Receiver::InsidePost
    }),
    ("siding that runs to the drawn corner", Rule::CornerSetBacks, |l| {
        let e = edge(l, |e| e.kind == EdgeKind::OutsideCorner && e.to[1] < e.from[1]);
        (e.from[0], e.to[0]) = (e.from[0] - 2.0, e.to[0] - 2.0);
    }),
    ("a post told to stand farther out", Rule::CornerSetBacks, |l| {
        l.job.product.outside_post_set_back = Some(2.5)
    }),
    ("a piece that ends behind a post", Rule::CornerSetBacks, |l| {
        let r = run(l, |r| r.ends[0].receiver == Receiver::OutsidePost);
        let (x0, p) = (r.x0, &mut r.pieces[0]);
        p.outline.iter_mut().filter(|q| q[0] < x0 + 1.0).for_each(|q| q[0] -= 1.0);
    }),
    ("a starter that runs to the drawn corner", Rule::CornerSetBacks, |l| {
        let x = edge(l, |e| e.kind == EdgeKind::OutsideCorner && e.to[1] < e.from[1]).from[0];
        let on = |t: &&mut TrimPiece| t.kind == TrimKind::Starter && (t.from[0] - x).abs() < 1.0;
        l.trims.iter_mut().find(on).unwrap().from[0] = x - 2.0;
    }),
    ("a channel under the soffit that runs behind the post", Rule::CornerSetBacks, |l| {
        let x = edge(l, |e| e.kind == EdgeKind::OutsideCorner && e.to[1] > e.from[1]).from[0];
        let ends = |t: &&mut TrimPiece| {
            t.kind == TrimKind::FinishTrim && (t.from[0].max(t.to[0]) - x).abs() < 1.0
        };
        let t = l.trims.iter_mut().find(ends).unwrap();
        let end = if t.from[0] > t.to[0] { &mut t.from } else { &mut t.to };
        end[0] = x + 2.0;
    }),
    ("two runs of one name", Rule::RunEnds, |l| {
        let name = run(l, |_| true).id.clone();
        run(l, |r| r.id != name).id = name.clone();
    }),
    ("a head channel without its tabs", Rule::OpeningDrainage, |l| {
        let t = l.trims.iter_mut().find(|t| t.kind == TrimKind::HeadChannel).unwrap();
        t.ends = [TrimEnd::Miter(45.0), TrimEnd::Miter(45.0)];
    }),
    ("a jamb that runs behind the sill's channel", Rule::OpeningDrainage, |l| {
        let tabbed = |e: &TrimEnd| matches!(e, TrimEnd::MiterTab { .. });
        let mut all = l.trims.iter_mut();
        let t = all.find(|t| t.kind == TrimKind::JambChannel && tabbed(&t.ends[0])).unwrap();
        t.ends[0] = TrimEnd::Miter(45.0);
    }),
    ("heads without drip caps", Rule::OpeningDrainage, |l| gone(l, TrimKind::DripCap)),
    ("a channel told longer than its place", Rule::TrimLengths, |l| {
        let mut all = l.trims.iter_mut();
        all.find(|t| t.kind == TrimKind::WallChannel || t.kind == TrimKind::Starter)
            .unwrap()
            .length += 2.0;
    }),
    ("a mounting block under a seam", Rule::SeamsAtFixtures, |l| {
        let walls = l.elevations.iter_mut().flat_map(|e| &mut e.walls);
        let fits = |w: &LaidWall| w.obstacles.iter().any(|o| o.mounting_block);
        let w = walls.into_iter().find(|w| fits(w) && seamed(w).is_some()).unwrap();
        let (x, y) = seamed(w).unwrap();
        let o = w.obstacles.iter_mut().find(|o| o.mounting_block).unwrap();
        o.outline = ring(x - 3.0, y + 1.0, x + 3.0, y + 7.0);
    }),
];

/// A seam of a wall, and the butt line it stands on.
fn seamed(w: &LaidWall) -> Option<(f64, f64)> {
    let runs = w.courses.iter().flat_map(|c| c.runs.iter().map(move |r| (c, r)));
    runs.filter(|(_, r)| r.fixed.is_empty()).find_map(|(c, r)| Some((*r.seams.first()?, c.bottom)))
}

fn ring(x0: f64, y0: f64, x1: f64, y1: f64) -> Vec<[f64; 2]> {
    rect(x0, y0, x1, y1).map(|(x, y)| [x, y]).to_vec()
}

/// A wall of 20 x 20 ft with a window, every board on its face, a band, a joint, and a fixture without
/// a block in the midst of a course.
fn decorated() -> Layout {
    let rings: [(&str, &[(f64, f64)]); 3] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 240.0)),
        ("A-GLAZ", &rect(100.0, 30.0, 136.0, 78.0)),
        ("A-ELEV-OBST", &rect(230.0, 98.0, 234.0, 101.0)),
    ];
    let job = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n\
        [[elevation]]\nname = \"FRONT\"\nregion = [-10.0, -10.0, 500.0, 300.0]\n\
        [trim]\ncorner_cover = 4\nfrieze = 8\nsurround = 3\ntop = \"crown\"\n\
        [[band]]\nbottom = 120\ntop = 128\n[[joint]]\nelevation = \"FRONT\"\nat = 60\n";
    lay(dxf(&rings).as_bytes(), &job_file::parse(job, "job").unwrap())
}

const FACE: [(&str, Rule, Break); 12] = [
    ("corner covers gone", Rule::FaceBoards, |l| gone(l, TrimKind::CornerCover)),
    ("siding that ends at the corner, as if there were no cover", Rule::FaceBoards, |l| {
        l.job.trim.corner_cover = 0.0
    }),
    ("a cover told wider than siding ends at", Rule::CornerSetBacks, |l| {
        l.job.trim.corner_cover = 6.0
    }),
    ("a frieze board short", Rule::FaceBoards, |l| {
        l.trims.iter_mut().find(|t| t.kind == TrimKind::Frieze).unwrap().to[0] -= 9.0
    }),
    ("a crown molding gone", Rule::FaceBoards, |l| gone(l, TrimKind::Crown)),
    ("a surround board short", Rule::FaceBoards, |l| {
        l.trims.iter_mut().find(|t| t.kind == TrimKind::Surround).unwrap().length -= 1.0
    }),
    ("the band's board gone", Rule::BandBoards, |l| gone(l, TrimKind::Band)),
    ("the band's cap gone", Rule::BandBoards, |l| {
        l.trims.retain(|t| t.kind != TrimKind::DripCap || t.opening.is_some())
    }),
    ("a run over a joint", Rule::MovementJoints, |l| run(l, |r| r.x1 < 60.0).x1 = 90.0),
    ("a joint told elsewhere", Rule::MovementJoints, |l| wall(l).joints[0] += 2.0),
    ("a fixture whose seam nothing fixes", Rule::SeamsAtFixtures, |l| {
        let w = wall(l);
        w.obstacles.iter_mut().for_each(|o| o.outline.iter_mut().for_each(|p| p[0] += 30.0));
    }),
    ("a fixture's seam not told to be fixed", Rule::SeamsAtFixtures, |l| {
        run(l, |r| !r.fixed.is_empty()).fixed.clear()
    }),
];

/// A gable with a frieze along its rakes, on a stone base that a window goes down into.
fn raked() -> Layout {
    let wall = [(0.0, 0.0), (240.0, 0.0), (240.0, 96.0), (120.0, 176.0), (0.0, 96.0)];
    let rings: [(&str, &[(f64, f64)]); 3] = [
        ("A-WALL-OTLN", &wall),
        ("A-WALL-BASE", &rect(0.0, 0.0, 240.0, 42.0)),
        ("A-GLAZ", &rect(100.0, 30.0, 136.0, 78.0)),
    ];
    let job = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n\
        [trim]\nrake_frieze = 6\ndecorative = 240\n";
    lay(dxf(&rings).as_bytes(), &job_file::parse(job, "job").unwrap())
}

const RAKED: [(&str, Rule, Break); 4] = [
    ("the rakes' boards gone", Rule::FaceBoards, |l| gone(l, TrimKind::Frieze)),
    ("a board of a rake a foot short", Rule::FaceBoards, |l| {
        let t = l.trims.iter_mut().find(|t| t.kind == TrimKind::Frieze).unwrap();
        let by = 12.0 / t.length;
        let (a, b) = (t.from, t.to);
        t.to = [b[0] - (b[0] - a[0]) * by, b[1] - (b[1] - a[1]) * by];
    }),
    ("siding at a head told as cut", Rule::OpeningFlashing, |l| {
        wall(l).openings[0].cut.push(lapwright::model::house::OpeningSide::Head)
    }),
    ("flashing under a sill that stone hides", Rule::OpeningFlashing, |l| {
        let t = l.trims.iter().find(|t| t.kind == TrimKind::HeadFlashing).unwrap().clone();
        let (mark, kind) = ("T999".to_owned(), TrimKind::SillFlashing);
        l.trims.push(lapwright::model::trim::TrimPiece { mark: mark.into(), kind, ..t });
    }),
];

/// The sample house in fiber-cement boards.
fn boards() -> Layout {
    let samples = root().join("sample-drawings");
    let text = std::fs::read_to_string(samples.join("fiber-cement.toml")).unwrap();
    let mut job = job_file::parse(&text, "job").unwrap();
    job.seams.effort = lapwright::model::seam::Effort::Brief;
    lay(&std::fs::read(samples.join("curlew-cottage.dxf")).unwrap(), &job)
}

const BOARDS: [(&str, Rule, Break); 8] = [
    ("a joint between studs", Rule::JointsOnStuds, |l| {
        run(l, |r| !r.seams.is_empty()).seams[0] += 3.0
    }),
    ("studs of another spacing", Rule::JointsOnStuds, |l| l.job.boards.stud_spacing = 19.2),
    ("a joint fixed by a fixture", Rule::JointsOnStuds, |l| {
        let r = run(l, |r| !r.seams.is_empty());
        r.fixed.push(r.seams[0]);
    }),
    ("joints wanted two studs apart", Rule::JointStagger, |l| l.job.boards.studs_apart = 9),
    ("a joint over a joint", Rule::JointStagger, |l| {
        let walls = l.elevations.iter_mut().flat_map(|e| &mut e.walls);
        let jointed = |c: &lapwright::layout::course::LaidCourse| {
            c.runs.iter().flat_map(|r| &r.seams).next().copied()
        };
        for w in walls {
            let Some(i) = (1..w.courses.len()).find(|i| {
                jointed(&w.courses[*i]).is_some() && jointed(&w.courses[*i - 1]).is_some()
            }) else {
                continue;
            };
            let x = jointed(&w.courses[i - 1]).unwrap();
            let r = w.courses[i].runs.iter_mut().find(|r| !r.seams.is_empty()).unwrap();
            r.seams[0] = x;
            return;
        }
        panic!("no two near courses have joints");
    }),
    ("a cut end told as the mill's", Rule::BoardFactoryEnds, |l| {
        let walls = l.elevations.iter_mut().flat_map(|e| &mut e.walls);
        let runs = walls.flat_map(|w| &mut w.courses).flat_map(|c| &mut c.runs);
        let p = runs.flat_map(|r| &mut r.pieces).find(|p| p.start > 1.0).unwrap();
        p.ends[0].cut = EndCut::Factory;
    }),
    ("a channel round boards", Rule::OpeningChannels, |l| {
        let t = l.trims.iter().find(|t| t.kind == TrimKind::DripCap && t.opening.is_some());
        let again = t.unwrap().clone();
        let (mark, kind) = ("T999".to_owned(), TrimKind::HeadChannel);
        l.trims.push(lapwright::model::trim::TrimPiece { mark: mark.into(), kind, ..again });
    }),
    ("an evened course beyond its limits", Rule::CourseLevels, |l| {
        let lines = &mut l.story_pole.evened;
        let last = lines.len() - 1;
        lines[last] += 3.0;
    }),
];

/// A gable under shingles over a wall of panels.
fn zoned() -> Layout {
    let wall = [(0.0, 0.0), (300.0, 0.0), (300.0, 96.0), (150.0, 192.0), (0.0, 96.0)];
    let gable = [(0.0, 96.0), (300.0, 96.0), (150.0, 192.0)];
    let job = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n\
        [[zone]]\nname = \"Gable\"\nlayers = [\"A-WALL-SHNG\"]\ncladding = \"shingle\"\n";
    let rings: [(&str, &[(f64, f64)]); 2] = [("A-WALL-OTLN", &wall), ("A-WALL-SHNG", &gable)];
    lay(dxf(&rings).as_bytes(), &job_file::parse(job, "job").unwrap())
}

const CLADDING: [(&str, Rule, Break); 3] = [
    ("a zone told too small", Rule::CladdingZones, |l| l.elevations[0].zones[0].gross_area -= 10.0),
    ("more net than gross", Rule::CladdingZones, |l| l.elevations[0].zones[0].net_area += 1.0),
    ("a panel laid on a zone", Rule::CladdingZones, |l| {
        let p = &mut run(l, |_| true).pieces[0];
        p.outline.iter_mut().for_each(|q| q[1] += 100.0);
    }),
];

/// A window whose head and sill are 2 in off the course lines of a start at the drawn bottom; the first
/// course may hang 3 in lower.
fn hung() -> Layout {
    let mut rings: Vec<(&str, &[(f64, f64)])> = Vec::new();
    let (wall, window) = (rect(0.0, 0.0, 240.0, 96.0), rect(90.0, 30.0, 130.0, 78.0));
    rings.extend([("A-WALL-OTLN", &wall[..]), ("A-GLAZ", &window[..])]);
    let grade = [(-40.0, -12.0), (280.0, -12.0)];
    rings.push(("C-TOPO-PROF", &grade));
    let job = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n\
        [courses]\nhang_below = 3\ndatum = -2\n";
    lay(dxf(&rings).as_bytes(), &job_file::parse(job, "job").unwrap())
}

const HUNG: [(&str, Rule, Break); 2] = [
    ("a first course that hangs below its wall", Rule::FieldExtent, |l| {
        wall(l).outline.iter_mut().for_each(|p| p[1] = p[1].max(0.0))
    }),
    ("a first course hung too near to grade", Rule::GradeClearance, |l| {
        l.elevations[0].grade.iter_mut().for_each(|p| p[1] += 5.0)
    }),
];

/// Four courses, the first and the last ripped from one panel; every course takes panels of two lengths.
fn stocked() -> Layout {
    let job = "[drawing]\nunit = \"inch\"\n[product]\nlength = 150\nsecond_length = 200\n\
        [courses]\ndatum = -4\n[seams]\neffort = \"brief\"\nreuse_halves = true\n";
    let wall = rect(0.0, 0.0, 340.0, 23.5);
    lay(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &job_file::parse(job, "job").unwrap())
}

fn half(l: &mut Layout, of: Half) -> &mut Piece {
    let walls = l.elevations.iter_mut().flat_map(|e| &mut e.walls);
    let runs = walls.flat_map(|w| &mut w.courses).flat_map(|c| &mut c.runs);
    runs.flat_map(|r| &mut r.pieces).find(|p| p.half == Some(of)).unwrap()
}

fn proof(l: &mut Layout) -> &mut MixedProof {
    l.bound.certificate.mixed.as_mut().unwrap()
}

const STOCKED: [(&str, Rule, Break); 7] = [
    ("a lower half ripped into the upper one", Rule::PanelHalves, |l| {
        half(l, Half::Lower).rip.as_mut().unwrap().to = 5.0
    }),
    ("one half of a panel without the other", Rule::PanelHalves, |l| {
        half(l, Half::Upper).half = None
    }),
    ("halves in use that the job does not want", Rule::PanelHalves, |l| {
        l.job.seams.reuse_halves = false
    }),
    ("panels of two lengths told too light", Rule::PanelBound, |l| proof(l).weight -= 1),
    ("a bound of two lengths raised", Rule::PanelBound, |l| proof(l).bound += 1),
    ("a second function that proves nothing", Rule::PanelBound, |l| {
        proof(l).stocks[1].function = Dual::Clipped(9000)
    }),
    ("panels of one length told as of the other", Rule::PanelBound, |l| {
        proof(l).stocks.iter_mut().for_each(|s| s.panels += 1)
    }),
];

/// Faults of the plan that a crew follows.
const PLAN: [(&str, Rule, Break); 15] = [
    ("an offcut that does not lie on the site", Rule::StockAtHand, |l| {
        on_site(l, |_, b| b.stock = Some(Vec::new()))
    }),
    ("a piece beyond the offcut it is cut from", Rule::StockAtHand, |l| {
        on_site(l, |p, _| p.at_hand = Some([0.0, 1.0]))
    }),
    ("fewer panels to order than are missing", Rule::StockAtHand, |l| {
        on_site(l, |_, b| b.order -= 1)
    }),
    ("a held piece hung elsewhere", Rule::KeptPieces, |l| held(l, |k| k.x[0] += 1.0)),
    ("a held piece cut from another panel", Rule::KeptPieces, |l| {
        held(l, |k| k.panel = "P99".into())
    }),
    ("a held piece's offcut taken for a whole panel", Rule::KeptPieces, |l| {
        held(l, |k| k.at_hand = Some([0.0, 70.0]));
    }),
    ("a held piece that hangs nowhere", Rule::KeptPieces, |l| held(l, |k| k.mark = "gone".into())),
    ("more offcuts than the job lets wait", Rule::OffcutsWaiting, |l| {
        l.job.seams.waiting = WaitingLimit::at_most(2)
    }),
    ("walls sided in another order than is planned", Rule::OffcutsWaiting, |l| l.order.reverse()),
    ("a wall left out of the order", Rule::OffcutsWaiting, |l| drop(l.order.pop())),
    ("offcuts told as fewer than wait", Rule::OffcutsWaiting, |l| {
        l.work.offcuts.at_ends[0].waiting -= 1
    }),
    ("offcuts that go to another wall", Rule::OffcutsWaiting, |l| {
        l.job.seams.offcuts = OffcutReach::Wall
    }),
    ("a piece missing in the saw list", Rule::SawLists, |l| {
        drop(l.work.walls[0].saw.batches[0].pieces.pop())
    }),
    ("a piece in the saw list of another wall", Rule::SawLists, |l| {
        let moved = l.work.walls[0].saw.batches.pop().unwrap();
        l.work.walls[1].saw.batches.push(moved);
    }),
    ("a stop set to another length", Rule::SawLists, |l| {
        l.work.walls[2].saw.batches[1].length += 1.0
    }),
];

/// A layout with the faults put into it: what each is, the rule that must catch it, and how.
type Broken = (Layout, Vec<(&'static str, Rule, Break)>);

/// Each house with its faults.
fn all() -> Vec<Broken> {
    let mut of_house = faults::FAULTS.to_vec();
    of_house.extend(faults::EDGES);
    of_house.extend(HOUSE);
    of_house.extend(PLAN);
    vec![
        (laid("curlew-cottage"), of_house),
        (decorated(), FACE.to_vec()),
        (raked(), RAKED.to_vec()),
        (boards(), BOARDS.to_vec()),
        (zoned(), CLADDING.to_vec()),
        (hung(), HUNG.to_vec()),
        (stocked(), STOCKED.to_vec()),
        (pattern_prices::priced(), pattern_prices::PRICED.to_vec()),
        (shaped(), SHAPED.to_vec()),
        (on_lines(), HEMS.to_vec()),
        (gable(), HELD.to_vec()),
        (near_windows(), NARROW.to_vec()),
        (crumbs::crumbs(), crumbs::CRUMBS.to_vec()),
        (crumbs::strips(), crumbs::STRIPS.to_vec()),
        (row_of_windows(), COUNTS.to_vec()),
    ]
}

#[test]
fn each_fault_is_caught_and_no_rule_is_without_one() {
    let (mut with_fault, mut n) = (BTreeSet::new(), 0);
    for (sound, faults) in all() {
        with_fault.extend(faults.iter().map(|f| f.1));
        n += faults.len();
        each_is_caught(&sound, &faults);
    }
    assert!(n >= 110 && Rule::ALL.len() >= 40, "{n} faults, {} rules", Rule::ALL.len());
    // Every rule there is: one without a fault that breaks it is not tested.
    let without: Vec<&Rule> = Rule::ALL.iter().filter(|r| !with_fault.contains(r)).collect();
    assert!(without.is_empty(), "no fault breaks {without:?}");
}
