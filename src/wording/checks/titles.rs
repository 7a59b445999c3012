//! The rules of the check by title.

use crate::language::{Said, said};
use crate::layout::rule::Rule;

/// Title of the section that lists the rules.
pub const SECTION: Said = said("Independent checks", "Revisión aparte");

/// A rule as sheets and reports list it.
pub fn rule(rule: Rule) -> Said {
    said(english(rule), spanish(rule))
}

/// The same where boards are checked, which stand in no channel and lap over one another alone.
pub fn rule_on(of_rule: Rule, boards: bool) -> Said {
    let own = english_of_boards(of_rule).zip(spanish_of_boards(of_rule)).filter(|_| boards);
    own.map_or(rule(of_rule), |(en, es)| said(en, es))
}

fn english(rule: Rule) -> &'static str {
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

fn spanish(rule: Rule) -> &'static str {
    match rule {
        Rule::FieldCovered => "el siding cubre la pared hasta su límite",
        Rule::PiecesInField => "las piezas quedan dentro del límite, con sus holguras",
        Rule::PiecesOverlap => "las piezas solo se enciman en traslapes",
        Rule::FieldExtent => "el límite es la pared menos aberturas, escalones, techos",
        Rule::CourseLevels => "cada hilera va al mismo nivel en todas las paredes",
        Rule::WallAreas => "área neta: la total menos aberturas y pared sin cubrir",
        Rule::WallCovered => "siding y áreas sin cubrir completan cada pared",
        Rule::BareWall => "la pared sin siding se dice y no cuenta en el área",
        Rule::GradeClearance => "los arranques libran el terreno en hileras enteras",
        Rule::SidesAllRound => "los lados con nombre rodean todo el límite",
        Rule::SideNames => "cada lado se nombra por lo que toca y lleva su moldura",
        Rule::RunEnds => "cada tramo termina en la moldura dibujada ahí",
        Rule::RunFilled => "piezas y traslapes llenan cada tramo menos sus espacios",
        Rule::SeamFactoryEnds => "una unión junta dos extremos de fábrica",
        Rule::BoardFactoryEnds => "un extremo de fábrica es como salió la tabla",
        Rule::SeamPlaces => "las uniones están a la mitad de sus traslapes",
        Rule::SeamStagger => "las uniones de hileras cercanas van escalonadas",
        Rule::JointStagger => "juntas de hileras cercanas en montantes distintos",
        Rule::ShortestPiece => "ninguna pieza de tramo con unión es menor que la mínima",
        Rule::NarrowPlaces => "tablas de relleno donde se vería muy poco siding",
        Rule::LeastStrips => "ninguna tira más baja de lo que dice el arranque",
        Rule::Crumbs => "sin puntas, molduras ni muescas muy chicas para cortar",
        Rule::SeamsAtFixtures => "las uniones libran bloques y accesorios",
        Rule::SeamCounts => "uniones en aberturas y en fila, como se contaron",
        Rule::JointsOnStuds => "las juntas están sobre montantes",
        Rule::PanelContents => "lo que se corta de un panel cabe, con los cortes de sierra",
        Rule::PieceMarks => "cada pieza tiene una marca y un panel",
        Rule::PieceCounts => "las cuentas concuerdan con las piezas",
        Rule::PanelHalves => "las dos mitades de un panel cortado a lo largo caben",
        Rule::OffcutsWaiting => "no quedan más sobrantes guardados que los permitidos",
        Rule::SawLists => "cada pieza está una vez en los cortes de su pared",
        Rule::PieceShapes => "extremos, ángulos y altos concuerdan con la pared",
        Rule::NotchPlaces => "hay muescas donde una abertura corta la hilera",
        Rule::HemsClear => "nada sube por detrás de una repisa o sofito",
        Rule::CutEdgesHeld => "los bordes cortados van sujetos, o se dice con qué",
        Rule::PieceCuts => "los cortes listados sacan cada pieza de su tira",
        Rule::OpeningChannels => "los canales cierran alrededor de cada abertura",
        Rule::OpeningDrainage => "el agua corre de cada canal al siguiente",
        Rule::UndersillPlaces => "moldura de remate en cada repisa y solo ahí",
        Rule::SideTrim => "cada lado tiene su moldura",
        Rule::FaceBoards => "el siding llega a cubreesquinas, frisos, contramarcos",
        Rule::BandBoards => "las fajas tienen su tabla y su tapa",
        Rule::MovementJoints => "ningún siding cruza una junta de dilatación",
        Rule::OpeningFlashing => "los tapajuntas de aberturas tienen la medida publicada",
        Rule::RakeChannelCuts => "los canales inclinados van cortados a la pendiente",
        Rule::CornerPosts => "cada esquina tiene su esquinero, igual de alto",
        Rule::CornerSetBacks => "siding y moldura terminan al retiro de cada esquina",
        Rule::CornerSides => "cada lado de esquina es de una sola esquina",
        Rule::CornerCourses => "las hileras coinciden en cada esquina",
        Rule::TrimLengths => "la moldura es tan larga como su lugar",
        Rule::TrimStock => "la moldura cabe en su tramo",
        Rule::PanelBound => "el mínimo de paneles sale de los tramos",
        Rule::CladdingZones => "zonas de otro revestimiento medidas, sin paneles",
        Rule::KeptPieces => "lo guardado de una distribución anterior sigue como estaba",
        Rule::StockAtHand => "lo que se corta de material en la obra está ahí",
    }
}

fn english_of_boards(rule: Rule) -> Option<&'static str> {
    Some(match rule {
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
        _ => return None,
    })
}

fn spanish_of_boards(rule: Rule) -> Option<&'static str> {
    Some(match rule {
        Rule::PiecesOverlap => "las piezas de una hilera no se enciman",
        Rule::RunFilled => "piezas y juntas llenan cada tramo menos sus espacios",
        Rule::SeamPlaces => "las juntas están a la mitad de sus espacios",
        Rule::ShortestPiece => "ninguna pieza de tramo con junta es menor que la mínima",
        Rule::SeamsAtFixtures => "las juntas libran bloques y accesorios",
        Rule::PanelContents => "lo que se corta de una tabla cabe, con cortes de sierra",
        Rule::PieceMarks => "cada pieza tiene una marca y una tabla",
        Rule::PanelHalves => "las dos mitades de una tabla cortada a lo largo caben",
        Rule::HemsClear => "ninguna tabla sube detrás de repisa, sofito o faja",
        Rule::OpeningChannels => "alrededor de aberturas solo hay tapas y tablas",
        Rule::OpeningDrainage => "hay goterón sobre cada cabezal",
        Rule::CornerPosts => "cada esquina tiene sus tablas, igual de altas",
        Rule::PanelBound => "el mínimo de tablas sale de los tramos",
        Rule::CladdingZones => "zonas de otro revestimiento medidas, sin tablas",
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::{rule, rule_on};
    use crate::layout::rule::Rule;

    #[test]
    fn every_rule_has_a_title_of_its_own_that_fits_its_column() {
        let titles: BTreeSet<&str> = Rule::ALL.iter().map(|r| rule(*r).en).collect();
        assert_eq!(titles.len(), Rule::ALL.len());
        for title in titles {
            assert!(title.len() <= 56, "{title}");
        }
        let of_boards: BTreeSet<&str> = Rule::ALL.iter().map(|r| rule_on(*r, true).en).collect();
        assert_eq!(of_boards.len(), Rule::ALL.len());
        assert!(of_boards.iter().all(|title| title.len() <= 56));
    }
}
