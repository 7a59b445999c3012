//! Lists of the page: what is cut for each wall, panels, findings, the order.

use crate::language::Language;
use std::collections::BTreeMap;
use std::fmt::Write;

use super::drawing::Frame;
use super::html::escaped;
use crate::finding::{Finding, Severity, gathered};
use crate::geom::vocabulary::Affine;
use crate::layout::Layout;
use crate::layout::course::LaidCourse;
use crate::layout::piece::Piece;
use crate::model::takeoff::Takeoff;
use crate::model::work::WallWork;
use crate::units::LengthStyle;
use crate::wording::findings;
use crate::wording::lists::commas;
use crate::wording::sheet_lengths::length;
use crate::wording::takeoff::basis::basis;
use crate::wording::takeoff::items;
use crate::wording::{cuts, review as words, siding, wall_sheets, work};

/// Pieces by their marks, each with its course.
pub(super) type Pieces<'a> = BTreeMap<&'a str, (&'a LaidCourse, &'a Piece)>;

pub(super) fn pieces(layout: &Layout) -> Pieces<'_> {
    let walls = layout.elevations.iter().flat_map(|e| &e.walls);
    let courses = walls.flat_map(|w| &w.courses);
    let all =
        courses.flat_map(|c| c.runs.iter().flat_map(move |r| r.pieces.iter().map(move |p| (c, p))));
    all.map(|(c, p)| (p.mark.as_str(), (c, p))).collect()
}

/// A button that shows a piece.
fn shows(mark: &str) -> String {
    let mark = escaped(mark);
    format!("<button type=\"button\" class=\"mark\" data-go=\"{mark}\">{mark}</button>")
}

/// What is cut for a wall, with boxes to tick, and the order of its work.
pub(super) fn of_wall(layout: &Layout, wall: &WallWork, pieces: &Pieces) -> String {
    let style = layout.job.sheet.lengths;
    let name = escaped(&wall.wall);
    let mut out = format!(
        "<section class=\"list\" id=\"w-{name}\"><h3>{} {name}</h3>",
        wall_sheets::SAW_LIST.en
    );
    out.push_str(&to_open(wall));
    out.push_str("<table><thead><tr>");
    for head in words::SAW_HEADS {
        let _ = write!(out, "<th scope=\"col\">{head}</th>");
    }
    out.push_str("</tr></thead>");
    for batch in &wall.saw.batches {
        let told = length(style, style.to_cut(batch.length));
        let head = wall_sheets::batch(Language::English, batch.pieces.len(), &told);
        let _ = write!(
            out,
            "<tbody><tr><th scope=\"rowgroup\" colspan=\"4\">{}</th></tr>",
            escaped(&head)
        );
        for p in &batch.pieces {
            out.push_str(&row(layout, &p.mark, &p.panel, pieces));
        }
        out.push_str("</tbody>");
    }
    out.push_str("</table>");
    let _ = write!(out, "<details><summary>{}</summary><ol>", words::STEPS);
    for step in work::steps(Language::English, wall, style) {
        let _ = write!(out, "<li>{}</li>", escaped(&step));
    }
    out + "</ol></details></section>"
}

/// Panels to open, offcuts to fetch, offcuts to lay aside.
fn to_open(wall: &WallWork) -> String {
    let list = |head: &str, all: Vec<String>| match all.is_empty() {
        true => String::new(),
        false => format!("<p><b>{head}</b> {}</p>", escaped(&commas(&all))),
    };
    let opened: Vec<String> = wall.saw.opened.iter().map(|p| p.to_string()).collect();
    let taken = wall
        .saw
        .taken
        .iter()
        .map(|t| wall_sheets::panels_of(Language::English, &t.panel, &t.opened_at))
        .collect();
    let aside = wall
        .saw
        .laid_aside
        .iter()
        .map(|a| wall_sheets::panels_of(Language::English, &a.panel, &a.wanted_at))
        .collect();
    list(wall_sheets::OPEN.en, opened)
        + &list(wall_sheets::OFFCUTS_FROM.en, taken)
        + &list(wall_sheets::LAY_ASIDE.en, aside)
}

