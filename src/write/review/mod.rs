//! The layout as one page for a browser, from a file that needs no network: elevations to come nearer to,
//! each piece with its cut, saw lists with boxes to tick. Without script everything is there to read.

mod drawing;
mod folded;
pub(super) mod html;
mod lists;

use crate::language::Language;
use std::fmt::Write;

use self::html::escaped;
use crate::layout::Layout;
use crate::layout::backdrop::Backdrops;
use crate::model::takeoff::Takeoff;
use crate::wording::{cautions, checks, review as words, siding};

/// How it looks.
const STYLE: &str = include_str!("page.css");
/// What it does.
pub(super) const SCRIPT: &str = concat!(include_str!("page.js"), include_str!("folded.js"));
/// Nothing is fetched, whatever stands in the page.
const POLICY: &str = "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/// The page of a layout.
pub fn page(layout: &Layout, takeoff: &Takeoff, backdrops: &Backdrops) -> String {
    let (name, stock) = (escaped(&layout.drawing.name), siding::piece(layout.job.product.kind));
    let mut out = format!(
        "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\
         <meta http-equiv=\"Content-Security-Policy\" content=\"{POLICY}\">\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\
         <title>{name}: {}</title><style>{STYLE}</style></head>\n<body data-key=\"{}\" data-none=\"{}\" data-also=\"{}\" data-alone=\"{}\" data-close=\"{}\" data-unkept=\"{}\">",
        words::TITLE,
        escaped(&layout.drawing.sha256),
        escaped(&words::no_mark(stock.en)),
        escaped(&words::also_gives(stock.en)),
        escaped(&words::gives_nothing_else(stock.en)),
        words::CLOSE,
        words::TICKS_NOT_KEPT,
    );
    out.push_str(&head(layout, &name));
    out.push_str("<main>");
    house(&mut out, layout);
    let pieces = lists::pieces(layout);
    for (i, e) in layout.elevations.iter().enumerate() {
        let _ = write!(out, "<section class=\"face\" id=\"e{i}\"><h2>{}</h2>", escaped(&e.name));
        let _ = write!(
            out,
            "<div class=\"tools\"><button type=\"button\" data-zoom=\"in\">{}</button><button type=\"button\" data-zoom=\"out\">{}</button><button type=\"button\" data-zoom=\"all\">{}</button></div>",
            words::NEARER,
            words::FARTHER,
            words::WHOLE
        );
        out.push_str(&drawing::picture(layout, backdrops, i));
        out.push_str("</section>");
        for w in layout.work.walls.iter().filter(|w| w.elevation == e.name) {
            out.push_str(&lists::of_wall(layout, w, &pieces));
        }
    }
    let _ = write!(
        out,
        "<section class=\"list\"><p class=\"script\">{}</p><p class=\"script\"><button type=\"button\" id=\"save\">{}</button></p>",
        words::TICKS_KEPT,
        words::SAVE_TICKS
    );
    out.push_str(&lists::panels(layout, &pieces));
    out.push_str(&lists::found(layout));
    out.push_str(&lists::order(layout, takeoff));
    let _ = write!(out, "<details open><summary>{}</summary><ul>", words::CAUTIONS);
    for said in cautions::all(layout.job.product.kind) {
        let _ = write!(out, "<li>{}</li>", escaped(said.en));
    }
    let _ = write!(
        out,
        "</ul><p>{}</p></details></section></main>",
        escaped(&cautions::notice(Language::English))
    );
    let _ = writeln!(
        out,
        "<aside id=\"told\" aria-live=\"polite\" hidden></aside><script>{SCRIPT}</script></body></html>"
    );
    out
}

/// Name and sums of the layout, the bar where its check failed, and what the page can be asked.
fn head(layout: &Layout, name: &str) -> String {
    let (walls, stock) =
        (layout.elevations.iter().flat_map(|e| &e.walls), siding::piece(layout.job.product.kind));
    let (count, net) = (walls.clone().count(), walls.map(|w| w.net_area).sum());
    let sum = escaped(&words::sum((layout.panels.len(), stock.en), count, net));
    let mut out = format!("<header><h1>{name}</h1><p>{sum}</p>");
    if !layout.verify.passes() {
        let _ = write!(
            out,
            "<p class=\"alarm\" role=\"alert\">{}</p>",
            escaped(&checks::bar(Language::English, layout.verify.places()))
        );
    }
    out.push_str("<form class=\"script\" id=\"ask\"><label>");
    let _ = write!(
        out,
        "{} <input id=\"find\" autocomplete=\"off\" autocapitalize=\"characters\" size=\"9\"></label><button>{}</button>",
        words::FIND,
        words::GO
    );
    let _ = write!(
        out,
        "<label>{} <select id=\"course\"><option value=\"\">{}</option>",
        words::COURSE,
        words::ALL_COURSES
    );
    let courses = layout.elevations.iter().flat_map(|e| &e.walls).flat_map(|w| &w.courses);
    let numbers: std::collections::BTreeSet<i32> = courses.map(|c| c.index + 1).collect();
    for c in numbers {
        let _ = write!(out, "<option>{c}</option>");
    }
    let _ = write!(out, "</select></label><label>{} <select id=\"look\">", words::LOOK);
    for (key, label) in words::LOOKS {
        let _ = write!(out, "<option value=\"{key}\">{label}</option>");
    }
    let _ = write!(out, "</select></label><fieldset><legend>{}</legend>", words::SHOW);
    for (class, label) in words::SWITCHES {
        let _ = write!(
            out,
            "<label><input type=\"checkbox\" checked data-show=\"{class}\"> {label}</label>"
        );
    }
    let _ = write!(
        out,
        "</fieldset></form><p class=\"script\">{}</p><p id=\"said\" role=\"status\"></p></header>",
        words::HOW_TO_MOVE
    );
    out
}

/// The house folded up, where corners join walls.
fn house(out: &mut String, layout: &Layout) {
    let stood = folded::stood(layout);
    if stood.iter().filter(|w| w.joined).count() < 2 {
        return;
    }
    let _ = write!(
        out,
        "<section class=\"script\"><h2>{}</h2><p>{}</p><div class=\"tools\"><button type=\"button\" data-turn=\"-15\">{}</button><button type=\"button\" data-turn=\"15\">{}</button></div><canvas id=\"folded\" tabindex=\"0\" role=\"img\" aria-label=\"{}\"></canvas><script type=\"application/json\" id=\"stood\">{}</script></section>",
        words::FOLDED,
        words::FOLDED_SAID,
        words::TURN_LEFT,
        words::TURN_RIGHT,
        words::FOLDED_LABEL,
        super::json::compact(&stood).replace('<', "\\u003c")
    );
}
