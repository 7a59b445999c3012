//! Tight places: a short run held plumb by two receivers, where a panel can be neither slid in
//! sideways nor bowed (FACTS PR-12, common practice, no source).

use crate::geom::tol::{BESIDE, SAME};
use crate::layout::course::{LaidCourse, LaidRun};
use crate::layout::wall::{LaidEdge, LaidObstacle, LaidWall};
use crate::model::house::EdgeKind;
use crate::model::work::{TightSpot, WayIn};
use crate::units::LengthStyle;

/// A level side this near above or below a stack closes it, inches.
const CLOSES: f64 = 1.0;

/// Courses whose runs lie between the same two receivers.
struct Stack {
    x: (f64, f64),
    y: (f64, f64),
    courses: (i32, i32),
}

/// Each stack of tight runs once. `least` is the shortest piece the job allows in a seamed run: what
/// is shorter cannot be bowed in.
pub(super) fn spots(w: &LaidWall, least: f64, style: LengthStyle) -> Vec<TightSpot> {
    let mut stacks: Vec<Stack> = Vec::new();
    for k in &w.courses {
        for r in k.runs.iter().filter(|r| tight(r, least)) {
            let goes_on = |s: &&mut Stack| s.x.0 < r.x1 && r.x0 < s.x.1 && s.courses.1 == k.index;
            match stacks.iter_mut().find(goes_on) {
                Some(s) => (s.courses.1, s.y.1) = (k.index + 1, height(r, k).1),
                None => stacks.push(Stack {
                    x: (r.x0, r.x1),
                    y: height(r, k),
                    courses: (k.index + 1, k.index + 1),
                }),
            }
        }
    }
    stacks.iter().map(|s| spot(w, s, style)).collect()
}

/// From where to where up the wall a run's pieces stand.
fn height(r: &LaidRun, k: &LaidCourse) -> (f64, f64) {
    let ys = r.pieces.iter().flat_map(|p| &p.outline).map(|p| p[1]);
    let (low, high) = ys.fold((k.top, k.bottom), |(a, b), y| (a.min(y), b.max(y)));
    if low < high { (low, high) } else { (k.bottom, k.top) }
}

/// Held plumb on both sides, and too short to be bowed in.
fn tight(r: &LaidRun, least: f64) -> bool {
    r.x1 - r.x0 < least && r.left_slope == 0.0 && r.right_slope == 0.0
}

fn spot(w: &LaidWall, s: &Stack, style: LengthStyle) -> TightSpot {
    let between = [beside(w, s.x.0, s.y), beside(w, s.x.1, s.y)];
    let closed = |kinds: &[EdgeKind], y: f64| {
        w.edges.iter().any(|e| {
            let (low, high) = (e.from[0].min(e.to[0]), e.from[0].max(e.to[0]));
            let over = high.min(s.x.1) - low.max(s.x.0);
            kinds.contains(&e.kind) && over > 1.0 && (e.from[1] - y).abs() <= CLOSES
        })
    };
    // Under a soffit, band, rake or sill nothing comes in from the top.
    let top =
        closed(&[EdgeKind::Eave, EdgeKind::BareBottom, EdgeKind::Rake, EdgeKind::Sill], s.y.1);
    let bottom =
        closed(&[EdgeKind::Base, EdgeKind::BareTop, EdgeKind::LowerRoof, EdgeKind::Head], s.y.0);
    let many = s.courses.1 > s.courses.0;
    let way = match (top, bottom) {
        (false, _) if many => WayIn::FromTop,
        (true, false) if many => WayIn::FromBottom,
        _ => WayIn::HoldOne,
    };
    let place = if many {
        format!("courses {} to {}", s.courses.0, s.courses.1)
    } else {
        format!("course {}", s.courses.0)
    };
    let wide = style.short(s.x.1 - s.x.0);
    // A channel is easier held back than a post or a block that is fixed already.
    let free = |n: &&String| !n.contains("corner") && !n.contains("fixture");
    let post = |n: &&String| n.contains("corner");
    let hold = between.iter().find(free).or_else(|| between.iter().find(|n| !post(n)));
    let hold = hold.unwrap_or(&between[0]);
    let how = match way {
        WayIn::FromTop => format!(
            "fix both receivers and slide the panels down from the top, before course {} closes it",
            s.courses.1 + 1
        ),
        WayIn::FromBottom => format!(
            "fix both receivers and slide the panels up from below, the topmost first, before course {} goes on under them",
            s.courses.0 - 1
        ),
        WayIn::HoldOne => format!(
            "fix one receiver, hold the one at {hold} with one nail, put the panels in and nail it home as courses go up"
        ),
    };
    let words = format!("{place}, {wide} between {} and {}: {how}", between[0], between[1]);
    TightSpot {
        from_course: s.courses.0,
        to_course: s.courses.1,
        x: [s.x.0, s.x.1],
        y: [s.y.0, s.y.1],
        between,
        way,
        words,
    }
}

/// What stands upright at `x` beside a stack.
fn beside(w: &LaidWall, x: f64, y: (f64, f64)) -> String {
    let along = |e: &&LaidEdge| {
        let (low, high) = (e.from[1].min(e.to[1]), e.from[1].max(e.to[1]));
        (e.from[0] - x).abs() < BESIDE
            && (e.to[0] - x).abs() < BESIDE
            && high.min(y.1) - low.max(y.0) > SAME
    };
    let Some(e) = w.edges.iter().find(along) else {
        return fixture(w, x, y).unwrap_or_else(|| "a fixture".to_owned());
    };
    match (&e.opening, e.kind) {
        (Some(o), _) => o.to_string(),
        (None, EdgeKind::OutsideCorner) => "the outside corner".to_owned(),
        (None, EdgeKind::InsideCorner) => "the inside corner".to_owned(),
        _ => "the wall's end".to_owned(),
    }
}

/// The nearest fixture beside `x` at a stack's height.
fn fixture(w: &LaidWall, x: f64, y: (f64, f64)) -> Option<String> {
    let off = |o: &&LaidObstacle| {
        let near = o.outline.iter().filter(|p| p[1] < y.1 + 8.0 && p[1] > y.0 - 8.0);
        near.map(|p| (p[0] - x).abs()).fold(f64::INFINITY, f64::min)
    };
    let best = w.obstacles.iter().min_by(|a, b| off(a).total_cmp(&off(b)))?;
    (off(&best) < 2.0).then(|| format!("fixture {}", best.id))
}
