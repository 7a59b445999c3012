//! Cautions: falls, power lines, old paint and sheet, dust, heat.

use super::record::facts;

facts! {
    /// Facts behind the usual cautions.
    SafetyFact {
        Falls: "fall protection from 6 ft up", [SafetyRules], "1926.501", Memory;
        Ladders: "an extension ladder's base stands out a quarter of its length, its rails 3 ft over the landing", [SafetyRules], "1926.1053(b)", Memory;
        PowerLines: "scaffolds and ladders stay 10 ft from overhead lines", [SafetyRules], "1926.451(f)(6)", Memory;
        LeadPaint: "before 1978, over 20 sq ft of painted outside surface needs a certified firm", [LeadRule], "subpart E", Read;
        AsbestosSheet: "asbestos-cement siding or sheet: stop, test, licensed work", [AsbestosRule], "", Memory;
        SilicaDust: "fiber-cement: blade up to 8 in, outdoors, dust collection of 99 %; 50 micrograms a cubic meter over 8 hours", [SilicaTable], "row iii", Read;
        HeatSoftening: "PVC siding begins to soften at 160 to 165 F", [SidingAssociationFigure], "", Read;
        EgressWindows: "siding and trim leave an egress window its clear opening", [ResidentialCode], "R310", Memory;
    }
}
