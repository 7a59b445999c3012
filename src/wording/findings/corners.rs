//! Of corners, and of walls that a job gives.

use super::finding_words::FindingWords;
use super::parts::listed;
use crate::finding::corners::{AngledFault, CornerFinding, HeightOn, ReturnFault, TakenSetBack};
use crate::model::corner::CornerKind;
use crate::model::ids::{CornerId, OpeningId, WallId};
use crate::units::LengthStyle;
use crate::wording::corners;
use crate::wording::lists::joined;

const CORRECT_NAME: &str = "Correct the name in the job file.";

pub(super) fn words(found: &CornerFinding, style: LengthStyle) -> FindingWords {
    use CornerFinding as F;
    match found {
        F::ReturnNotDrawn { corner, only_elevation: true, others, .. } => {
            only_elevation(corner, others, style)
        }
        F::ReturnNotDrawn { corner, turns, tag, height, only_elevation: false, others } => {
            let words =
                return_not_drawn(corner, *turns, tag.as_deref(), &style.length(*height), style);
            if others.is_empty() { words } else { at_break(corner, others, style) }
        }
        F::SetBackTaken { taken, boards } => set_backs(taken, *boards, style),
        F::PostAngle { corner, turns, angle } => post_angle(corner, *turns, *angle),
        F::WallBehindPosts { wall, width } => FindingWords::new(
            format!(
                "{wall} is {} wide: what stands in its corners covers it, and no siding goes there",
                style.short(*width)
            ),
            "Check that corner trim closes the wall; `lapwright explain wall-behind-posts`.",
        ),
        F::CornerHeightsDisagree { corner, tops, bottoms, .. } => {
            heights_disagree(corner, tops.as_ref(), bottoms.as_ref(), style)
        }
        F::ReturnCornerUnknown { named, fault } => return_corner(named, fault),
        F::AngledUnknown { named, fault } => angled_unknown(named, fault),
        F::AngledNarrow { wall, given, drawn } => FindingWords::new(
            format!(
                "the true width of {wall} is given as {}, but it is drawn {} wide: a wall at an angle is drawn short, never long",
                style.length(*given),
                style.length(*drawn)
            ),
            "Take the width from the plan, along the wall.",
        ),
        F::AngledOutside { opening, wall, left, right } => {
            angled_outside(opening, wall, &style.length(*left), &style.length(*right))
        }
        F::AngledZone { wall, zone } => FindingWords::new(
            format!(
                "the zone {zone} lies on {wall}, which the job gives a true width: siding of its own, and a zone that goes on past the wall, cannot be widened with it"
            ),
            "Draw the wall at its true width as a view of its own, or take it out of the zone.",
        ),
    }
}

/// A corner that is not square.
fn post_angle(corner: &CornerId, turns: CornerKind, angle: Option<f64>) -> FindingWords {
    let turns = corners::kind(turns).en;
    let message = match angle {
        Some(angle) => format!(
            "the {turns} corner {corner} is {angle:.0} degrees: a usual post of 90 degrees does not fit"
        ),
        None => format!(
            "the {turns} corner {corner} is between two walls at an angle: what angle? A usual post of 90 degrees may not fit"
        ),
    };
    FindingWords::new(
        message,
        "Order a post for this angle, or have trim bent for it; check the angle on the plan. Posts for each angle are a line of their own in the takeoff.",
    )
}

/// What was taken for set-backs that the job does not give, and the keys that do.
fn set_backs(taken: &[TakenSetBack], boards: bool, style: LengthStyle) -> FindingWords {
    let each = |t: &TakenSetBack| {
        let of = t.angle.map(|a| format!(" of {a:.0} degrees")).unwrap_or_default();
        format!("{} off {} corners{of}", style.short(t.set_back), corners::kind(t.corner).en)
    };
    let key = |t: &TakenSetBack| match (t.corner, boards, t.angle) {
        (CornerKind::Outside, true, _) => "`product.corner_board`",
        (CornerKind::Inside, true, _) => "`product.inside_corner_board`",
        (CornerKind::Outside, false, None) => "`product.outside_post_set_back`",
        (CornerKind::Inside, false, None) => "`product.inside_post_set_back`",
        (CornerKind::Outside, false, Some(_)) => "`product.angled_outside_post_set_back`",
        (CornerKind::Inside, false, Some(_)) => "`product.angled_inside_post_set_back`",
    };
    let figures: Vec<String> = taken.iter().map(each).collect();
    let mut keys: Vec<&str> = taken.iter().map(key).collect();
    keys.dedup();
    let bent = if taken.iter().any(|t| t.angle.is_some()) {
        "; at an angle, as a square post bent to it"
    } else {
        ""
    };
    let (figures, keys) = (joined(&figures), joined(&keys));
    if boards {
        return FindingWords::new(
            format!(
                "corner boards: what widths? Boards are cut to end at corner boards {figures} (common practice, no source), less the gap"
            ),
            format!("Put the widths into the job: {keys}."),
        );
    }
    FindingWords::new(
        format!(
            "corner posts: what set-backs? Panels are cut to end {figures} (common practice, no source{bent}), less the end gap"
        ),
        format!(
            "Measure the posts from the corner along the wall to the bottom of the pocket, and put it into the job: {keys}."
        ),
    )
}

