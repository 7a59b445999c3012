//! Published counting rules beside the layout's own counts.

use super::items::{piece, trim_stock};
use crate::model::counting::CountingRule;
use crate::model::trim::TrimStock;
use crate::sources::record::Record;
use crate::sources::takeoff::TakeoffFact;
use crate::wording::sources::in_brackets;

/// What a rule counts.
pub fn subject(rule: &CountingRule, boards: bool) -> String {
    match rule {
        CountingRule::StarterByPerimeter => trim_stock(TrimStock::Starter, boards).en.to_owned(),
        CountingRule::PostsByStory { stock, .. } => match boards {
            true => trim_stock(*stock, true).en.to_owned(),
            false => format!("{}s", trim_stock(*stock, false).en),
        },
        CountingRule::ChannelsByOpening => trim_stock(TrimStock::JChannel, false).en.to_owned(),
        CountingRule::FinishTrimByLength => trim_stock(TrimStock::FinishTrim, false).en.to_owned(),
        CountingRule::RunningFeet { .. } => "running feet of boards".to_owned(),
        CountingRule::NailsBySquare { piece: of, .. } => format!("nails for {}s", piece(*of).en),
        CountingRule::NailPounds => "nails by weight".to_owned(),
        CountingRule::CoursesByHeight { wall } => format!("courses, {wall}"),
        CountingRule::GableTriangle { wall } => format!("gable, {wall}"),
    }
}

/// The rule with its source, and what the layout does otherwise.
pub fn rule(rule: &CountingRule) -> String {
    let source = in_brackets(&[record(rule)]);
    match rule {
        CountingRule::StarterByPerimeter => {
            format!("perimeter less door widths, by the stock length{source}")
        }
        CountingRule::PostsByStory { story, .. } => {
            format!("one a corner and story, a story taken as {} ft{source}", story / 12.0)
        }
        CountingRule::ChannelsByOpening => format!(
            "2 for an opening smaller than 6 x 5 ft, 3 for a larger one, 4 a gable end{source}"
        ),
        CountingRule::FinishTrimByLength => {
            format!("level tops and sills, by the stock length{source}")
        }
        CountingRule::RunningFeet { each } => format!(
            "{each:.2} a square foot of net area, no waste{source}; the layout counts rips and notches whole"
        ),
        CountingRule::NailsBySquare { each, .. } => {
            format!("{each:.1} a square of net area, computed")
        }
        CountingRule::NailPounds => format!(
            "1 lb a square of net area, 1 1/2 in roofing nails{source}; the layout counts nails, longer ones weigh more"
        ),
        CountingRule::CoursesByHeight { .. } => format!(
            "height by exposure, rounded up{source}; the layout starts all walls on one level and clear of grade"
        ),
        CountingRule::GableTriangle { .. } => "base x height / 2; the layout's figure is the drawn outline over the rakes' low ends, openings in".to_owned(),
    }
}

fn record(rule: &CountingRule) -> Record {
    match rule {
        CountingRule::StarterByPerimeter => TakeoffFact::StarterByPerimeter,
        CountingRule::PostsByStory { .. } => TakeoffFact::PostsByStory,
        CountingRule::ChannelsByOpening => TakeoffFact::ChannelsByOpening,
        CountingRule::FinishTrimByLength => TakeoffFact::UndersillByLength,
        CountingRule::RunningFeet { .. } => TakeoffFact::WoodCoverage,
        CountingRule::NailsBySquare { .. } => TakeoffFact::NailsBySquare,
        CountingRule::NailPounds => TakeoffFact::NailPounds,
        CountingRule::CoursesByHeight { .. } => TakeoffFact::CoursesRoundedUp,
        CountingRule::GableTriangle { .. } => TakeoffFact::GableTriangle,
    }
    .record()
}
