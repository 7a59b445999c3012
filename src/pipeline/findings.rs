//! What was found of a house once it is laid.

use crate::course::{crumbs, questions, warnings};
use crate::finding::by_hand::{HandFinding, NameList};
use crate::finding::corners::{CornerFinding, TakenSetBack};
use crate::finding::laying::LayingFinding;
use crate::finding::{Finding, Findings};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::{Affine, Point};
use crate::job::{InsideCorner, Job, Stock};
use crate::layout::bound::Bound;
use crate::layout::laid::LaidHouse;
use crate::layout::verified::Verify;
use crate::model::conflict::Conflict;
use crate::model::corner::CornerKind;
use crate::model::fastening::Movement;
use crate::model::house::{DrawnWall, House};
use crate::model::item::Item;
use crate::model::quantity::TakeoffLine;
use crate::model::seam::ON_JAMB;
use crate::origin::round_place;
use crate::real::Total;
use crate::takeoff;

/// Most further places of one finding.
const MOST_ALSO: usize = 200;

/// Zones of the job that cover nothing.
pub(super) fn empty_zones(house: &House, job: &Job, findings: &mut Findings) {
    for (number, zone) in job.zone.iter().enumerate() {
        let drawn = house.elevations.iter().flat_map(|e| &e.zones).any(|z| z.zone == zone.name);
        if !drawn {
            findings.push(empty_zone(job, number));
        }
    }
}

/// A zone that covers no wall, or too little to side.
pub(super) fn empty_zone(job: &Job, number: usize) -> Finding {
    let zone = job.zone.get(number).map_or_else(String::new, |z| z.name.clone());
    Finding::new(LayingFinding::ZoneEmpty { zone, number })
}

/// Names in the order of walls that no wall and no elevation has.
pub(super) fn walls_unknown(walls: &[&DrawnWall], names: Vec<&str>, findings: &mut Findings) {
    for named in names {
        let walls = walls.iter().map(|w| w.id.clone()).collect();
        let (list, named) = (NameList::Order, named.to_owned());
        findings.push(Finding::new(HandFinding::WallUnknown { list, named, walls }));
    }
}

/// Everything about a laid house, the product's first.
pub(super) fn of_laid(
    laid: &LaidHouse,
    (bound, takeoff): (&Bound, &[TakeoffLine]),
    movement: &Movement,
    findings: &mut Findings,
) {
    product(&laid.job, findings);
    set_backs(laid, findings);
    warnings::tell(laid, findings);
    crumbs::tell(laid, findings);
    questions::ask(laid, findings);
    bound.conflicts.iter().for_each(|c| findings.push(conflict(c)));
    seams_on_jambs(laid, bound, findings);
    takeoff::movement_findings(movement).into_iter().for_each(|f| findings.push(f));
    findings.push(Finding::new(one_lot(&laid.job)));
    crew_takes_more(laid, bound, takeoff).into_iter().for_each(|f| findings.push(Finding::new(f)));
}

/// Rules of the check that are broken, at every place of the drawing where one is.
pub(super) fn failed(laid: &LaidHouse, verify: &Verify, findings: &mut Findings) {
    if verify.passes() {
        return;
    }
    let mut places: Vec<Point> = Vec::new();
    for at in verify.violations().filter_map(|v| v.at.as_ref()) {
        let Some(e) = laid.elevations.iter().find(|e| e.name == at.elevation) else { continue };
        let place = Affine::new(e.to_source) * Point::new(at.point[0], at.point[1]);
        places.push(round_place(place, laid.drawing.inches_per_unit));
    }
    let mut finding = Finding::new(LayingFinding::CheckFailed { places: verify.places() });
    if let Some((first, others)) = places.split_first() {
        finding = finding.at(*first).also_at(others.iter().copied().take(MOST_ALSO).collect());
    }
    findings.push(finding);
}

/// What must be asked of a product's manufacturer.
fn product(job: &Job, findings: &mut Findings) {
    let p = &job.product;
    let length = job.longest_length();
    let ask_from = p.system().end_gap.ask_from.unwrap_or(f64::INFINITY);
    if length >= ask_from && p.end_gap.is_none() {
        let gap = job.end_gap();
        findings.push(Finding::new(LayingFinding::LongPanelGap { length, gap }));
    }
}

