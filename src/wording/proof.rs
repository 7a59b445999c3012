//! How few panels there can be, in sentences.

use std::cmp::Ordering;

use crate::job::Job;
use crate::layout::bound::{Bound, BoundMethod, KeptLeast};
use crate::model::item::SidingPiece;
use crate::model::seam::{Dual, Exclusion, MixedProof, ON_JAMB, StockShare};
use crate::units::{counted, inches_fraction};
use crate::wording::lists::joined;
use crate::wording::takeoff::items::pieces;

/// The panel count and its proof.
pub fn panels(bound: &Bound, job: &Job) -> String {
    let laid = bound.certificate.panels;
    let mut out = match &bound.certificate.mixed {
        None => format!("{}; {}.", pieces(laid, siding_piece(job)), least(bound, job)),
        Some(proof) => {
            let style = job.sheet.lengths;
            let each =
                proof.stocks.iter().map(|s| format!("{} of {}", s.panels, style.length(s.length)));
            let each: Vec<String> = each.collect();
            let sum = if costs(bound) { "costing as much as" } else { "together" };
            // Halves in use are bought once: the takeoff says how many cartons then.
            let cartons = match bound.reuse {
                None => format!(
                    ", in whole cartons with spare ones {}",
                    weighed(proof, proof.bought, bound, job)
                ),
                Some(_) => String::new(),
            };
            format!(
                "{}, {}, {sum} {}{cartons}; {}.",
                pieces(laid, siding_piece(job)),
                joined(&each),
                weighed(proof, proof.weight, bound, job),
                least(bound, job)
            )
        }
    };
    if let Some(reuse) = &bound.reuse {
        let piece = siding_piece(job);
        out.push_str(&format!(
            " Reuse takes {} less: {} are cut, {} of them for two courses.",
            pieces(reuse.saved, piece),
            pieces(reuse.cut, piece),
            reuse.saved
        ));
    }
    out
}

/// How few any layout could use, without a full stop.
pub fn least(bound: &Bound, job: &Job) -> String {
    let certificate = &bound.certificate;
    let reuse = match bound.reuse {
        Some(_) => " and without reuse of ripped halves",
        None => "",
    };
    match &certificate.mixed {
        None => {
            let than = match certificate.proven {
                true => String::new(),
                false => format!(" than {}", certificate.bound),
            };
            format!("no layout under these rules{reuse} can use fewer{than}")
        }
        Some(proof) => {
            let verb = if costs(bound) { "cut panels that cost" } else { "cut up" };
            let than = match certificate.proven {
                true => String::new(),
                false => format!(" than {}", weighed(proof, proof.bound, bound, job)),
            };
            let lengths = number(proof.stocks.len());
            format!(
                "no layout with these {lengths} lengths under these rules{reuse} can {verb} less{than}"
            )
        }
    }
}

/// How the bound was found and what it leaves out.
pub fn method(bound: &Bound, job: &Job) -> String {
    format!(
        "The bound is by {}. It leaves out {}.",
        functions(&bound.method, job),
        exclusions(&bound.excludes, job)
    )
}

/// What others would take: a crew and net area, and one stock length alone where lengths are mixed.
pub fn beside(bound: &Bound, job: &Job) -> String {
    let (style, waste) = (job.sheet.lengths, job.takeoff.area_waste);
    let Some(proof) = &bound.certificate.mixed else {
        let each = bound.each_elevation.map_or(String::new(), |n| {
            format!(" Each elevation by itself, no offcut carried over, takes {n}.")
        });
        return format!(
            "Starting each run with the last offcut takes {}.{each} Net area and {waste} % would buy {}.",
            bound.crew, bound.by_area
        );
    };
    let alone: Vec<String> = proof.stocks.iter().map(|s| alone(s, proof, bound, job)).collect();
    let crew = proof.stocks.iter().map(|s| format!("{} of {}", s.crew, style.length(s.length)));
    let crew: Vec<String> = crew.collect();
    let each = bound.each_elevation.map_or(String::new(), |weight| {
        let weighed = weighed(proof, weight, bound, job);
        format!(" Each elevation by itself, no offcut carried over: {weighed}.")
    });
    format!(
        "With one length: {}. Starting each run with the last offcut: {}.{each} Net area and {waste} %: {} of {}.",
        alone.join("; "),
        crew.join(", or "),
        bound.by_area,
        first_length(proof, job)
    )
}

