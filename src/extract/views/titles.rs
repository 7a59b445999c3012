//! Titles of views: on the title layer, or texts that read like one, in model space or in paper
//! space below the window that shows the view.

use crate::clean::{Destination, clean};
use crate::finding::views::OtherView;
use crate::geom::vocabulary::{Point, Rect};
use crate::model::drawing::Text;
use crate::model::linework::{Linework, Role};
use crate::model::turn::Turn;

/// What a title says its view is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Shows {
    /// An elevation, or it does not say.
    Elevation,
    /// A plan, a section or a detail: not sided.
    Other(OtherView),
}

/// Words for an elevation, and for what is none, in the languages drawings often come in (general
/// dictionaries). Parts of words count, since German and Japanese join them.
const ELEVATION: [&str; 18] = [
    "elevation",
    "elevación",
    "elevacion",
    "elevação",
    "façade",
    "facade",
    "fachada",
    "alzado",
    "alçado",
    "ansicht",
    "fassade",
    "prospetto",
    "gevel",
    "fasad",
    "elewacja",
    "julkisivu",
    "立面",
    "фасад",
];
const OTHERS: [(OtherView, &str); 27] = [
    (OtherView::Plan, "floor plan"),
    (OtherView::Plan, "plan"),
    (OtherView::Plan, "grundriss"),
    (OtherView::Plan, "planta"),
    (OtherView::Plan, "pianta"),
    (OtherView::Plan, "plattegrond"),
    (OtherView::Plan, "planritning"),
    (OtherView::Plan, "rzut"),
    (OtherView::Plan, "平面"),
    (OtherView::Plan, "伏図"),
    (OtherView::Section, "section"),
    (OtherView::Section, "schnitt"),
    (OtherView::Section, "coupe"),
    (OtherView::Section, "sección"),
    (OtherView::Section, "seccion"),
    (OtherView::Section, "corte"),
    (OtherView::Section, "sezione"),
    (OtherView::Section, "doorsnede"),
    (OtherView::Section, "sektion"),
    (OtherView::Section, "przekrój"),
    (OtherView::Section, "断面"),
    (OtherView::Section, "剖面"),
    (OtherView::Section, "矩計"),
    (OtherView::Detail, "detail"),
    (OtherView::Detail, "détail"),
    (OtherView::Detail, "detalle"),
    (OtherView::Detail, "詳細"),
];
/// A title has no more words than this; a note has (common practice, no source).
const MOST_WORDS: usize = 7;

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
    /// On a sheet, under the window that shows its view.
    on_sheet: bool,
    /// The turn that sets it upright.
    pub(super) turn: Turn,
}

fn reads_as(name: &str) -> Option<Shows> {
    let low = name.to_lowercase();
    if low.split_whitespace().count() > MOST_WORDS {
        return None;
    }
    if ELEVATION.iter().any(|w| low.contains(w)) {
        return Some(Shows::Elevation);
    }
    let word = |w: &str| {
        let latin = w.chars().all(char::is_alphabetic) && w.is_ascii();
        // Short Latin words only whole: "plan" is no part of "planter".
        if latin && w.len() < 6 {
            low.split(|c: char| !c.is_alphanumeric()).any(|t| t == w)
        } else {
            low.contains(w)
        }
    };
    OTHERS.iter().find(|(_, w)| word(w)).map(|(view, _)| Shows::Other(*view))
}

fn title(text: &Text, at: Point, height: f64, role: Option<Role>) -> Option<Title> {
    let name = clean(&text.content, Destination::Name);
    let agreed = role == Some(Role::Title);
    let shows = reads_as(&name);
    (!name.is_empty() && (agreed || shows.is_some())).then(|| Title {
        name,
        at,
        height,
        agreed,
        shows: shows.unwrap_or(Shows::Elevation),
        on_sheet: false,
        turn: Turn::of_text(text.angle, text.mirrored).unwrap_or_default(),
    })
}

