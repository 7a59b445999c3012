//! Things that sheets count: one of them, many of them.

use crate::language::{Language, Said, said};

/// A thing that is counted.
#[derive(Clone, Copy, Debug)]
pub struct Noun {
    /// One.
    pub one: Said,
    /// None, or several.
    pub many: Said,
}

const fn noun(one: Said, many: Said) -> Noun {
    Noun { one, many }
}

/// A slot for a nail, with what it is for.
pub const NAIL_SLOT: Noun =
    noun(said("nail slot", "ranura para clavo"), said("nail slots", "ranuras para clavo"));
/// A lug that a snap-lock punch makes.
pub const SNAP_LOCK_LUG: Noun =
    noun(said("snap-lock lug", "lengüeta"), said("snap-lock lugs", "lengüetas"));
/// A nail through the cut edge of a panel.
pub const TRIM_NAIL: Noun =
    noun(said("trim nail", "clavo de moldura"), said("trim nails", "clavos de moldura"));
/// A nail in the face of a board.
pub const FACE_NAIL: Noun =
    noun(said("face nail", "clavo por la cara"), said("face nails", "clavos por la cara"));
/// A cut with a shape of its own.
pub const SHAPED_CUT: Noun =
    noun(said("shaped cut", "corte con forma"), said("shaped cuts", "cortes con forma"));
/// A stock length of siding.
pub const PANEL: Noun = noun(said("panel", "panel"), said("panels", "paneles"));
/// The same where siding is of boards.
pub const BOARD: Noun = noun(said("board", "tabla"), said("boards", "tablas"));
/// What is cut of it.
pub const PIECE: Noun = noun(said("piece", "pieza"), said("pieces", "piezas"));
/// A view of the house.
pub const ELEVATION: Noun = noun(said("elevation", "elevación"), said("elevations", "elevaciones"));
/// A mark on a drawing.
pub const MARK: Noun = noun(said("mark", "marca"), said("marks", "marcas"));
/// A slot punched for a nail.
pub const SLOT: Noun = noun(said("slot", "ranura"), said("slots", "ranuras"));
/// A lug punched to hold a cut edge.
pub const LUG: Noun = noun(said("lug", "lengüeta"), said("lugs", "lengüetas"));
/// A nail.
pub const NAIL: Noun = noun(said("nail", "clavo"), said("nails", "clavos"));
/// A step at grade.
pub const STEP: Noun = noun(said("step", "escalón"), said("steps", "escalones"));
/// A price of a bound.
pub const PRICE: Noun = noun(said("price", "precio"), said("prices", "precios"));
/// Where a rule is broken.
pub const PLACE: Noun = noun(said("place", "lugar"), said("places", "lugares"));
/// A case of a rule.
pub const CASE: Noun = noun(said("case", "caso"), said("cases", "casos"));
/// A rule of the check.
pub const RULE: Noun = noun(said("rule", "regla"), said("rules", "reglas"));
/// A block that fixtures are mounted on.
pub const BLOCK: Noun = noun(
    said("mounting block", "bloque de montaje"),
    said("mounting blocks", "bloques de montaje"),
);
/// A finding.
pub const FINDING: Noun = noun(said("finding", "aviso"), said("findings", "avisos"));

impl Noun {
    /// What so many are called.
    pub fn of(self, count: usize, lang: Language) -> &'static str {
        if count == 1 { self.one.of(lang) } else { self.many.of(lang) }
    }
}

/// So many of them: `1 panel`, `3 panels`.
pub fn counted(lang: Language, count: usize, noun: Noun) -> String {
    format!("{count} {}", noun.of(count, lang))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_and_many_in_each_language() {
        let said = |n, noun| Language::ALL.map(|l| counted(l, n, noun));
        assert_eq!(said(1, ELEVATION), ["1 elevation", "1 elevación"]);
        assert_eq!(said(3, ELEVATION), ["3 elevations", "3 elevaciones"]);
        assert_eq!(said(0, BOARD), ["0 boards", "0 tablas"]);
    }
}