/// How far from corners siding ends, where the job does not say it of a sort of corner that there is.
fn set_backs(laid: &LaidHouse, findings: &mut Findings) {
    let job = &laid.job;
    let posts = |kind| kind == CornerKind::Outside || job.trim.inside_corner == InsideCorner::Post;
    // A cover says how far it reaches.
    let covered =
        |kind| kind == CornerKind::Outside && job.trim.corner_cover >= job.post_set_back(kind);
    let boards = !job.siding().receivers.has_pockets();
    let mut taken = Vec::new();
    for corner in [CornerKind::Outside, CornerKind::Inside] {
        if !posts(corner) || covered(corner) {
            continue;
        }
        let mut angles: Vec<Option<f64>> =
            laid.corners.iter().filter(|c| c.kind == corner).map(|c| c.angle).collect();
        // Boards are ripped to any angle.
        angles.iter_mut().filter(|_| boards).for_each(|a| *a = None);
        angles.sort_by(|a, b| a.partial_cmp(b).unwrap_or(std::cmp::Ordering::Equal));
        angles.dedup();
        let open = |a: &Option<f64>| match a {
            None => job.given_set_back(corner).is_none(),
            Some(_) => job.given_angled(corner).is_none(),
        };
        taken.extend(angles.into_iter().filter(open).map(|angle| {
            let bent = |a| job.set_backs().at_angle((corner, false), a);
            let set_back = angle.map_or_else(|| job.post_set_back(corner), bent);
            TakenSetBack { corner, angle, set_back }
        }));
    }
    if !taken.is_empty() {
        findings.push(Finding::new(CornerFinding::SetBackTaken { taken, boards }));
    }
}

/// A crew that starts each run with the last offcut runs short of what is bought. Where lengths are
/// mixed it takes one alone, and lengths are compared.
fn crew_takes_more(
    laid: &LaidHouse,
    bound: &Bound,
    takeoff: &[TakeoffLine],
) -> Option<LayingFinding> {
    let cartons = takeoff.iter().any(|l| matches!(l.item, Item::Cartons { .. }));
    let bought = |place: usize, stock: &Stock| -> f64 {
        let mine = takeoff.iter().filter(|l| l.item.mixed_stock().map_or(0, |s| s.place) == place);
        let each = mine.map(|l| match l.item {
            Item::Cartons { .. } => l.order * f64::from(stock.carton.max(1)),
            Item::Panels { .. } | Item::SparePanels { .. } if !cartons => l.order,
            _ => 0.0,
        });
        each.total()
    };
    let bought: Vec<f64> = laid.stocks.iter().enumerate().map(|(i, s)| bought(i, s)).collect();
    let length: f64 = laid.stocks.iter().zip(&bought).map(|(s, n)| s.length * n).sum();
    let crew = match &bound.certificate.mixed {
        None => bound.crew as f64 * laid.first_length(),
        Some(m) => m.stocks.iter().map(|s| s.crew as f64 * s.length).fold(f64::INFINITY, f64::min),
    };
    let over = crew - length;
    (over > SAME && crew.is_finite()).then(|| LayingFinding::CrewTakesMore {
        crew: whole(crew / laid.first_length()),
        bought: whole(length / laid.first_length()),
        length: (laid.stocks.len() > 1).then(|| laid.first_length()),
        piece: laid.job.product.kind.piece(),
    })
}

/// Whole panels of the first length.
fn whole(panels: f64) -> usize {
    (panels - SAME).ceil().max(0.0) as usize
}

/// Seams on jamb lines, wall by wall.
fn seams_on_jambs(laid: &LaidHouse, bound: &Bound, findings: &mut Findings) {
    // A joint of boards stands on a stud, and a stud at every jamb.
    if laid.job.siding().joints.is_on_studs() {
        return;
    }
    for (e, w) in laid.walls() {
        let here: Vec<_> = bound.seams.on_jambs.iter().filter(|s| s.wall == w.id).collect();
        let Some(first) = here.first() else { continue };
        let mut courses: Vec<i32> = here.iter().map(|s| s.course + 1).collect();
        courses.dedup();
        let height = w.courses.iter().find(|c| c.index == first.course).map_or(0.0, |c| c.bottom);
        let at = Affine::new(e.to_source) * Point::new(first.x, height);
        let kind = LayingFinding::SeamOnJamb {
            wall: w.id.clone(),
            courses,
            within: ON_JAMB,
            piece: laid.job.product.kind.piece(),
        };
        let at = round_place(at, laid.drawing.inches_per_unit);
        findings.push(Finding::new(kind).on(&e.name).at(at));
    }
}

fn one_lot(job: &Job) -> LayingFinding {
    let color = Some(job.product.color.clone()).filter(|c| !c.is_empty());
    LayingFinding::OneLot { color, piece: job.product.kind.piece() }
}

/// Rules of seams that could not be kept.
fn conflict(c: &Conflict) -> Finding {
    let kind = LayingFinding::SeamRulesConflict {
        courses: c.courses.iter().map(|i| i + 1).collect(),
        rule: c.rule.clone(),
        remedies: c.remedies.clone(),
    };
    Finding::new(kind).on(&c.elevation)
}
