//! Faults of the trim round openings that are no rectangles: each put into a sound layout.

use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::layout::rule::Rule;
use lapwright::model::house::EdgeKind;
use lapwright::model::trim::{TrimEnd, TrimKind, TrimPiece};

use crate::faults::Break;
use crate::support::{dxf, lay, rect};

/// A wall with a window on a sloped sill, one with a leg down to a sill on a course line, a round one,
/// an arched one and a six-sided one.
pub(crate) fn shaped() -> Layout {
    let slope = [(30.0, 30.5), (80.0, 42.5), (80.0, 74.0), (30.0, 74.0)];
    let leg =
        [(110.0, 24.0), (130.0, 24.0), (130.0, 38.0), (160.0, 38.0), (160.0, 74.0), (110.0, 74.0)];
    let arc = |x: f64, y: f64, r: f64, turn: f64, n: u32| -> Vec<(f64, f64)> {
        let at = |i: u32| (turn * f64::from(i) / f64::from(n)).to_radians();
        (0..=n).map(|i| (x + r * at(i).cos(), y + r * at(i).sin())).collect()
    };
    let mut round = arc(210.0, 54.0, 20.0, 360.0, 48);
    round.pop();
    let mut arch = arc(270.0, 60.0, 18.0, 180.0, 24);
    arch.extend([(252.0, 34.0), (288.0, 34.0)]);
    let hexagon =
        [(330.0, 30.0), (354.0, 30.0), (366.0, 50.5), (354.0, 71.0), (330.0, 71.0), (318.0, 50.5)];
    let wall = rect(0.0, 0.0, 400.0, 120.0);
    let rings: [(&str, &[(f64, f64)]); 6] = [
        ("A-WALL-OTLN", &wall),
        ("A-GLAZ", &slope),
        ("A-GLAZ", &leg),
        ("A-GLAZ", &round),
        ("A-GLAZ", &arch),
        ("A-GLAZ", &hexagon),
    ];
    let job = "[drawing]\nunit = \"inch\"\n[courses]\ndatum = 0\n[seams]\neffort = \"brief\"\n";
    lay(dxf(&rings).as_bytes(), &job_file::parse(job, "job").unwrap())
}

fn slopes(t: &TrimPiece) -> bool {
    (t.from[1] - t.to[1]).abs() > 1.0
}

fn trim(l: &mut Layout, kind: TrimKind, keep: impl Fn(&TrimPiece) -> bool) -> &mut TrimPiece {
    l.trims.iter_mut().find(|t| t.kind == kind && t.opening.is_some() && keep(t)).unwrap()
}

/// The opening whose trim of a kind is found, with that.
fn again(l: &mut Layout, of: TrimKind, keep: impl Fn(&TrimPiece) -> bool, to: TrimKind) {
    let t = trim(l, of, keep).clone();
    l.trims.push(TrimPiece { mark: "T999".into(), kind: to, path: Vec::new(), ..t });
}

