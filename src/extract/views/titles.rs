//! Titles of views: on the title layer, or texts that read like one, in model space or in paper
//! space in or below the window that shows the view.

use std::collections::{BTreeMap, BTreeSet};

use super::reads::{Reads, Shows, Telling, reads};
use crate::clean::{Destination, clean};
use crate::finding::views::OtherView;
use crate::geom::vocabulary::{Point, Rect};
use crate::model::drawing::Text;
use crate::model::linework::{Label, Linework, Role};
use crate::model::turn::Turn;

/// A text that may name a view.
#[derive(Clone, Debug)]
pub(super) struct Title {
    /// As a name: one line.
    pub(super) name: String,
    /// Inches of the whole drawing.
    pub(super) at: Point,
    /// Capital height there.
    pub(super) height: f64,
    /// On the title layer, rather than only reading like a title.
    pub(super) agreed: bool,
    /// What it says the view is.
    pub(super) shows: Shows,
    /// How much it says.
    telling: Telling,
    /// On a sheet, in or under the window that shows its view: an index into the windows.
    pub(super) window: Option<usize>,
    /// The turn that sets it upright.
    pub(super) turn: Turn,
}

/// A text that may be a title, with how it reads.
struct Written<'a> {
    name: String,
    reads: Option<Reads>,
    text: &'a Text,
    agreed: bool,
}

impl Written<'_> {
    fn is(&self, telling: Telling) -> bool {
        let plain = |r: &Reads| r.shows == Shows::Elevation && r.telling == telling;
        !self.agreed && self.reads.as_ref().is_some_and(plain)
    }

    /// It as a title at a place of the model, where a unit of it is `scale` there.
    fn title(self, at: Point, scale: f64) -> Title {
        let plain = Reads { shows: Shows::Elevation, telling: Telling::Sort };
        let Reads { shows, telling } = self.reads.unwrap_or(plain);
        let turn = Turn::of_text(self.text.angle, self.text.mirrored).unwrap_or_default();
        let (name, agreed, height) = (self.name, self.agreed, self.text.height * scale);
        Title { name, at, height, agreed, shows, telling, window: None, turn }
    }
}

impl Title {
    /// Whether it is large or telling enough to be no note.
    fn stands_out(&self, height: f64, least: f64) -> bool {
        self.agreed || self.telling == Telling::Side || height >= least
    }

    /// Whether it says what its view shows and from which side: a title wherever it stands.
    pub(super) fn tells_side(&self) -> bool {
        self.shows == Shows::Elevation && self.telling == Telling::Side
    }

    /// Whether it names a sheet of several views.
    pub(super) fn is_of_sheet(&self) -> bool {
        !self.agreed && self.telling == Telling::Sheet
    }

    /// Of two titles of one view the lesser names it.
    fn rank(&self) -> (bool, Telling) {
        let telling = match self.telling {
            Telling::Side | Telling::Sort => Telling::Side,
            other => other,
        };
        (!self.agreed, telling)
    }
}

/// Every title of the drawing, those of paper space at the place in the model that they stand under.
pub(super) fn titles(lines: &Linework) -> Vec<Title> {
    let least = LARGER * small(lines.labels.iter().map(|l| l.text.height));
    let model = written(lines.labels.iter()).into_iter().map(|w| {
        let at = w.text.at;
        w.title(at, 1.0)
    });
    let mut out: Vec<Title> = model.filter(|t| t.stands_out(t.height, least)).collect();
    let least = LARGER * small(lines.paper_labels.iter().map(|(_, l)| l.text.height));
    let mut layouts: BTreeMap<&str, Vec<&Label>> = BTreeMap::new();
    for (layout, label) in &lines.paper_labels {
        layouts.entry(layout).or_default().push(label);
    }
    for (layout, labels) in layouts {
        for w in written(labels.into_iter()) {
            let Some((window, at, scale)) = in_model(lines, layout, w.text) else { continue };
            let height = w.text.height;
            let t = w.title(at, scale);
            if t.stands_out(height, least) {
                out.push(Title { window: Some(window), turn: Turn::default(), ..t });
            }
        }
    }
    out
}

/// Most texts that are looked through for titles in two lines.
const MOST_LINES: usize = 500;

