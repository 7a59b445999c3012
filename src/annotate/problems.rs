//! The drawing in gray with each finding circled, numbered and listed: one page as high as it needs.

use super::canvas::{Canvas, Look, Mark, fitted, printable, wrapped};
use super::style::{HEADING, Ink, TEXT};
use crate::finding::{Finding, Severity};
use crate::geom::flatten::{SAGITTA, path_points};
use crate::geom::vocabulary::{Affine, CurveShape, Point, Rect};
use crate::model::drawing::{Drawing, Item, Polyline, Shape, Space, Vertex};
use crate::model::sheet::Sheet;
use crate::origin::Origin;
use crate::units::LengthStyle;
use crate::wording::findings::{FindingWords, words};
use crate::wording::sheets;

/// Width of the page and its margins, inches.
const WIDTH: f64 = 17.0;
const MARGIN: f64 = 0.5;
/// Greatest height of the picture, inches.
const TALLEST: f64 = 14.0;
/// Radius of a circle round a finding, inches.
const RADIUS: f64 = 0.15;
/// Most items drawn, the largest first: a picture of more would open in no viewer.
const MOST_ITEMS: usize = 30_000;
/// Most findings listed; `check.txt` holds the rest.
const MOST_FINDINGS: usize = 300;
/// How many times wider than its crowded middle a drawing may be before what lies far off is left
/// out of the picture.
const SPREAD: f64 = 8.0;
/// Of lines under a finding, inches.
const INDENT: f64 = 0.25;
/// Width of lines, inches: some air is left, since a viewer that lacks the typeface sets wider.
const ROOM: f64 = (WIDTH - 2.0 * MARGIN - INDENT) * 0.87;
/// Pitch of lines of text, inches.
const LINE: f64 = TEXT * 1.75;

/// A finding with its number and its place in the source's coordinates.
struct Found<'a> {
    number: usize,
    finding: &'a Finding,
    at: Option<Point>,
}

/// The findings on the drawing as read. Total: without a drawing there is the list alone.
pub fn problems(drawing: &Drawing, findings: &[Finding], style: LengthStyle) -> Sheet {
    let mut order: Vec<&Finding> = findings.iter().collect();
    order.sort_by_key(|n| std::cmp::Reverse(n.severity()));
    let found: Vec<Found> = order
        .iter()
        .take(MOST_FINDINGS)
        .enumerate()
        .map(|(i, finding)| Found { number: i + 1, finding, at: place(drawing, finding) })
        .collect();
    let items: Vec<(&Item, Rect)> = shown(drawing);
    let window = window(&items, &found);
    let scale = window.map_or(1.0, |w| {
        let across = (WIDTH - 2.0 * MARGIN) / w.width();
        across.min(TALLEST / w.height())
    });
    let picture = window.map_or(0.0, |w| w.height() * scale);
    let list = listed(&found, window, findings.len(), style);
    let height = 2.0 * MARGIN + 0.9 + picture + LINE * (list.len() as f64 + 2.0);
    let mut canvas = Canvas::new(Rect::new(0.0, 0.0, WIDTH, height));
    let top = height - MARGIN;
    let title = fitted(&heading(drawing, findings), HEADING, true, ROOM);
    canvas.left(&title, HEADING, true, Point::new(MARGIN, top - 0.1));
    canvas.left(sheets::PROBLEMS_KEY, TEXT, false, Point::new(MARGIN, top - 0.4));
    if let Some(w) = window {
        let map = Affine::translate((MARGIN, top - 0.7 - picture))
            * Affine::scale(scale)
            * Affine::translate(-w.origin().to_vec2());
        picture_of(&mut canvas, &items, w, map, scale);
        circles(&mut canvas, &found, w, map);
    }
    let mut y = top - 0.9 - picture - LINE;
    for (text, bold) in list {
        let x = if bold { MARGIN } else { MARGIN + INDENT };
        canvas.left(&text, TEXT, bold, Point::new(x, y));
        y -= LINE;
    }
    canvas.finish_marks();
    Sheet {
        name: "problems".to_owned(),
        title: heading(drawing, findings),
        description: sheets::PROBLEMS_DESCRIPTION.to_owned(),
        width: WIDTH,
        height,
        drawing: canvas.drawing,
    }
}

fn heading(drawing: &Drawing, findings: &[Finding]) -> String {
    let count = |s: Severity, word: &str| {
        let n = findings.iter().filter(|n| n.severity() == s).count();
        format!("{n} {word}{}", if n == 1 { "" } else { "s" })
    };
    format!(
        "{}, {}, {} in {}",
        count(Severity::Error, "error"),
        count(Severity::Warning, "warning"),
        count(Severity::Info, "remark"),
        drawing.name
    )
}