pub(crate) const SHAPED: [(&str, Rule, Break); 19] = [
    ("a sloped sill without undersill trim", Rule::UndersillPlaces, |l| {
        l.trims.retain(|t| !(t.kind == TrimKind::FinishTrim && slopes(t)))
    }),
    ("undersill trim level under a sloped sill", Rule::UndersillPlaces, |l| {
        let t = trim(l, TrimKind::FinishTrim, slopes);
        let low = t.from[1].min(t.to[1]);
        (t.from[1], t.to[1], t.length) = (low, low, (t.from[0] - t.to[0]).abs());
    }),
    ("undersill trim along half of its sill", Rule::UndersillPlaces, |l| {
        let t = trim(l, TrimKind::FinishTrim, |t| !slopes(t));
        t.to[0] = (t.from[0] + t.to[0]) / 2.0;
        t.length /= 2.0;
    }),
    ("undersill trim in one length under both sills of an L", Rule::UndersillPlaces, |l| {
        let t = trim(l, TrimKind::FinishTrim, |t| t.from[1] == 38.0);
        t.from[0] = 110.0;
        t.length = 50.0;
    }),
    ("undersill trim along a jamb", Rule::UndersillPlaces, |l| {
        again(l, TrimKind::JambChannel, |_| true, TrimKind::FinishTrim)
    }),
    ("undersill trim over a head", Rule::UndersillPlaces, |l| {
        again(l, TrimKind::HeadChannel, |_| true, TrimKind::FinishTrim)
    }),
    ("undersill trim under a sill on a course line", Rule::UndersillPlaces, |l| {
        let on_line = |t: &TrimPiece| t.from[1] == 24.0;
        again(l, TrimKind::SillChannel, on_line, TrimKind::FinishTrim);
        let t = l.trims.last_mut().unwrap();
        (t.from[0], t.to[0], t.length) = (110.0, 130.0, 20.0);
    }),
    ("undersill trim across a round window", Rule::UndersillPlaces, |l| {
        let opening = trim(l, TrimKind::BentChannel, |t| t.path.len() > 40).opening.clone();
        let t = trim(l, TrimKind::FinishTrim, |t| !slopes(t)).clone();
        let (from, to, mark) = ([200.0, 36.7], [220.0, 36.7], "T999".into());
        l.trims.push(TrimPiece { mark, opening, from, to, length: 20.0, ..t });
    }),
    ("undersill trim twice under one sill", Rule::UndersillPlaces, |l| {
        again(l, TrimKind::FinishTrim, slopes, TrimKind::FinishTrim)
    }),
    ("a straight channel for a bent one", Rule::OpeningChannels, |l| {
        trim(l, TrimKind::BentChannel, |t| t.path.len() < 40).path.clear()
    }),
    ("a bent channel an inch off its curve", Rule::OpeningChannels, |l| {
        trim(l, TrimKind::BentChannel, |t| t.path.len() > 40)
            .path
            .iter_mut()
            .for_each(|p| p[1] += 1.0)
    }),
    ("a round window's channel half as long", Rule::OpeningChannels, |l| {
        let t = trim(l, TrimKind::BentChannel, |t| t.path.len() > 40);
        let half = t.path.len() / 2;
        t.path.truncate(half);
        t.length /= 2.0;
    }),
    ("a channel along a six-sided window gone", Rule::OpeningChannels, |l| {
        let i = l
            .trims
            .iter()
            .position(|t| t.kind == TrimKind::JambChannel && slopes(t) && t.from[0] > 300.0);
        l.trims.remove(i.unwrap());
    }),
    ("a six-sided window mitered as a square one", Rule::OpeningChannels, |l| {
        let t = trim(l, TrimKind::HeadChannel, |t| t.from[0] > 300.0);
        t.ends = [
            TrimEnd::MiterTab { angle: 45.0, tab: 0.75 },
            TrimEnd::MiterTab { angle: 45.0, tab: 0.75 },
        ];
    }),
    ("a steep jamb without its tab", Rule::OpeningDrainage, |l| {
        let t = trim(l, TrimKind::JambChannel, |t| slopes(t) && t.from[0] > 300.0);
        t.ends = [TrimEnd::Miter(30.0), TrimEnd::Miter(30.0)];
    }),
    ("an arch that does not lap over its jambs", Rule::OpeningDrainage, |l| {
        trim(l, TrimKind::BentChannel, |t| t.path.len() < 40).ends =
            [TrimEnd::Square, TrimEnd::Square]
    }),
    ("a six-sided window without a drip cap", Rule::OpeningDrainage, |l| {
        l.trims.retain(|t| !(t.kind == TrimKind::DripCap && t.from[0] > 300.0))
    }),
    ("flashing level under a sloped sill", Rule::OpeningFlashing, |l| {
        let t = trim(l, TrimKind::SillFlashing, slopes);
        t.length = (t.from[0] - t.to[0]).abs();
    }),
    ("a steep side named a sill", Rule::SideNames, |l| {
        let walls = l.elevations.iter_mut().flat_map(|e| &mut e.walls);
        let mut sides = walls.flat_map(|w| &mut w.edges);
        let steep = |e: &lapwright::layout::wall::LaidEdge| {
            e.kind == EdgeKind::Jamb && e.to[0] < e.from[0] - 5.0
        };
        sides.find(|e| steep(e)).unwrap().kind = EdgeKind::Sill;
    }),
];