/// What to put into the job for a return.
fn answer(corner: &CornerId, style: LengthStyle) -> String {
    // A width to begin with, in the job's own lengths: 2 ft.
    let width = style.length(24.0).replace('"', "\\\"");
    format!("[[return]] corner = \"{corner}\", width = \"{width}\"")
}

fn only_elevation(corner: &CornerId, others: &[CornerId], style: LengthStyle) -> FindingWords {
    let corners = std::iter::once(corner).chain(others).map(|c| c.as_str());
    FindingWords::new(
        format!(
            "return: confirm width. Only one elevation is drawn; nothing is laid out round {}",
            listed(corners)
        ),
        format!("If it is to be, put into the job: {}.", answer(corner, style)),
    )
}

fn return_not_drawn(
    corner: &CornerId,
    turns: CornerKind,
    tag: Option<&str>,
    height: &str,
    style: LengthStyle,
) -> FindingWords {
    let turns = match turns {
        CornerKind::Outside => "outside",
        CornerKind::Inside => "inside",
    };
    let tag = tag.map_or(String::new(), |t| format!(" (tag {t})"));
    FindingWords::new(
        format!(
            "return: confirm width. No elevation shows the other side of the {turns} corner {corner}{tag}, {height} high"
        ),
        format!(
            "Draw the wall, or put the same tag at the corner in both elevations, or put into the job: {} (0 where there is no siding).",
            answer(corner, style)
        ),
    )
}

/// One plane ends where another begins.
fn at_break(corner: &CornerId, others: &[CornerId], style: LengthStyle) -> FindingWords {
    let others: Vec<&str> = others.iter().map(|c| c.as_str()).collect();
    FindingWords::new(
        format!(
            "return: confirm width. One wall ends where the next begins, at {corner} and {}: no elevation shows the wall between them",
            others.join(", ")
        ),
        format!(
            "Draw the wall between, or put into the job, for the corner that stands forward: {} (0 where there is no siding).",
            answer(corner, style)
        ),
    )
}

fn heights_disagree(
    corner: &CornerId,
    tops: Option<&[HeightOn; 2]>,
    bottoms: Option<&[HeightOn; 2]>,
    style: LengthStyle,
) -> FindingWords {
    let both = |what: &str, [a, b]: &[HeightOn; 2]| {
        format!(
            "its {what} {} on {} and {} on {}",
            style.length(a.height),
            a.wall,
            style.length(b.height),
            b.wall
        )
    };
    let parts: Vec<String> = tops
        .map(|t| both("top", t))
        .into_iter()
        .chain(bottoms.map(|b| both("bottom", b)))
        .collect();
    FindingWords::new(
        format!("two elevations disagree about the corner {corner}: {}", parts.join("; ")),
        "Compare floor reference lines, soffits and foundations of the two elevations; the post is taken as long as the longer of them.",
    )
}

fn return_corner(named: &str, fault: &ReturnFault) -> FindingWords {
    let ids = |ids: &[CornerId]| listed(ids.iter().map(|c| c.as_str()));
    let correct = "Correct the corner in the job file; `layout.json` lists them under `corners`.";
    let message = match fault {
        ReturnFault::Ambiguous { corners } => {
            format!("`return` names the corner `{named}`, which may be {}", ids(corners))
        }
        ReturnFault::NoSuchCorner { open } => format!(
            "`return` names the corner `{named}`, which no wall has; open corners: {}",
            ids(open)
        ),
        ReturnFault::BothWallsKnown { open } => format!(
            "`return` names the corner `{named}`, both of whose walls are known; open corners: {}",
            ids(open)
        ),
        ReturnFault::EndsWhereItBegins => {
            return FindingWords::new(
                format!("the return at `{named}` ends where it begins"),
                "Name another corner as `to`, or leave it out.",
            );
        }
    };
    FindingWords::new(message, correct)
}

fn angled_unknown(named: &str, fault: &AngledFault) -> FindingWords {
    let message = match fault {
        AngledFault::NoSuchWall { walls } => format!(
            "`angled` names the wall `{named}`; the walls are {}",
            listed(walls.iter().map(|w| w.as_str()))
        ),
        AngledFault::NoSuchOpening { wall } => {
            format!("`angled` names the opening `{named}`, which is not on {wall}")
        }
    };
    FindingWords::new(message, CORRECT_NAME)
}

fn angled_outside(opening: &OpeningId, wall: &WallId, left: &str, right: &str) -> FindingWords {
    FindingWords::new(
        format!("`angled` places {opening} from {left} to {right}, outside {wall}"),
        "Correct the place in the job file.",
    )
}