/// Where a finding stands: its own place, else the first point of the entity it is about.
fn place(drawing: &Drawing, finding: &Finding) -> Option<Point> {
    let of_entity = |o: &Origin| {
        let same = |i: &&Item| {
            let at = &i.origin;
            (at.line, at.entity, &at.handle) == (o.line, o.entity, &o.handle)
        };
        drawing.items.iter().find(same).and_then(|i| first_point(&i.shape))
    };
    finding.at.or_else(|| finding.origin.as_ref().and_then(of_entity)).filter(|p| p.is_finite())
}

fn first_point(shape: &Shape) -> Option<Point> {
    match shape {
        Shape::Polyline(p) => p.vertices.first().map(|v| v.at),
        Shape::Curve(path) => first_of(path),
        Shape::Hatch(h) => h.loops.first().and_then(first_of),
        Shape::Text(t) => Some(t.at),
        Shape::Dimension(d) => Some(d.from),
        Shape::Point(p) => Some(*p),
    }
}

fn first_of(path: &crate::geom::vocabulary::BezPath) -> Option<Point> {
    path.elements().first().and_then(|el| el.end_point())
}

/// What is seen of model space, each with its box; dimensions and points have nothing to draw.
fn shown(drawing: &Drawing) -> Vec<(&Item, Rect)> {
    let seen = drawing.items.iter().filter(|i| i.shown && i.space == Space::Model);
    let mut all: Vec<(&Item, Rect)> =
        seen.filter_map(|i| Some((i, extent(&i.shape)?))).filter(|(_, r)| r.is_finite()).collect();
    if all.len() > MOST_ITEMS {
        let mut sizes: Vec<f64> = all.iter().map(|(_, r)| size(r)).collect();
        sizes.sort_by(|a, b| b.total_cmp(a));
        let least = sizes[MOST_ITEMS];
        all.retain(|(_, r)| size(r) > least);
    }
    all
}

fn size(r: &Rect) -> f64 {
    r.width().max(r.height())
}

fn extent(shape: &Shape) -> Option<Rect> {
    match shape {
        Shape::Polyline(p) => {
            let first = p.vertices.first()?.at;
            let start = Rect::from_points(first, first);
            Some(p.vertices.iter().fold(start, |r, v| r.union_pt(v.at)))
        }
        Shape::Curve(path) => Some(path.bounding_box()),
        Shape::Hatch(h) => h.loops.iter().map(CurveShape::bounding_box).reduce(|a, b| a.union(b)),
        Shape::Text(t) => Some(Rect::from_points(t.at, t.at)),
        Shape::Dimension(_) | Shape::Point(_) => None,
    }
}

/// What the picture shows: all of it, or where things crowd if some lie far off.
fn window(items: &[(&Item, Rect)], found: &[Found]) -> Option<Rect> {
    let mut boxes: Vec<Rect> = items.iter().map(|i| i.1).collect();
    boxes.extend(found.iter().filter_map(|f| f.at).map(|p| Rect::from_points(p, p)));
    let whole = boxes.iter().copied().reduce(|a, b| a.union(b))?;
    let middle = |mut at: Vec<f64>| -> (f64, f64) {
        at.sort_by(f64::total_cmp);
        let part = at.len() / 20;
        (at[part], at[at.len() - 1 - part])
    };
    let (x0, x1) = middle(boxes.iter().flat_map(|r| [r.x0, r.x1]).collect());
    let (y0, y1) = middle(boxes.iter().flat_map(|r| [r.y0, r.y1]).collect());
    let core = Rect::new(x0, y0, x1, y1);
    let around = |r: Rect, share: f64| {
        let by = size(&r).max(1e-6) * share;
        r.inflate(by, by)
    };
    let far = whole.width() > SPREAD * core.width() || whole.height() > SPREAD * core.height();
    Some(if far && size(&core) > 0.0 { around(core, 0.25) } else { around(whole, 0.03) })
}

