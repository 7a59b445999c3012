//! What a finding says, and what to do about it, from its facts.

mod blocks;
mod by_hand;
mod corners;
mod crew;
mod drawing;
mod files;
mod fillers;
mod finding_words;
mod formats;
mod house;
mod job;
mod job_value;
mod kept;
mod laying;
mod letters;
mod lines;
mod no_walls;
mod paper_scale;
mod parts;
mod planes;
mod prices;
mod subjects;
mod taped;
mod unused;
mod views;

pub use self::finding_words::FindingWords;
pub use self::subjects::{head, subject};
use crate::finding::{Audience, Finding, FindingKind};
use crate::language::Language;
use crate::units::LengthStyle;

/// What a finding says, with lengths in this style.
pub fn words(finding: &Finding, style: LengthStyle) -> FindingWords {
    match &finding.kind {
        FindingKind::Drawing(found) => drawing::words(found, finding),
        FindingKind::Lines(found) => lines::words(found, finding, style),
        FindingKind::Views(found) => views::words(found, finding),
        FindingKind::House(found) => house::words(found, finding, style),
        FindingKind::Corners(found) => corners::words(found, style),
        FindingKind::Hand(found) => by_hand::words(found, style),
        FindingKind::Laying(found) => laying::words(found, finding, style),
        FindingKind::Job(found) => job::words(found),
        FindingKind::Prices(found) => prices::words(found),
        FindingKind::Taped(found) => taped::words(found, style),
        FindingKind::Letters(found) => letters::words(found),
        FindingKind::Files(found) => files::words(found),
    }
}

/// What a finding says, without what to do.
pub fn message(finding: &Finding, style: LengthStyle) -> String {
    words(finding, style).message
}

/// What a finding for the crew says, in a language; none of what others settle.
pub fn for_crew(lang: Language, finding: &Finding, style: LengthStyle) -> Option<String> {
    let FindingKind::Laying(found) = &finding.kind else { return None };
    crew::told(lang, found, &parts::elevation(finding), style)
}

/// Over the findings of one audience.
pub fn audience_head(audience: Audience) -> &'static str {
    match audience {
        Audience::Architect => "For the architect",
        Audience::Office => "For the office",
        Audience::Crew => "For the crew",
    }
}
