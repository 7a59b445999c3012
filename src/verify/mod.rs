//! The layout checked by code that shares nothing with what made it: no stage is called, areas are
//! measured by exact level scans rather than by the boolean engine. Every case that breaks a rule is
//! a violation of its own, none is left out.

mod along;
mod area;
mod at_hand;
mod bare_wall;
mod bound;
mod certificate;
pub mod claims;
mod clear_corners;
mod contour;
mod corner_sides;
mod corners;
mod counts;
mod course_lines;
mod coverage;
mod crumbs;
mod cut_edges;
mod cuts;
mod cutting;
mod decor;
mod dual;
mod field;
mod grade;
mod halves;
mod heights;
mod hems;
mod joints;
mod kept;
mod mixed;
mod named;
mod narrow;
mod no_layout;
mod notches;
mod opening_flashing;
mod opening_frame;
mod opening_trim;
mod posts;
mod prices;
mod rakes;
mod rule;
mod runs;
mod scan;
mod seam_counts;
mod seam_fixtures;
mod seam_options;
mod seam_ranges;
mod seams;
mod set_backs;
mod shaped_flashing;
mod shaped_trim;
mod shapes;
mod sides;
mod sweep;
mod taken;
mod tolerance;
mod trim_sides;
mod trim_stock;
mod undersill;
mod waiting;
mod wall_cover;
mod zones;

use self::claims::Claims;
use crate::layout::by_wall::ByWall;
use crate::layout::rule::Rule;
use crate::layout::verified::Verify;

/// Checks every rule.
pub fn check<'a>(claims: impl Into<Claims<'a>>) -> Verify {
    let layout = &claims.into();
    let at = ByWall::of(layout.laid);
    let on_studs = layout.job.siding().joints.is_on_studs();
    let mut rules = Vec::new();
    rules.extend(coverage::check(layout));
    rules.push(field::check(layout, &at));
    rules.extend(heights::check(layout));
    rules.push(wall_cover::check(layout, &at));
    rules.push(bare_wall::check(layout, &at));
    rules.push(narrow::check(layout));
    rules.extend(crumbs::check(layout));
    rules.extend(sides::check(layout));
    rules.push(runs::check(layout));
    rules.extend(seams::check(layout));
    if on_studs {
        rules.push(joints::stagger(layout));
        rules.push(joints::on_studs(layout));
    } else {
        rules.push(seams::stagger(layout));
    }
    rules.push(seam_fixtures::check(layout));
    rules.push(seam_counts::check(layout));
    rules.extend(cutting::check(layout));
    rules.push(counts::check(layout));
    rules.extend(halves::check(layout));
    rules.extend(waiting::check(layout));
    rules.push(shapes::check(layout));
    rules.push(notches::check(layout));
    rules.push(hems::check(layout));
    rules.push(cut_edges::check(layout, &at));
    rules.push(cuts::check(layout));
    rules.extend(kept::check(layout));
    rules.extend(at_hand::check(layout));
    rules.extend(opening_trim::check(layout, &at));
    rules.push(trim_sides::check(layout));
    let mut face = rule::Cases::new(Rule::FaceBoards);
    rules.push(opening_flashing::check(layout, &at, &mut face));
    rules.extend(decor::check(layout, &at, face));
    rules.push(rakes::check(layout, &at));
    rules.push(posts::check(layout, &at));
    rules.extend(corners::check(layout, &at));
    rules.push(set_backs::check(layout, &at));
    rules.extend(trim_stock::check(layout));
    rules.push(bound::check(layout));
    rules.extend(zones::check(layout));
    if !layout.job.siding().receivers.has_pockets() {
        // Boards stand in no channel and no undersill trim.
        rules.retain(|r| !matches!(r.rule, Rule::UndersillPlaces | Rule::RakeChannelCuts));
    }
    no_layout::hold_apart(layout, &mut rules);
    rules.sort_by_key(|r| r.rule);
    Verify { rules }
}
