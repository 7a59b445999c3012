//! The usual cautions, once: sheets, report, workbook and whoever climbs read the same sentences.
//! Which of them hang on the siding is a fact of its system.

use crate::job::siding::kind::{Siding, every_caution};
use crate::job::siding::system::Caution;

const PRECEDENCE: &str =
    "The siding manufacturer's instructions and the local code override every figure here.";
const AID_ONLY: &str = "An aid to layout only: structure, wind, fire separation and water management stay with the licensed designer and the local official.";
// SafetyFact::Falls, SafetyFact::Ladders.
const FALLS: &str = "Falls: protect every edge from 6 ft up. Set the base of an extension ladder out a quarter of its working length, its rails 3 ft above the landing.";
// SafetyFact::PowerLines.
const POWER_LINES: &str = "Power lines: keep ladders and scaffolds 10 ft from overhead lines; have the service drop made safe first.";
// SafetyFact::LeadPaint, SafetyFact::AsbestosSheet.
const OLD_WALLS: &str = "Before 1978: paint may hold lead; asbestos-cement siding or sheet may lie underneath. Stop, test, and leave it to certified people.";
// SafetyFact::EgressWindows.
const BEHIND_WALL: &str =
    "Behind the wall: look for wiring, gas and water before nailing. Keep egress windows clear.";

/// What whoever climbs must have read.
pub const BEFORE_CLIMBING: [&str; 4] = [FALLS, POWER_LINES, OLD_WALLS, BEHIND_WALL];

/// What stands on every sheet.
pub fn notice() -> String {
    format!("{PRECEDENCE} {AID_ONLY} Cautions: see the cover.")
}

/// Every caution of a set with this siding, in the order they are read.
pub fn all(siding: Siding) -> Vec<&'static str> {
    let general = [PRECEDENCE, AID_ONLY].into_iter().chain(BEFORE_CLIMBING);
    general.chain(of_siding(siding)).collect()
}

/// Every caution of every kind of siding, each once.
pub fn of_all() -> Vec<&'static str> {
    let mut out: Vec<&str> = [PRECEDENCE, AID_ONLY].into_iter().chain(BEFORE_CLIMBING).collect();
    out.extend(every_caution().into_iter().map(sentence));
    out
}

/// What cutting and living with a kind can do.
pub fn of_siding(siding: Siding) -> impl Iterator<Item = &'static str> {
    siding.system().cautions.iter().map(|c| sentence(*c))
}

fn sentence(caution: Caution) -> &'static str {
    match caution {
        Caution::CuttingVinyl => {
            "Cutting: eye protection. Cold vinyl is brittle: cut slowly below freezing."
        }
        // SafetyFact::HeatSoftening.
        Caution::HeatSoftens => {
            "Heat: vinyl softens at 160 to 165 F. Keep grills and vents away; glass that faces the wall can reflect enough sun to warp it."
        }
        Caution::CuttingWood => {
            "Cutting: eye protection; dust mask or collection. Treated or old painted wood: follow its label, never burn offcuts."
        }
        // SafetyFact::LeadPaint.
        Caution::LeadPaint => {
            "Old walls: before 1978, disturbing more than 20 sq ft of painted outside surface needs a certified lead renovator (EPA, 40 CFR 745)."
        }
        // SafetyFact::SilicaDust.
        Caution::SilicaDust => {
            "Silica: fiber-cement dust scars lungs. Cut outdoors, downwind, with shears or a saw with a dust collector of 99 % filter efficiency, blade up to 8 in (29 CFR 1926.1153, Table 1; Cal. 1532.3); limit 50 micrograms a cubic meter over 8 hours. Eye protection; never sweep or blow it dry."
        }
        Caution::SharpEdges => {
            "Sharp edges: sheet steel cuts. Wear cut-resistant gloves, sleeves and eye protection; carry long panels by two, on edge, not in wind; leave no raw edge in reach (common practice; the manufacturer's instructions take precedence)."
        }
        Caution::CuttingSteel => {
            "Cutting: snips, shears, a nibbler or a blade made for sheet steel, never an abrasive wheel: its sparks burn the coating. Ear protection; brush off filings the same day, touch up cut edges and scratches as the manufacturer says (common practice)."
        }
        Caution::Corrosion => {
            "Corrosion: keep coated steel off copper, lead, wet mortar, and lumber treated with copper preservative; galvanized or stainless steel nails only (common practice; the manufacturer's instructions take precedence)."
        }
        Caution::MetalConducts => {
            "Electricity: metal panels and trim conduct. Keep lengths clear of power lines and the service drop; whether the wall must be bonded is for the electrician and the local code."
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::siding::kind::PanelSiding;

    #[test]
    fn every_siding_has_cautions_of_its_own_after_the_general_ones() {
        for siding in Siding::ALL {
            assert!(of_siding(siding).count() >= 2, "{siding:?}");
            let all = all(siding);
            assert!(all.len() > 6 && BEFORE_CLIMBING.iter().all(|c| all.contains(c)));
        }
    }

    #[test]
    fn figures_are_those_of_the_safety_rules() {
        // 29 CFR 1926.501 (6 ft), 1926.1053 (1 in 4; 3 ft), 1926.451 and .1053 (10 ft); 40 CFR 745 (1978).
        let climb = BEFORE_CLIMBING.join(" ");
        for words in ["6 ft up", "a quarter of its working length", "3 ft above", "10 ft", "1978"] {
            assert!(climb.contains(words), "{words}");
        }
        for words in ["asbestos", "lead", "egress", "wiring, gas and water"] {
            assert!(climb.contains(words), "{words}");
        }
        for words in
            ["manufacturer's", "local code", "licensed", "fire separation", "water management"]
        {
            assert!(notice().contains(words), "{words}");
        }
    }

    #[test]
    fn who_cuts_steel_is_told_of_edges_tools_and_contact() {
        let all: Vec<&str> = of_siding(Siding::Panel(PanelSiding::Steel)).collect();
        let all = all.join(" ");
        for word in [
            "gloves",
            "nibbler",
            "abrasive",
            "touch up",
            "copper",
            "treated",
            "conduct",
            "manufacturer",
        ] {
            assert!(all.contains(word), "{word}");
        }
    }
}