fn alone(stock: &StockShare, proof: &MixedProof, bound: &Bound, job: &Job) -> String {
    let length = job.sheet.lengths.length(stock.length);
    match stock.alone {
        Some(n) => {
            let weight = i64::try_from(n).unwrap_or(i64::MAX).saturating_mul(stock.weight);
            let cartons = stock.alone_bought.map_or(String::new(), |w| {
                format!(", in whole cartons {}", weighed(proof, w, bound, job))
            });
            format!("{n} of {length} alone, {}{cartons}", weighed(proof, weight, bound, job))
        }
        None => format!("{length} alone keeps not every rule"),
    }
}

/// Where seams stand beside openings and one another; none where there are no seams.
pub fn seam_places(bound: &Bound, job: &Job) -> Option<String> {
    let (seams, style) = (&bound.seams, job.sheet.lengths);
    if seams.seams == 0 {
        return None;
    }
    let (at, least) = (seams.at_openings, seams.least);
    let wish = style.short(job.seams.jamb);
    let of = |n: usize, least: Option<usize>, in_turn: Option<(usize, &str)>| match (least, in_turn)
    {
        (Some(least), _) if least == n => format!("{n}, the fewest possible"),
        (_, Some((least, so_few))) if least == n => format!("{n}, the fewest possible {so_few}"),
        // A bound of nothing bounds nothing.
        (_, Some((0, _))) | (Some(0), None) => format!("{n}, not proven the fewest"),
        (_, Some((least, so_few))) => format!("{n}, no layout {so_few} has fewer than {least}"),
        (Some(least), None) => format!("{n}, no layout of these courses has fewer than {least}"),
        (None, None) => n.to_string(),
    };
    // What comes later in turn holds where no more are of the sorts before it.
    let turn = seams.least_in_turn;
    let on_jambs = turn.filter(|t| t.in_notches == at.in_notches);
    let near_jambs = on_jambs.filter(|t| t.on_jambs == at.on_jambs);
    Some(format!(
        "{}. In a notch over a head or under a sill, or within {wish} of one: {}. Within {} of a jamb line: {}; within {wish}: {}. Stair-steps of three: {}; in one line: {}.",
        counted(seams.seams, if job.siding().joints.is_on_studs() { "joint" } else { "seam" }),
        of(at.in_notches, least.map(|l| l.in_notches), None),
        style.short(ON_JAMB),
        of(
            at.on_jambs,
            least.map(|l| l.on_jambs),
            on_jambs.map(|t| (t.on_jambs, "with so few in notches"))
        ),
        of(
            at.near_jambs,
            least.map(|l| l.near_jambs),
            near_jambs.map(|t| (t.near_jambs, "with so few of those before"))
        ),
        seams.stairs,
        seams.ladders
    ))
}

/// What the other policy for runs that one panel covers would take.
pub fn other_policy(bound: &Bound, job: &Job) -> Option<String> {
    let other = bound.other_policy?;
    let condition = "If runs that one panel covers might have a seam too";
    Some(match bound.best.saturating_sub(other) {
        0 => format!("{condition}, no fewer panels were found to do."),
        fewer => {
            let panels = pieces(other, siding_piece(job));
            format!("{condition}, {panels} would do: {fewer} fewer.")
        }
    })
}

/// What evening the courses of boards costs or would cost.
pub fn other_courses(bound: &Bound, job: &Job) -> Option<String> {
    let (these, other) = (bound.best, bound.other_courses?);
    let exposure = job.sheet.lengths.short(job.product.exposure);
    let boards = |n: usize| pieces(n, siding_piece(job));
    Some(match (job.boards.even, these.cmp(&other)) {
        (true, Ordering::Greater) => format!(
            "Courses are evened: {} more than the {} that courses of {exposure} all the way up take (`boards.even = false`).",
            boards(these - other),
            boards(other)
        ),
        (true, _) => format!(
            "Courses are evened: that costs no board; courses of {exposure} all the way up take {}.",
            boards(other)
        ),
        (false, Ordering::Less) => format!(
            "Courses are {exposure} all the way up: evened between sills, heads and tops they would take {}, {} more (`boards.even = true`).",
            boards(other),
            other - these
        ),
        (false, _) => format!(
            "Courses are {exposure} all the way up: evened between sills, heads and tops they would take {}, no more (`boards.even = true`).",
            boards(other)
        ),
    })
}

