//! An account of what is drawn on layers with a role: each thing is used, is part of one that is, or
//! is left out for a reason. Whether it is used is asked of the walls as they came out.

mod boxes;
mod fate;
mod of_view;
mod speaks;
mod things;

use std::collections::BTreeMap;

use self::fate::Fate;
use self::of_view::InView;
use self::things::{DrawnAs, Things, open_loop};
use super::frame::ViewFrame;
use super::views::Views;
use crate::finding::house::HouseFinding;
use crate::finding::{Finding, Findings};
use crate::geom::polygon::Polygon;
use crate::geom::vocabulary::{Point, Rect};
use crate::job::Job;
use crate::model::account::LayerAccount;
use crate::model::house::DrawnElevation;
use crate::model::linework::{Linework, Role};
use crate::model::unused::{Unused, UnusedCount};

/// Most places that are kept of one layer.
const MOST_PLACES: usize = 200;

/// The account while elevations are made.
pub(super) struct Account<'a> {
    lines: &'a Linework,
    things: Things,
    fates: Vec<Option<Fate>>,
    /// Boxes of walls, inches of the whole drawing.
    walls: Vec<Rect>,
    /// The same of openings.
    openings: Vec<Rect>,
    /// Whether an elevation has no level line.
    unlevelled: bool,
}

impl<'a> Account<'a> {
    pub(super) fn of(lines: &'a Linework) -> Self {
        let things = Things::of(lines);
        let fates = vec![None; things.all.len()];
        let (walls, openings) = (Vec::new(), Vec::new());
        Account { lines, things, fates, walls, openings, unlevelled: false }
    }

    /// Sees what became of the things of a view.
    pub(super) fn view(
        &mut self,
        local: &ViewFrame,
        made: &DrawnElevation,
        by_job: (&[Polygon], &[Rect]),
    ) {
        let found = InView::of(local, made, &self.things, by_job).fates();
        for (thing, fate) in found {
            let known = self.fates[thing].as_ref().map(Fate::weight);
            if known.is_none_or(|k| fate.weight() > k) {
                self.fates[thing] = Some(fate);
            }
        }
        self.unlevelled |= !made.level_drawn;
        let outer = local.origin.to_vec2();
        let of = |ring: &Vec<Point>| crate::geom::polygon::bounds(ring).map(|b| b + outer);
        self.walls.extend(made.walls.iter().filter_map(|w| of(&w.outline)));
        let openings = made.walls.iter().flat_map(|w| &w.openings);
        self.openings.extend(openings.filter_map(|o| of(&o.outline)));
    }

    /// The layers' accounts; what is left out is told, a finding a layer.
    pub(super) fn close(
        mut self,
        views: &Views,
        job: &Job,
        findings: &mut Findings,
    ) -> Vec<LayerAccount> {
        for i in 0..self.things.all.len() {
            if self.fates[i].is_none() {
                self.fates[i] = Some(self.outside(i, views, job));
            }
        }
        let accounts = self.by_layer();
        for (layer, account) in &accounts {
            if account.unused() > 0 {
                findings.push(self.told(*layer, account));
            }
        }
        speaks::tell(self.lines, &self.walls, &self.openings, findings);
        accounts.into_values().collect()
    }

    /// What becomes of a thing that stands in no elevation.
    fn outside(&self, i: usize, views: &Views, job: &Job) -> Fate {
        let thing = &self.things.all[i];
        if let DrawnAs::Left(why) = &thing.kind {
            return Fate::Left(why.clone());
        }
        if thing.role == Role::Frame {
            let closed = thing.kind == DrawnAs::Loop;
            return if closed { Fate::Used } else { Fate::Left(Unused::OpenLoop) };
        }
        // Marks beside the level lines that were found, the symbol's circle for one.
        if thing.role == Role::Level && !self.unlevelled {
            return Fate::Detail;
        }
        let Some(frame) = thing.frame else { return Fate::Left(Unused::OutsideViews) };
        if matches!(thing.kind, DrawnAs::Texture(_)) && thing.role.is_thing() {
            return Fate::Detail;
        }
        let here = |r: Rect| r.contains(frame.center());
        if views.left_alone.iter().any(|v| here(v.region)) {
            return Fate::Left(Unused::InOtherView);
        }
        // What goes round a wall and all about it is a border, or another drawing's.
        let round = |w: &Rect| w.union(frame) == frame;
        let on_wall = self.walls.iter().any(|w| w.overlaps(frame) && !round(w));
        if job.views().next().is_some() && !on_wall {
            return Fate::Left(Unused::OutsideRegions);
        }
        Fate::Left(Unused::OutsideViews)
    }