/// Texts that read like titles or stand on a title layer. A side and the word for a view in two lines
/// are one.
fn written<'a>(labels: impl Iterator<Item = &'a Label>) -> Vec<Written<'a>> {
    let read = labels.filter_map(|l| {
        let name = clean(&l.text.content, Destination::Name);
        let (agreed, reads) = (l.role == Some(Role::Title), reads(&name));
        let may_be = !name.is_empty() && (agreed || reads.is_some());
        may_be.then_some(Written { name, reads, text: &l.text, agreed })
    });
    let mut out: Vec<Written> = read.collect();
    let of = |telling: Telling| {
        let found = out.iter().enumerate().filter(|(_, w)| w.is(telling)).map(|(i, _)| i);
        found.take(MOST_LINES).collect::<Vec<usize>>()
    };
    let sides = of(Telling::SideAlone);
    let mut gone = BTreeSet::new();
    for sort in of(Telling::Sort) {
        let pair = |i: &usize| !gone.contains(i) && in_two_lines(out[sort].text, out[*i].text);
        let Some(side) = sides.iter().copied().find(pair) else { continue };
        let upper_first = out[side].text.at.y > out[sort].text.at.y;
        let (upper, lower) = if upper_first { (side, sort) } else { (sort, side) };
        let name = format!("{} {}", out[upper].name, out[lower].name);
        out[upper].reads = reads(&name);
        out[upper].name = name;
        gone.insert(lower);
    }
    let mut i = 0;
    out.retain(|_| {
        i += 1;
        !gone.contains(&(i - 1))
    });
    out
}

/// Whether two level texts of one height stand one over the other.
fn in_two_lines(a: &Text, b: &Text) -> bool {
    let k = a.height;
    let (across, down) = ((a.at.x - b.at.x).abs(), (a.at.y - b.at.y).abs());
    let alike = (b.height - k).abs() <= 0.05 * k && a.angle == 0.0 && b.angle == 0.0;
    alike && across <= 6.0 * k && down > 0.5 * k && down <= 2.5 * k
}

/// How much larger than the small texts a title is that stands on no title layer and does not say the
/// side it shows (common practice, no source).
const LARGER: f64 = 1.2;

/// A small text's height: that of the lower quarter; nothing where there are too few to compare.
fn small(heights: impl Iterator<Item = f64>) -> f64 {
    let mut all: Vec<f64> = heights.collect();
    all.sort_by(f64::total_cmp);
    if all.len() < 8 { 0.0 } else { all[all.len() / 4] }
}

/// Width of a letter to its height, at most (common practice, no source).
const LETTER: f64 = 0.8;
/// Letters of a text that are counted: a title has no more.
const MOST_LETTERS: usize = 60;

/// Where a place on a sheet lies in the model, by the window it stands in or under, with that window, and
/// inches of model to the paper unit.
fn in_model(lines: &Linework, layout: &str, text: &Text) -> Option<(usize, Point, f64)> {
    let p = text.at;
    let long = LETTER * text.height * text.content.chars().take(MOST_LETTERS).count() as f64;
    let reach = |r: &Rect| r.inflate(long.max(0.1 * r.width()), 0.0);
    let away = |r: &Rect| (r.y0 - p.y).max(0.0) + (p.y - r.y1).max(0.0);
    // Of windows side by side it belongs to the one that it begins under.
    let aside = |r: &Rect| (r.x0 - p.x).max(0.0) + (p.x - r.x1).max(0.0);
    let windows = lines.viewports.iter().enumerate();
    let (i, window) = windows
        .filter(|(_, v)| v.layout == layout && v.paper.width() > 0.0)
        .filter(|(_, v)| {
            let wide = reach(&v.paper);
            p.x >= wide.x0
                && p.x <= wide.x1
                && p.y <= v.paper.y1
                && away(&v.paper) < v.paper.height()
        })
        .min_by(|(_, a), (_, b)| {
            away(&a.paper)
                .total_cmp(&away(&b.paper))
                .then(aside(&a.paper).total_cmp(&aside(&b.paper)))
                .then(a.paper.area().total_cmp(&b.paper.area()))
        })?;
    let scale = window.model.width() / window.paper.width();
    let off = (p - window.paper.origin()) * scale;
    Some((i, window.model.origin() + off, scale))
}

