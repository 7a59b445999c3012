//! The drawing in gray with each finding circled, numbered by what it is about, and the list of them below: two pages
//! at most.

mod circles;
mod groups;
mod list;
mod rulers;

use std::collections::BTreeSet;

use self::circles::{circles, marks};
use self::groups::{Marked, grouped};
use self::list::{BETWEEN, COLUMN, Line, MARGIN, WIDTH, listed};
use super::canvas::{Canvas, fitted, printable};
use super::style::{Ink, TEXT, TITLE};
use crate::finding::{Finding, Severity};
use crate::geom::flatten::{SAGITTA, path_points};
use crate::geom::vocabulary::{Affine, CurveShape, Point, Rect};
use crate::model::drawing::{Drawing, Item, Polyline, Shape, Space, Vertex};
use crate::model::sheet::Sheet;
use crate::origin::Origin;
use crate::units::LengthStyle;
use crate::wording::problems as heads;

/// Greatest height of the picture, inches.
const TALLEST: f64 = 14.0;
/// Most items drawn, the largest first: a picture of more would open in no viewer.
const MOST_ITEMS: usize = 30_000;
/// How many times wider than its crowded middle a drawing may be before what lies far off is left
/// out of the picture.
const SPREAD: f64 = 8.0;
/// Greatest height of it all, inches: two pages of the width, lying.
const HIGHEST: f64 = 22.0;
/// Pitch of lines of text, inches.
const LINE: f64 = TEXT * 1.75;

/// The findings on the drawing as read. Total: without a drawing there is the list alone. Layers that are
/// off are drawn where they are among those `read`, by their indices.
pub fn problems(
    drawing: &Drawing,
    read: &BTreeSet<usize>,
    findings: &[Finding],
    style: LengthStyle,
) -> Sheet {
    let groups = grouped(findings);
    let place_of = |f: &Finding| place(drawing, f);
    let found: Vec<Marked> = groups.iter().flat_map(|g| g.kinds(place_of)).collect();
    let items: Vec<(&Item, Rect)> = pictured(drawing, read);
    let window = window(&items, &found);
    let scale = window.map_or(1.0, |w| {
        let across = (WIDTH - 2.0 * MARGIN) / w.width();
        across.min(TALLEST / w.height())
    });
    let picture = window.map_or(0.0, |w| w.height() * scale);
    let above = 2.0 * MARGIN + 0.9 + picture + 2.0 * LINE;
    let most = (((HIGHEST - above) / LINE).floor() as usize).max(10);
    let columns = listed(&groups, (window, style), place_of, most);
    let longest = columns.iter().map(Vec::len).max().unwrap_or(0);
    let height = above + LINE * longest as f64;
    let mut canvas = Canvas::new(Rect::new(0.0, 0.0, WIDTH, height));
    let top = height - MARGIN;
    let title = fitted(&heading(drawing, findings), TITLE, true, WIDTH - 2.0 * MARGIN);
    canvas.left(&title, TITLE, true, Point::new(MARGIN, top - 0.1));
    canvas.left(heads::KEY, TEXT, false, Point::new(MARGIN, top - 0.4));
    let y = top - 0.9 - picture - LINE;
    write_list(&mut canvas, columns, y);
    if let Some(w) = window {
        let map = Affine::translate((MARGIN, top - 0.7 - picture))
            * Affine::scale(scale)
            * Affine::translate(-w.origin().to_vec2());
        picture_of(&mut canvas, &items, w, map, scale);
        let places = circles(&mut canvas, &found, w, map);
        rulers::rulers(&mut canvas, w, map, scale);
        marks(&mut canvas, &places);
    }
    canvas.finish_marks();
    Sheet {
        full_size: false,
        name: "problems".to_owned(),
        title: heading(drawing, findings),
        description: heads::DESCRIPTION.to_owned(),
        width: WIDTH,
        height,
        drawing: canvas.drawing,
    }
}