fn siding_piece(job: &Job) -> SidingPiece {
    job.product.kind.piece()
}

/// Whether cost is kept least, not length.
fn costs(bound: &Bound) -> bool {
    bound.kept_least == KeptLeast::Cost
}

fn first_length(proof: &MixedProof, job: &Job) -> String {
    job.sheet.lengths.length(proof.stocks.first().map_or(0.0, |s| s.length))
}

/// How many lengths.
fn number(lengths: usize) -> String {
    const NUMBERS: [&str; 7] = ["two", "three", "four", "five", "six", "seven", "eight"];
    let word = lengths.checked_sub(2).and_then(|i| NUMBERS.get(i));
    word.map_or_else(|| lengths.to_string(), |word| (*word).to_owned())
}

/// A weight as a length, or as panels of the first length.
fn weighed(proof: &MixedProof, weight: i64, bound: &Bound, job: &Job) -> String {
    let style = job.sheet.lengths;
    let Some(first) = proof.stocks.first() else { return String::new() };
    let panels = weight as f64 / first.weight.max(1) as f64;
    if costs(bound) {
        format!("{} panels of {}", (panels * 100.0).round() / 100.0, style.length(first.length))
    } else {
        style.length(panels * first.length)
    }
}

/// The functions a bound was found by.
pub fn functions(method: &BoundMethod, job: &Job) -> String {
    match method {
        BoundMethod::One { function: f } => function(*f, job),
        BoundMethod::Prices { prices } => format!(
            "{} of pieces: nothing that one panel can give, one left and one right end piece at most, is worth more than a panel (Gilmore and Gomory 1961)",
            counted(*prices, "price")
        ),
        BoundMethod::Mixed { functions } => {
            let each = functions.iter().enumerate();
            let each = each.map(|(i, f)| format!("{} of {}", function(*f, job), ordinal(i)));
            each.collect::<Vec<_>>().join(" and ")
        }
    }
}

/// One of the stock lengths.
fn ordinal(place: usize) -> String {
    match place {
        0 => "the first length".to_owned(),
        1 => "the second".to_owned(),
        n => format!("length {}", n + 1),
    }
}

fn function(dual: Dual, job: &Job) -> String {
    let inches = |e: i64| inches_fraction(e as f64 / job.steps() as f64);
    let of = "(Fekete and Schepers 2001)";
    match dual {
        Dual::Length => {
            format!(
                "total length over {} length",
                crate::wording::takeoff::items::piece(siding_piece(job))
            )
        }
        Dual::Rounded(k) => format!("dual-feasible function u^{k} {of}"),
        Dual::Clipped(e) => format!("dual-feasible function U^e with e = {} {of}", inches(e)),
        Dual::Counted(e) => format!("dual-feasible function phi^e with e = {} {of}", inches(e)),
    }
}

/// What a bound leaves out.
pub fn exclusions(list: &[Exclusion], job: &Job) -> String {
    let one = |e: &Exclusion| match e {
        Exclusion::SeamPlaces => "stagger and jamb wishes, which could only raise it".to_owned(),
        Exclusion::JointsOnStuds => {
            "joints on studs and off the studs of near courses, which could only raise it"
                .to_owned()
        }
        Exclusion::OffcutsWaiting => {
            "how many offcuts may wait, which could only raise it".to_owned()
        }
        Exclusion::RippedHalves => "reuse of the other half of ripped courses".to_owned(),
        Exclusion::ReusedHalves { saved } => format!(
            "reuse of ripped halves, by which this layout takes {} less than it counts; another might take less still",
            pieces(*saved, siding_piece(job))
        ),
    };
    list.iter().map(one).collect::<Vec<_>>().join("; ")
}