    fn by_layer(&self) -> BTreeMap<usize, LayerAccount> {
        let mut out: BTreeMap<usize, LayerAccount> = BTreeMap::new();
        for (i, used) in self.lines.layers.iter().enumerate() {
            let Some(role) = used.role.filter(|r| r.shapes_layout()) else { continue };
            let asides = self.lines.asides.get(&i).copied().unwrap_or_default();
            out.insert(
                i,
                LayerAccount {
                    layer: used.layer.name.clone(),
                    role,
                    entities: asides.said + asides.empty,
                    annotations: asides.said,
                    details: asides.empty,
                    drawn: 0,
                    used: 0,
                    left: Vec::new(),
                    places: Vec::new(),
                },
            );
        }
        for (thing, fate) in self.things.all.iter().zip(&self.fates) {
            let Some(account) = out.get_mut(&thing.layer) else { continue };
            account.entities += thing.entities;
            match fate {
                Some(Fate::Detail) | None => account.details += thing.entities,
                Some(Fate::Used) => {
                    account.drawn += 1;
                    account.used += 1;
                }
                Some(Fate::Left(why)) => self.leave(account, thing, why),
            }
        }
        out.retain(|_, a| a.entities + a.drawn > 0);
        out
    }

    /// Counts a thing that is left out.
    fn leave(&self, account: &mut LayerAccount, thing: &things::Thing, why: &Unused) {
        // Many of one kind past what is kept one by one stand for as many things.
        let several = matches!(thing.kind, DrawnAs::Left(_)) && thing.strokes.len() == 1;
        let n = if several { thing.entities.max(1) } else { 1 };
        account.drawn += n;
        if let Some(frame) = thing.frame.filter(|_| account.places.len() < MOST_PLACES) {
            account.places.push(self.lines.source(frame.center()));
        }
        let of_lines: Vec<_> =
            thing.strokes.iter().filter_map(|i| self.lines.strokes.get(*i)).collect();
        let lines = match why {
            Unused::OpenLoop => open_loop(&of_lines).map(|(lines, gap)| (lines, Some(gap))),
            Unused::LooseLines => Some((thing.entities, None)),
            _ => None,
        };
        let fresh = UnusedCount { why: why.clone(), things: 0, lines: None, gap: None };
        let at = match account.left.iter().position(|c| c.why == *why) {
            Some(at) => at,
            None => {
                account.left.push(fresh);
                account.left.len() - 1
            }
        };
        let count = &mut account.left[at];
        count.things += n;
        if let Some((lines, gap)) = lines {
            count.lines = Some(count.lines.unwrap_or(0) + lines);
            count.gap = gap.map(|g| g.max(count.gap.unwrap_or(0.0)));
        }
    }

    fn told(&self, layer: usize, account: &LayerAccount) -> Finding {
        let kind = HouseFinding::DrawnUnused {
            layer: account.layer.clone(),
            role: account.role,
            drawn: account.drawn,
            used: account.used,
            left: account.left.clone(),
            meant: account.left.iter().all(|c| c.why.is_meant()),
        };
        let mut finding = Finding::new(kind);
        let all = self.things.all.iter().zip(&self.fates);
        let mut mine = all.filter(|(t, f)| t.layer == layer && matches!(f, Some(Fate::Left(_))));
        if let Some((first, _)) = mine.next() {
            finding = finding.about(&first.origin);
        }
        let mut places = account.places.iter().copied();
        if let Some(at) = places.next() {
            finding = finding.at(at);
        }
        finding.also_at(places.collect())
    }
}