/// Writes the list, column by column, from the height `top` down.
fn write_list(canvas: &mut Canvas, columns: Vec<Vec<Line>>, top: f64) {
    for (i, column) in columns.into_iter().enumerate() {
        let left = MARGIN + i as f64 * (COLUMN + BETWEEN);
        for (k, Line { text, bold, indent }) in column.into_iter().enumerate() {
            canvas.left(&text, TEXT, bold, Point::new(left + indent, top - k as f64 * LINE));
        }
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
pub fn place(drawing: &Drawing, finding: &Finding) -> Option<Point> {
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

/// What is shown of the drawing, each with its box: the largest alone where there is more than a picture holds.
fn pictured<'a>(drawing: &'a Drawing, read: &BTreeSet<usize>) -> Vec<(&'a Item, Rect)> {
    let mut all = shown(drawing, read);
    if all.len() > MOST_ITEMS {
        let mut sizes: Vec<f64> = all.iter().map(|(_, r)| size(r)).collect();
        sizes.sort_by(|a, b| b.total_cmp(a));
        let least = sizes[MOST_ITEMS];
        all.retain(|(_, r)| size(r) > least);
    }
    all
}

/// What is seen of model space, and what is read of it though its layer is off, each with its box;
/// dimensions and points have nothing to draw.
pub fn shown<'a>(drawing: &'a Drawing, read: &BTreeSet<usize>) -> Vec<(&'a Item, Rect)> {
    let is_off = |i: &Item| drawing.layers.get(i.layer).is_some_and(|l| !l.shown);
    let is_read = |i: &Item| is_off(i) && read.contains(&i.layer);
    let model = drawing.items.iter().filter(|i| i.space == Space::Model);
    let seen = model.filter(|i| i.shown || is_read(i));
    seen.filter_map(|i| Some((i, extent(&i.shape)?))).filter(|(_, r)| r.is_finite()).collect()
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
fn window(items: &[(&Item, Rect)], found: &[Marked]) -> Option<Rect> {
    let mut boxes: Vec<Rect> = items.iter().map(|i| i.1).collect();
    boxes.extend(found.iter().flat_map(|f| &f.places).map(|p| Rect::from_points(*p, *p)));
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
        let s = problems(&drawing(), &BTreeSet::new(), &[found], LengthStyle::Feet);
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
    fn rulers_tell_places_in_drawing_units() {
        // 212 by 112 units with the air round the wall, 16 in wide on the page: 13.25 units an inch, so that
        // figures stand 20 units apart.
        let s = problems(&drawing(), &BTreeSet::new(), &[], LengthStyle::Feet);
        let scale = (WIDTH - 2.0 * MARGIN) / 212.0;
        let placed = |words: &str| -> Vec<Point> {
            let all = s.drawing.items.iter().filter_map(|i| match &i.shape {
                Shape::Text(t) if t.content == words => Some(t.at),
                _ => None,
            });
            all.collect()
        };
        for x in [20.0, 120.0, 200.0] {
            let at = MARGIN + (x + 6.0) * scale;
            let found = placed(&format!("{x}"));
            assert!(found.iter().any(|p| (p.x - at).abs() < 1e-6), "{x}: {found:?} for {at}");
        }
        // At the left side those of heights: the foot's own and one more.
        assert_eq!(placed("20").len(), 2);
        assert_eq!(placed("120").len(), 1);
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
        let found =
            Finding::new(HouseFinding::WallsOverlap { area: 1.0, walls: Vec::new() }).at(far);
        let s = problems(&d, &BTreeSet::new(), &[found], LengthStyle::Feet);
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
        let s = problems(&drawing(), &BTreeSet::new(), &[found], LengthStyle::Feet);
        let circles = s.drawing.items.iter().filter(|i| {
            s.drawing.layers[i.layer].name == "remarks" && matches!(i.shape, Shape::Polyline(_))
        });
        assert_eq!(circles.count(), 3);
        let all = texts(&s);
        assert_eq!(all.iter().filter(|t| *t == "1").count(), 3, "{all:?}");
        assert!(all.iter().any(|t| t.contains("2 more places circled")), "{all:?}");
    }

    #[test]
    fn findings_of_one_kind_have_one_number_and_all_of_it_two_pages() {
        let (on, mut all) = (drawing(), Vec::new());
        for i in 0..60 {
            let area = f64::from(i);
            let overlap = HouseFinding::WallsOverlap { area, walls: Vec::new() };
            let at = Point::new(3.0 * area, 50.0);
            all.push(Finding::new(overlap).at(at));
            all.push(Finding::new(LineFinding::LineTwice { lines: 2 }).at(at + (0.0, 20.0)));
        }
        let s = problems(&on, &BTreeSet::new(), &all, LengthStyle::Feet);
        assert!(s.height <= HIGHEST, "{}", s.height);
        let said = texts(&s);
        assert!(said.iter().any(|t| t.contains("59 more places circled")), "{said:?}");
        assert!(said.iter().all(|t| !t.starts_with("3  ")), "{said:?}");
        // No number stands on another.
        let numbers: Vec<Rect> = s
            .drawing
            .items
            .iter()
            .filter_map(|i| match &i.shape {
                Shape::Text(t) if t.content == "1" || t.content == "2" => {
                    Some(Rect::from_center_size(t.at, (0.05, 0.09)))
                }
                _ => None,
            })
            .collect();
        assert!(numbers.len() > 20, "{}", numbers.len());
        for (i, a) in numbers.iter().enumerate() {
            assert!(numbers[i + 1..].iter().all(|b| !a.overlaps(*b)), "{a:?}");
        }
    }

    #[test]
    fn a_layer_that_is_off_is_drawn_where_it_is_read() {
        let mut d = drawing();
        let layer = d.layer("OFF", Pen::default());
        d.layers[layer].shown = false;
        d.draw(layer, Shape::Polyline(Polyline::line(Point::new(5.0, 5.0), Point::new(9.0, 9.0))));
        if let Some(item) = d.items.last_mut() {
            item.shown = false;
        }
        let lines = |read: &BTreeSet<usize>| {
            let s = problems(&d, read, &[], LengthStyle::Feet);
            let gray = |i: &&Item| s.drawing.layers[i.layer].name == "source";
            s.drawing.items.iter().filter(gray).count()
        };
        assert_eq!(lines(&BTreeSet::from([layer])), lines(&BTreeSet::new()) + 1);
    }

    #[test]
    fn without_a_drawing_the_list_stands_alone() {
        let no_drawing =
            DrawingFinding::NotDxf { name: "a".to_owned(), looks_like: LooksLike::Pdf };
        let s = problems(
            &Drawing::default(),
            &BTreeSet::new(),
            &[Finding::new(no_drawing)],
            LengthStyle::Feet,
        );
        assert!(texts(&s).join("\n").contains("looks like a PDF"));
        assert!(s.height > 1.0 && s.height < 4.0);
    }
}
