//! Restricted access: a short run held plumb by two receivers, where a panel can be neither slid in
//! sideways nor bowed (`LayoutFact::RestrictedAccess`, common practice, no source).

use crate::geom::tol::{BESIDE, SAME};
use crate::layout::course::{LaidCourse, LaidRun};
use crate::layout::wall::{LaidEdge, LaidObstacle, LaidWall};
use crate::model::corner::Hand;
use crate::model::house::EdgeKind;
use crate::model::ids::ObstacleId;
use crate::model::work::{AccessSide, InstallMethod, RestrictedAccess};

/// A level side this near above or below a stack closes it, inches.
const CLOSES: f64 = 1.0;

/// Courses whose runs lie between the same two receivers.
struct Stack {
    x: (f64, f64),
    y: (f64, f64),
    courses: (i32, i32),
}

/// Each stack of such runs once. `least` is the shortest piece the job allows in a seamed run: what
/// is shorter cannot be bowed in.
pub(super) fn places(w: &LaidWall, least: f64) -> Vec<RestrictedAccess> {
    let mut stacks: Vec<Stack> = Vec::new();
    for k in &w.courses {
        for r in k.runs.iter().filter(|r| is_restricted(r, least)) {
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
    stacks.iter().map(|s| place(w, s)).collect()
}

/// From where to where up the wall a run's pieces stand.
fn height(r: &LaidRun, k: &LaidCourse) -> (f64, f64) {
    let ys = r.pieces.iter().flat_map(|p| &p.outline).map(|p| p[1]);
    let (low, high) = ys.fold((k.top, k.bottom), |(a, b), y| (a.min(y), b.max(y)));
    if low < high { (low, high) } else { (k.bottom, k.top) }
}

/// Held plumb on both sides, and too short to be bowed in.
fn is_restricted(r: &LaidRun, least: f64) -> bool {
    r.x1 - r.x0 < least && r.ends.iter().all(|e| e.slope == 0.0)
}

fn place(w: &LaidWall, s: &Stack) -> RestrictedAccess {
    let between = [beside(w, s.x.0, s.y), beside(w, s.x.1, s.y)];
    RestrictedAccess {
        from_course: s.courses.0,
        to_course: s.courses.1,
        x: [s.x.0, s.x.1],
        y: [s.y.0, s.y.1],
        install: install(w, s, &between),
        between,
    }
}

/// How the panels of a stack get in.
fn install(w: &LaidWall, s: &Stack, between: &[AccessSide; 2]) -> InstallMethod {
    // Under a soffit, band, rake or sill nothing comes in from the top.
    let above = [EdgeKind::Eave, EdgeKind::BareBottom, EdgeKind::Rake, EdgeKind::Sill];
    let below = [EdgeKind::Base, EdgeKind::BareTop, EdgeKind::LowerRoof, EdgeKind::Head];
    let (top, bottom) = (closed(w, s, &above, s.y.1), closed(w, s, &below, s.y.0));
    let many = s.courses.1 > s.courses.0;
    match (top, bottom) {
        (false, _) if many => InstallMethod::SlideDown { before_course: s.courses.1 + 1 },
        (true, false) if many => InstallMethod::SlideUp { before_course: s.courses.0 - 1 },
        _ => InstallMethod::HoldOneReceiver { held: held(between) },
    }
}

/// Whether a level side of these kinds closes a stack at a height.
fn closed(w: &LaidWall, s: &Stack, kinds: &[EdgeKind], y: f64) -> bool {
    w.edges.iter().any(|e| {
        let (low, high) = (e.from[0].min(e.to[0]), e.from[0].max(e.to[0]));
        let over = high.min(s.x.1) - low.max(s.x.0);
        kinds.contains(&e.kind) && over > 1.0 && (e.from[1] - y).abs() <= CLOSES
    })
}

/// A channel is easier held back than a post or a block that is fixed already.
fn held(between: &[AccessSide; 2]) -> Hand {
    let post = |n: &AccessSide| matches!(n, AccessSide::OutsideCorner | AccessSide::InsideCorner);
    let free = |n: &AccessSide| !post(n) && !matches!(n, AccessSide::Fixture { .. });
    let [left, right] = between;
    if free(left) || (!free(right) && (!post(left) || post(right))) {
        Hand::Left
    } else {
        Hand::Right
    }
}

/// What stands vertical at `x` beside a stack.
fn beside(w: &LaidWall, x: f64, y: (f64, f64)) -> AccessSide {
    let along = |e: &&LaidEdge| {
        let (low, high) = (e.from[1].min(e.to[1]), e.from[1].max(e.to[1]));
        (e.from[0] - x).abs() < BESIDE
            && (e.to[0] - x).abs() < BESIDE
            && high.min(y.1) - low.max(y.0) > SAME
    };
    let Some(e) = w.edges.iter().find(along) else {
        return AccessSide::Fixture { obstacle: fixture(w, x, y) };
    };
    match (&e.opening, e.kind) {
        (Some(o), _) => AccessSide::Opening { opening: o.clone() },
        (None, EdgeKind::OutsideCorner) => AccessSide::OutsideCorner,
        (None, EdgeKind::InsideCorner) => AccessSide::InsideCorner,
        _ => AccessSide::WallEnd,
    }
}

/// The nearest fixture beside `x` at a stack's height.
fn fixture(w: &LaidWall, x: f64, y: (f64, f64)) -> Option<ObstacleId> {
    let off = |o: &&LaidObstacle| {
        let near = o.outline.iter().filter(|p| p[1] < y.1 + 8.0 && p[1] > y.0 - 8.0);
        near.map(|p| (p[0] - x).abs()).fold(f64::INFINITY, f64::min)
    };
    let best = w.obstacles.iter().min_by(|a, b| off(a).total_cmp(&off(b)))?;
    (off(&best) < 2.0).then(|| best.id.clone())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_channel_is_held_before_a_block_and_a_block_before_a_post() {
        let window = || AccessSide::Opening { opening: "W1".into() };
        let block = || AccessSide::Fixture { obstacle: None };
        let (post, end) = (|| AccessSide::OutsideCorner, || AccessSide::WallEnd);
        for (between, wanted) in [
            ([post(), window()], Hand::Right),
            ([window(), post()], Hand::Left),
            ([block(), end()], Hand::Right),
            ([post(), block()], Hand::Right),
            ([block(), post()], Hand::Left),
            ([post(), post()], Hand::Left),
            ([window(), end()], Hand::Left),
        ] {
            assert_eq!(held(&between), wanted, "{between:?}");
        }
    }
}