/// The title of a frame: the largest on the title layer, else the largest that reads like one.
pub(super) fn in_frame(titles: &[Title], region: Rect) -> Option<&Title> {
    let inside = titles.iter().filter(|t| region.contains(t.at));
    inside.max_by(|a, b| b.rank().cmp(&a.rank()).then(a.height.total_cmp(&b.height)))
}

/// How far beside what is hatched in a plan its title may stand, inches: one room of it may have a floor of
/// boards, and the title stands under the whole (common practice, no source).
const ROOMS: f64 = 360.0;

/// The title of a plan that hatched areas without a title of their own stand in: of all titles under them
/// and about them the nearest, where that is a plan's.
pub(super) fn plan_of(titles: &[Title], hatched: Rect) -> Option<&Title> {
    let about = Rect::new(hatched.x0 - ROOMS, hatched.y0 - ROOMS, hatched.x1 + ROOMS, hatched.y1);
    let foot = Point::new(hatched.center().x, hatched.y0);
    let near = titles.iter().filter(|t| about.contains(t.at));
    let nearest = near.min_by(|a, b| a.at.distance(foot).total_cmp(&b.at.distance(foot)));
    nearest.filter(|t| t.shows == Shows::Other(OtherView::Plan))
}

/// Windows of sheets with the title of all that one shows: the only one of those that say most that stands
/// in it or under it.
pub(super) fn of_windows(titles: &[Title]) -> BTreeMap<usize, &Title> {
    let mut by_window: BTreeMap<usize, Vec<&Title>> = BTreeMap::new();
    for t in titles.iter().filter(|t| t.agreed || t.telling < Telling::Sheet) {
        by_window.entry(t.window.unwrap_or(usize::MAX)).or_default().push(t);
    }
    by_window.remove(&usize::MAX);
    let mut out = BTreeMap::new();
    for (window, found) in by_window {
        out.extend(only_one(found).map(|t| (window, t)));
    }
    out
}

/// The one that says most, if it is alone in that.
fn only_one(found: Vec<&Title>) -> Option<&Title> {
    let most = found.iter().map(|t| t.rank()).min()?;
    let mut first = found.into_iter().filter(|t| t.rank() == most);
    let one = first.next();
    one.filter(|_| first.next().is_none())
}

/// The title of walls that stand together: the nearest one at or under their foot, those of the
/// title layer first. Where it reads another way the walls are turned with it.
pub(super) fn under(titles: &[Title], walls: Rect, aside: f64) -> Option<&Title> {
    let (center, size) = (walls.center(), walls.size());
    let seen = |t: &Title| {
        let lying = t.turn.quarters % 2 == 1;
        let size = if lying { (size.height, size.width) } else { (size.width, size.height) };
        (t.turn.about(center) * t.at, Rect::from_center_size(center, size))
    };
    let fits = |t: &&Title| {
        let (at, walls) = seen(t);
        at.x >= walls.x0 - aside
            && at.x <= walls.x1 + aside
            && at.y < walls.y0 + walls.height()
            // Far under its view a title belongs to another one, unless its layer says what it is.
            && (t.agreed || t.window.is_some() || at.y > walls.y0 - 2.0 * aside)
            // A text in the middle of walls that reads like a plan's title is no title of theirs, nor is
            // a side alone, which may be of anything.
            && (t.agreed
                || (t.shows == Shows::Elevation && t.telling < Telling::SideAlone)
                || at.y <= walls.y0)
    };
    let far = |t: &&Title| {
        let (at, walls) = seen(t);
        at.distance(Point::new(center.x, walls.y0))
    };
    let fitting = titles.iter().filter(fits);
    fitting.min_by(|a, b| a.rank().cmp(&b.rank()).then(far(a).total_cmp(&far(b))))
}

/// Titles of views that are no elevations.
pub(super) fn others(titles: &[Title]) -> Vec<(OtherView, String)> {
    let other = |t: &Title| match t.shows {
        Shows::Elevation => None,
        Shows::Other(view) => Some((view, t.name.clone())),
    };
    titles.iter().filter_map(other).collect()
}