/// A piece of a saw list: what is done to it, its panel, its boxes.
fn row(layout: &Layout, mark: &str, panel: &str, pieces: &Pieces) -> String {
    let style = layout.job.sheet.lengths;
    let done = pieces.get(mark).map_or(Vec::new(), |(course, p)| {
        cuts::piece(
            Language::English,
            p,
            course,
            &layout.job.product,
            ((false, false), false),
            style,
        )
    });
    let cell = |what: &str, label: &str| {
        let mark = escaped(mark);
        format!(
            "<td class=\"box\"><input type=\"checkbox\" data-tick=\"{what}\" data-of=\"{mark}\" aria-label=\"{mark}: {label}\"></td>"
        )
    };
    let [_, _, cut, hung] = words::SAW_HEADS;
    let (boxes, panel) = (cell("cut", cut) + &cell("hung", hung), escaped(panel));
    format!(
        "<tr id=\"r-{}\"><td>{} <span class=\"cut\">{}</span></td><td><a href=\"#{panel}\">{panel}</a></td>{boxes}</tr>",
        escaped(mark),
        shows(mark),
        escaped(&done.join("; ")),
    )
}

/// Every panel with the pieces it gives.
pub(super) fn panels(layout: &Layout, pieces: &Pieces) -> String {
    let style = layout.job.sheet.lengths;
    let told = |mark: &str| {
        let of = |p: &Piece| length(style, style.to_cut(p.length));
        let length = pieces.get(mark).map_or(String::new(), |(_, p)| of(p));
        format!("{} {}", shows(mark), escaped(&length))
    };
    let mut out = format!(
        "<details><summary>{}</summary><ul class=\"panels\">",
        words::stock_gives(siding::piece(layout.job.product.kind).en)
    );
    for p in &layout.panels {
        let id = escaped(&p.id);
        let given: Vec<String> = p.pieces.iter().map(|m| told(m)).collect();
        let left = escaped(&words::left_over(&length(style, style.to_cut(p.offcut))));
        let _ = write!(
            out,
            "<li id=\"{id}\" data-panel=\"{id}\"><button type=\"button\" class=\"mark\" data-panel-go=\"{id}\">{id}</button> {}: {}; {left}</li>",
            escaped(&length(style, p.stock)),
            given.join(", ")
        );
    }
    out + "</ul></details>"
}

/// Everything found, what is about one subject together, worst first, each with its place.
pub(super) fn found(layout: &Layout) -> String {
    let style = layout.job.sheet.lengths;
    let one = |f: &&Finding| {
        let said = findings::words(f, style);
        let (place, code) = (place(layout, f), f.code());
        let (message, help) = (escaped(&said.message), escaped(&said.help));
        let rank = rank(f.severity());
        format!("<li class=\"s{rank}\">{place}{message} <i>{help} ({code})</i></li>")
    };
    let mut out =
        format!("<details open><summary>{}</summary><ul class=\"found\">", words::FINDINGS);
    for group in gathered(&layout.findings) {
        let all: String = group.kinds.iter().flat_map(|k| k.all()).map(one).collect();
        if group.kinds.len() == 1 {
            out.push_str(&all);
            continue;
        }
        let head = escaped(&findings::head(&group, "note"));
        let _ = write!(
            out,
            "<li class=\"about s{}\"><b>{head}</b><ul>{all}</ul></li>",
            rank(group.severity())
        );
    }
    out + "</ul></details>"
}

/// How the page marks it, the worst being 0.
fn rank(severity: Severity) -> u8 {
    match severity {
        Severity::Error => 0,
        Severity::Warning => 1,
        Severity::Info => 2,
    }
}

/// A button that shows where something was found, if that is on an elevation.
fn place(layout: &Layout, f: &Finding) -> String {
    let on = f
        .elevation
        .as_ref()
        .and_then(|name| layout.elevations.iter().enumerate().find(|(_, e)| e.name == *name));
    let (Some((i, e)), Some(at)) = (on, f.at) else { return String::new() };
    let p = Affine::new(e.to_source).inverse() * at;
    let (x, y) = Frame::of(e).at(&[p.x, p.y]);
    format!(
        "<button type=\"button\" class=\"mark\" data-view=\"e{i}\" data-x=\"{x}\" data-y=\"{y}\">{}</button> ",
        words::SHOW_IT
    )
}

/// What to buy, and why so much.
pub(super) fn order(layout: &Layout, takeoff: &Takeoff) -> String {
    let style: LengthStyle = layout.job.sheet.lengths;
    let mut out = format!("<details><summary>{}</summary><table><thead><tr>", words::TAKEOFF);
    for head in words::TAKEOFF_HEADS {
        let _ = write!(out, "<th scope=\"col\">{head}</th>");
    }
    out.push_str("</tr></thead><tbody>");
    for l in &takeoff.lines {
        let _ = write!(
            out,
            "<tr><td>{}</td><td>{}</td><td>{}</td><td>{}</td></tr>",
            escaped(&items::item(Language::English, &l.item, style)),
            (l.order * 100.0).round() / 100.0,
            escaped(items::unit(l.unit).en),
            escaped(&basis(l, &layout.job, &layout.bound)),
        );
    }
    out + "</tbody></table></details>"
}