/// Every title of the drawing, those of paper space at the place in the model that they stand under.
pub(super) fn titles(lines: &Linework) -> Vec<Title> {
    let least = LARGER * small(lines.labels.iter().map(|l| l.text.height));
    let model = lines
        .labels
        .iter()
        .filter_map(|l| title(&l.text, l.text.at, l.text.height, l.role))
        .filter(|t| t.agreed || t.height >= least);
    let least = LARGER * small(lines.paper_labels.iter().map(|(_, l)| l.text.height));
    let paper = lines.paper_labels.iter().filter_map(|(layout, l)| {
        let (at, scale) = in_model(lines, layout, l.text.at)?;
        title(&l.text, at, l.text.height * scale, l.role)
            .filter(|t| t.agreed || l.text.height >= least)
            .map(|t| Title { on_sheet: true, turn: Turn::default(), ..t })
    });
    model.chain(paper).collect()
}

/// How much larger than the small texts a title is that stands on no title layer
/// (common practice, no source).
const LARGER: f64 = 1.2;

/// A small text's height: that of the lower quarter; nothing where there are too few to compare.
fn small(heights: impl Iterator<Item = f64>) -> f64 {
    let mut all: Vec<f64> = heights.collect();
    all.sort_by(f64::total_cmp);
    if all.len() < 8 { 0.0 } else { all[all.len() / 4] }
}

/// Where a place on a sheet lies in the model, by the window it stands in or under, and inches of
/// model to the paper unit.
fn in_model(lines: &Linework, layout: &str, p: Point) -> Option<(Point, f64)> {
    let reach = |r: &Rect| r.inflate(0.1 * r.width(), 0.0);
    let away = |r: &Rect| (r.y0 - p.y).max(0.0) + (p.y - r.y1).max(0.0);
    let window = lines
        .viewports
        .iter()
        .filter(|v| v.layout == layout && v.paper.width() > 0.0)
        .filter(|v| {
            let wide = reach(&v.paper);
            p.x >= wide.x0
                && p.x <= wide.x1
                && p.y <= v.paper.y1
                && away(&v.paper) < v.paper.height()
        })
        .min_by(|a, b| {
            away(&a.paper)
                .total_cmp(&away(&b.paper))
                .then(a.paper.area().total_cmp(&b.paper.area()))
        })?;
    let scale = window.model.width() / window.paper.width();
    let off = (p - window.paper.origin()) * scale;
    Some((window.model.origin() + off, scale))
}

/// The title of a frame: the largest on the title layer, else the largest that reads like one.
pub(super) fn in_frame(titles: &[Title], region: Rect) -> Option<&Title> {
    titles
        .iter()
        .filter(|t| region.contains(t.at))
        .max_by(|a, b| a.agreed.cmp(&b.agreed).then(a.height.total_cmp(&b.height)))
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
            && (t.agreed || t.on_sheet || at.y > walls.y0 - 2.0 * aside)
            // A text in the middle of walls that reads like a plan's title is no title of theirs.
            && (t.agreed || t.shows == Shows::Elevation || at.y <= walls.y0)
    };
    let far = |t: &&Title| {
        let (at, walls) = seen(t);
        at.distance(Point::new(center.x, walls.y0))
    };
    let fitting = titles.iter().filter(fits);
    fitting.min_by(|a, b| b.agreed.cmp(&a.agreed).then(far(a).total_cmp(&far(b))))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn titles_tell_elevations_from_plans_in_several_languages() {
        for name in ["FRONT ELEVATION", "Südansicht", "南立面図", "Fachada norte", "Façade est"]
        {
            assert_eq!(reads_as(name), Some(Shows::Elevation), "{name}");
        }
        for (name, kind) in [
            ("FIRST FLOOR PLAN", OtherView::Plan),
            ("SECTION A-A", OtherView::Section),
            ("Grundriss EG", OtherView::Plan),
            ("1階平面図", OtherView::Plan),
            ("WALL DETAIL", OtherView::Detail),
        ] {
            assert_eq!(reads_as(name), Some(Shows::Other(kind)), "{name}");
        }
        assert_eq!(reads_as("PLANTER BOX"), None);
        assert_eq!(reads_as("see the elevation for all the heights of the sills"), None);
    }
}
