//! What the search for the datum weighs.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Points against a datum: the least sum wins. What is weighed has a source; how much each counts is
/// common practice, no source.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct DatumWeights {
    /// Each foot of a strip thinner than `courses.least_strip` over a head (NAVEDTRA 14044).
    /// Default 3: common practice, no source.
    // LayoutFact::LinesAtHeadsAndSills.
    pub strip_over_head: f64,
    /// Each foot of such a strip under a sill (NAVEDTRA 14044). Default 3: common practice, no
    /// source.
    // LayoutFact::LinesAtHeadsAndSills.
    pub strip_under_sill: f64,
    /// Each foot of such a strip at an eave or under a band (NAVEDTRA 14044). Default 3: common
    /// practice, no source.
    // LayoutFact::LinesAtHeadsAndSills, LayoutFact::LeastTopCourse.
    pub strip_at_top: f64,
    /// Each foot of such a strip where siding begins on a wall bottom, on stone or over a level roof.
    /// Default 3: common practice, no source.
    pub strip_at_start: f64,
    /// Each foot of main heads off the course lines: those at the height that most window width
    /// shares (NAVEDTRA 14044). Default 1: common practice, no source.
    // LayoutFact::LinesAtHeadsAndSills, LayoutFact::ButtsAtOpenings.
    pub main_head: f64,
    /// Each foot of other heads off the course lines (NAVEDTRA 14044: notch where both cannot be
    /// had). Default 1/4: common practice, no source. Sills have no such weight: a panel is cut under
    /// every sill, on a course line too, where its nail hem would stand in the window.
    // LayoutFact::NotchRoundSills.
    pub other_line: f64,
    /// Each foot of a top course of no height; none from 4 in up, in proportion between.
    /// Default 1: common practice, no source.
    // LayoutFact::LeastTopCourse.
    pub short_top: f64,
    /// Each foot of wall bottom whose first course is cut, so that no starter locks it (siding
    /// association on IRC R703). Default 4: common practice, no source.
    // TrimFact::StarterLocksFirstCourse, TrimFact::CutFirstCourse.
    pub cut_start: f64,
    /// Each step of a start at grade, taken in whole courses (Journal of Light Construction on vinyl
    /// siding). Default 2: common practice, no source.
    // LayoutFact::LowestStart.
    pub step: f64,
    /// Each square foot that steps leave bare above the clearance. Default 1: common practice, no
    /// source.
    pub left_bare: f64,
    /// Each panel that is ripped or notched. Default 1/4: common practice, no source.
    pub cut_panel: f64,
}

impl Default for DatumWeights {
    fn default() -> Self {
        DatumWeights {
            strip_over_head: 3.0,
            strip_under_sill: 3.0,
            strip_at_top: 3.0,
            strip_at_start: 3.0,
            main_head: 1.0,
            other_line: 0.25,
            short_top: 1.0,
            cut_start: 4.0,
            step: 2.0,
            left_bare: 1.0,
            cut_panel: 0.25,
        }
    }
}
