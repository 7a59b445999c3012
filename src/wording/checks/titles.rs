//! The rules of the check by title.

use crate::layout::rule::Rule;

/// Title of the section that lists the rules.
pub const SECTION: &str = "Independent checks";

/// A rule as sheets and reports list it.
pub fn rule(rule: Rule) -> &'static str {
    match rule {
        Rule::FieldCovered => "siding covers the wall to the limit of siding",
        Rule::PiecesInField => "pieces stay within the limit of siding, clearances kept",
        Rule::PiecesOverlap => "pieces overlap only at laps",
        Rule::FieldExtent => "limit of siding is the wall less openings, steps, roofs",
        Rule::CourseLevels => "a course is at one level on every wall",
        Rule::WallAreas => "net area is gross area less openings and bare wall",
        Rule::WallCovered => "siding and named bare areas make up each wall",
        Rule::BareWall => "wall without siding is told and not in net area",
        Rule::GradeClearance => "starts keep clear of grade in whole courses",
        Rule::SidesAllRound => "named sides go all round the limit of siding",
        Rule::SideNames => "each side is named for what it borders and has its trim",
        Rule::RunEnds => "each run ends in the trim drawn there",
        Rule::RunFilled => "pieces and laps fill each run less its gaps",
        Rule::SeamFactoryEnds => "a seam joins two factory ends",
        Rule::BoardFactoryEnds => "a factory end is one as the board left the mill",
        Rule::SeamPlaces => "seams are at the middle of their laps",
        Rule::SeamStagger => "seams of near courses keep the stagger",
        Rule::JointStagger => "joints of near courses are on different studs",
        Rule::ShortestPiece => "no piece of a seamed run is shorter than the shortest",
        Rule::NarrowPlaces => "filler boards where too little siding would show",
        Rule::LeastStrips => "no strip is lower than the datum is said to leave",
        Rule::Crumbs => "no peaks, trim or notches at blocks too small to cut",
        Rule::SeamsAtFixtures => "seams clear mounting blocks, stand past bare fixtures",
        Rule::SeamCounts => "seams at openings, stairs and ladders as counted",
        Rule::JointsOnStuds => "joints are on studs",
        Rule::PanelContents => "what is cut from a panel fits it, saw cuts between",
        Rule::PieceMarks => "every piece has one mark and one panel",
        Rule::PieceCounts => "counts agree with pieces",
        Rule::PanelHalves => "both halves of a ripped panel fit it",
        Rule::OffcutsWaiting => "no more offcuts wait at the end of a wall than may",
        Rule::SawLists => "every piece stands once in the saw list of its wall",
        Rule::PieceShapes => "ends, angles and rips agree with what shows on the wall",
        Rule::NotchPlaces => "notches are where openings cut into a course",
        Rule::HemsClear => "nothing of a course goes up behind a sill or soffit",
        Rule::CutEdgesHeld => "cut edges are held, or it is told what holds them",
        Rule::KeptPieces => "what is held of an earlier layout is as it was there",
        Rule::StockAtHand => "what is cut from stock on the site is there",
        Rule::PieceCuts => "cuts as listed make each piece out of its strip",
        Rule::OpeningChannels => "channels close round every opening",
        Rule::OpeningDrainage => "water runs over each channel into the next",
        Rule::UndersillPlaces => "undersill trim is along every sill and nowhere else",
        Rule::SideTrim => "every side has its trim",
        Rule::FaceBoards => "siding meets the boards of covers, friezes, surrounds",
        Rule::BandBoards => "bands have their board and their cap",
        Rule::MovementJoints => "no siding bridges a movement joint",
        Rule::OpeningFlashing => "flashing round openings has the published sizes",
        Rule::RakeChannelCuts => "rake channels are cut to the pitch",
        Rule::CornerPosts => "every corner has its post, as high as the corner",
        Rule::CornerSetBacks => "siding and trim end the set-back off every corner",
        Rule::CornerSides => "every corner side is part of one corner",
        Rule::CornerCourses => "courses meet at every paired corner",
        Rule::TrimLengths => "trim is as long as its place",
        Rule::TrimStock => "trim fits its stock",
        Rule::PanelBound => "the panel bound follows from the runs",
        Rule::CladdingZones => "zones of other cladding are measured, without panels",
    }
}

/// The same where boards are checked, which stand in no channel and lap over one another alone.
pub fn rule_on(of_rule: Rule, boards: bool) -> &'static str {
    if !boards {
        return rule(of_rule);
    }
    match of_rule {
        Rule::PiecesOverlap => "pieces of a course do not overlap",
        Rule::RunFilled => "pieces and joints fill each run less its gaps",
        Rule::SeamPlaces => "joints are at the middle of their gaps",
        Rule::ShortestPiece => "no piece of a jointed run is shorter than the shortest",
        Rule::SeamsAtFixtures => "joints clear mounting blocks, stand past bare fixtures",
        Rule::PanelContents => "what is cut from a board fits it, saw cuts between",
        Rule::PieceMarks => "every piece has one mark and one board",
        Rule::PanelHalves => "both halves of a ripped board fit it",
        Rule::HemsClear => "no board head behind a sill, soffit or band",
        Rule::OpeningChannels => "caps and boards alone stand around openings",
        Rule::OpeningDrainage => "a drip cap is over every head",
        Rule::CornerPosts => "every corner has its boards, as high as the corner",
        Rule::PanelBound => "the bound on boards follows from the runs",
        Rule::CladdingZones => "zones of other cladding are measured, without boards",
        other => rule(other),
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::{rule, rule_on};
    use crate::layout::rule::Rule;

    #[test]
    fn every_rule_has_a_title_of_its_own_that_fits_its_column() {
        let titles: BTreeSet<&str> = Rule::ALL.iter().map(|r| rule(*r)).collect();
        assert_eq!(titles.len(), Rule::ALL.len());
        for title in titles {
            assert!(title.len() <= 56, "{title}");
        }
        let of_boards: BTreeSet<&str> = Rule::ALL.iter().map(|r| rule_on(*r, true)).collect();
        assert_eq!(of_boards.len(), Rule::ALL.len());
        assert!(of_boards.iter().all(|title| title.len() <= 56));
    }
}