fn picture_of(canvas: &mut Canvas, items: &[(&Item, Rect)], window: Rect, map: Affine, k: f64) {
    canvas.rect(Ink::Rule, map.transform_rect_bbox(window));
    let inside = |r: &Rect| window.contains(r.origin()) && window.contains(Point::new(r.x1, r.y1));
    for (item, _) in items.iter().filter(|(_, r)| inside(r)) {
        match &item.shape {
            Shape::Polyline(p) => {
                let vertices =
                    p.vertices.iter().map(|v| Vertex { at: map * v.at, bulge: v.bulge }).collect();
                canvas.polyline(Ink::Source, Polyline { vertices, closed: p.closed });
            }
            Shape::Curve(path) => paths(canvas, path, map, k),
            Shape::Hatch(h) => h.loops.iter().for_each(|l| paths(canvas, l, map, k)),
            Shape::Text(t) => {
                // Text of a drawing is shown where it can be read, so that the place is known again.
                let height = t.height * k;
                if (0.04..0.5).contains(&height) {
                    let text = printable(&t.content);
                    let moved = crate::model::drawing::Text {
                        at: map * t.at,
                        height,
                        content: text,
                        ..t.clone()
                    };
                    canvas.faint(moved);
                }
            }
            Shape::Dimension(_) | Shape::Point(_) => {}
        }
    }
}

fn paths(canvas: &mut Canvas, path: &crate::geom::vocabulary::BezPath, map: Affine, k: f64) {
    for (points, closed) in path_points(path, (SAGITTA / k).max(0.005 / k)) {
        let line = Polyline::open(points.into_iter().map(|p| map * p));
        canvas.polyline(Ink::Source, Polyline { closed, ..line });
    }
}

/// A circle round each place, and the numbers of what was found there.
fn circles(canvas: &mut Canvas, found: &[Found], window: Rect, map: Affine) {
    let mut places: Vec<(Point, Vec<&Found>)> = Vec::new();
    for f in found {
        let all = f.at.iter().chain(&f.finding.also).filter(|p| window.contains(**p));
        for p in all.map(|p| map * *p) {
            match places.iter_mut().find(|(q, _)| q.distance(p) < RADIUS) {
                // Two of a kind at one place need its number once.
                Some((_, list)) if list.iter().any(|g| g.number == f.number) => {}
                Some((_, list)) => list.push(f),
                None => places.push((p, vec![f])),
            }
        }
    }
    for (p, list) in &places {
        let worst = list.iter().map(|f| f.finding.severity()).max().unwrap_or(Severity::Info);
        let v = |dx: f64| Vertex { at: Point::new(p.x + dx, p.y), bulge: 1.0 };
        canvas
            .polyline(ink(worst), Polyline { vertices: vec![v(RADIUS), v(-RADIUS)], closed: true });
    }
    for (p, list) in &places {
        let numbers: Vec<String> = list.iter().map(|f| f.number.to_string()).collect();
        let text = match &numbers[..] {
            [a, b, c, _, ..] => format!("{a}, {b}, {c} …"),
            few => few.join(", "),
        };
        let wish = Point::new(p.x, p.y + RADIUS + TEXT);
        let mark = Mark { text: &text, target: *p, wish, reach: 3.0, look: Look::Plain };
        if canvas.mark(mark).is_none() {
            canvas.on_ground(&text, TEXT, wish);
        }
    }
}

fn ink(severity: Severity) -> Ink {
    match severity {
        Severity::Error => Ink::Fault,
        Severity::Warning => Ink::Doubt,
        Severity::Info => Ink::Remark,
    }
}

/// The list under the picture, line by line, with whether it is bold.
fn listed(
    found: &[Found],
    window: Option<Rect>,
    all: usize,
    style: LengthStyle,
) -> Vec<(String, bool)> {
    let mut out = Vec::new();
    for f in found {
        let n = f.finding;
        let word = match n.severity() {
            Severity::Error => "ERROR",
            Severity::Warning => "warning",
            Severity::Info => "remark",
        };
        let place = match f.at {
            Some(p) if window.is_some_and(|w| w.contains(p)) => {
                format!(" at {:.3}, {:.3}", p.x, p.y)
            }
            Some(p) => sheets::outside_picture(p.x, p.y),
            None => sheets::NO_ONE_PLACE.to_owned(),
        };
        let entity = n.origin.as_ref().map_or(String::new(), |o| {
            let handle = o.handle.as_deref().map_or(String::new(), |h| format!(", handle {h}"));
            let line = if o.line == 0 { String::new() } else { format!(", line {}", o.line) };
            format!("; {} on layer {}{line}{handle}", o.entity, o.layer)
        });
        let also = match n.also.len() {
            0 => String::new(),
            more => format!("; {more} more {} circled", if more == 1 { "place" } else { "places" }),
        };
        out.push((format!("{}  {word} {}{place}{entity}{also}", f.number, n.code()), true));
        let FindingWords { message, help } = words(n, style);
        for text in [&message, &help] {
            out.extend(wrapped(text, TEXT, ROOM).into_iter().map(|l| (l, false)));
        }
    }
    if all > found.len() {
        out.push((sheets::more_in_check(all - found.len()), false));
    }
    if out.is_empty() {
        out.push((sheets::NOTHING_TO_REPORT.to_owned(), false));
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::drawing::{DrawingFinding, LooksLike};
    use crate::finding::house::HouseFinding;
    use crate::finding::lines::LineFinding;
    use crate::model::drawing::Pen;

    fn drawing() -> Drawing {
        let mut d = Drawing { name: "shed.dxf".to_owned(), ..Default::default() };
        let on = d.layer("front", Pen::default());
        let ring = [(0.0, 0.0), (200.0, 0.0), (200.0, 100.0), (0.0, 100.0)];
        d.draw(on, Shape::Polyline(Polyline::ring(ring.map(|(x, y)| Point::new(x, y)))));
        d
    }

    fn texts(s: &Sheet) -> Vec<String> {
        s.drawing
            .items
            .iter()
            .filter_map(|i| match &i.shape {
                Shape::Text(t) => Some(t.content.clone()),
                _ => None,
            })
            .collect()
    }

    #[test]
    fn a_finding_is_circled_where_it_is_and_listed_with_what_to_do() {
        let crosses = HouseFinding::WallCrosses { first: [0.0, 0.0], second: [1.0, 1.0] };
        let found = Finding::new(crosses).at(Point::new(200.0, 100.0));
        let s = problems(&drawing(), &[found], LengthStyle::Feet);
        let circle = s.drawing.items.iter().find(|i| {
            s.drawing.layers[i.layer].name == "faults" && matches!(i.shape, Shape::Polyline(_))
        });
        let Some(Shape::Polyline(c)) = circle.map(|i| &i.shape) else {
            unreachable!("no circle is drawn")
        };
        let middle = c.vertices[0].at.midpoint(c.vertices[1].at);
        // The wall's corner on the page: right end of a picture with 3 % of air at the long side.
        let scale = (WIDTH - 2.0 * MARGIN) / (200.0 * 1.06);
        assert!((middle.x - (MARGIN + 206.0 * scale)).abs() < 1e-9, "{middle:?}");
        let all = texts(&s).join("\n");
        assert!(all.contains("crosses itself") && all.contains("Redraw the outline"), "{all}");
        assert!(all.contains("1 error, 0 warnings, 0 remarks in shed.dxf"), "{all}");
    }

    #[test]
    fn a_stray_far_away_does_not_shrink_the_picture() {
        let mut d = drawing();
        for i in 0..60 {
            let y = f64::from(i);
            d.draw(0, Shape::Polyline(Polyline::line(Point::new(0.0, y), Point::new(200.0, y))));
        }
        let far = Point::new(1e8, 0.0);
        d.draw(0, Shape::Polyline(Polyline::line(far, far + (1.0, 0.0))));
        let found = Finding::new(HouseFinding::WallsOverlap { area: 1.0 }).at(far);
        let s = problems(&d, &[found], LengthStyle::Feet);
        let all = texts(&s).join("\n");
        assert!(all.contains("outside the picture"), "{all}");
        let widest = s
            .drawing
            .items
            .iter()
            .filter(|i| s.drawing.layers[i.layer].name == "source")
            .filter_map(|i| extent(&i.shape))
            .map(|r| r.width())
            .fold(0.0, f64::max);
        assert!(widest > 8.0, "the wall is only {widest} in wide on the page");
    }

    #[test]
    fn every_place_of_one_finding_is_circled_under_its_number() {
        let found = Finding::new(LineFinding::LineTwice { lines: 3 })
            .at(Point::new(10.0, 10.0))
            .also_at(vec![Point::new(190.0, 10.0), Point::new(10.0, 90.0)]);
        let s = problems(&drawing(), &[found], LengthStyle::Feet);
        let circles = s.drawing.items.iter().filter(|i| {
            s.drawing.layers[i.layer].name == "remarks" && matches!(i.shape, Shape::Polyline(_))
        });
        assert_eq!(circles.count(), 3);
        let all = texts(&s);
        assert_eq!(all.iter().filter(|t| *t == "1").count(), 3, "{all:?}");
        assert!(all.iter().any(|t| t.contains("2 more places circled")), "{all:?}");
    }

    #[test]
    fn without_a_drawing_the_list_stands_alone() {
        let no_drawing =
            DrawingFinding::NotDxf { name: "a".to_owned(), looks_like: LooksLike::Pdf };
        let s = problems(&Drawing::default(), &[Finding::new(no_drawing)], LengthStyle::Feet);
        assert!(texts(&s).join("\n").contains("looks like a PDF"));
        assert!(s.height > 1.0 && s.height < 4.0);
    }
}
