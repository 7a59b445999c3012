//! Drawings: units, curves, scales, papers, lines; and the geometry of slopes.

use super::record::facts;

facts! {
    /// Facts of drawings and of slopes.
    DrawingFact {
        PitchTable: "angle, rafter and step of every slope from 1 to 24 in 12", [], "", Exact;
        RafterRow: "rafter lengths a foot of run on a framing square", [NavyBuilder, ArmyCarpentry, Griffith], "", Read;
        GableArea: "a symmetric gable has span squared by the rise in 12, by 48", [], "", Exact;
        RakeLength: "a rake is half the span by the slope factor", [], "", Exact;
        RakeStep: "a rake moves 12 by exposure by the rise in 12 sideways in one course", [], "", Exact;
        RoundHalfUp: "lengths are rounded to the nearest 1/16 in, half and over up", [NavyBuilder], "", Read;
        Inch: "an inch is 25.4 mm exactly", [], "", Exact;
        Sixteenths: "sixteenths as decimals", [], "", Exact;
        FeetInches: "feet and inches are written 12'-6 1/2\"", [], "", Practice;
        CoursesOfHeights: "courses of double 4 in usual wall heights", [], "", Exact;
        UnitCodes: "$INSUNITS: 1 inch, 2 foot, 4 mm, 5 cm, 6 m", [DxfReference], "", Read;
        UnitsUnproved: "$INSUNITS is a statement, often wrong: a known size proves it", [DxfReference], "", Read;
        Bulge: "a bulge is the tangent of a quarter of the included angle", [DxfReference], "", Read;
        Sagitta: "sagitta is bulge by half the chord; radius, chord by (1 + b2) by 4 b", [], "", Exact;
        LayerFlags: "a frozen layer has bit 1, a layer that is off a negative color", [DxfReference], "", Memory;
        LineWeightIndex: "24 line weights from 0 to 2.11 mm, by layer -1, by block -2, default -3", [DxfReference], "", Memory;
        DimensionOverride: "a dimension's text that disagrees with its measure is told", [DxfReference], "", Memory;
        TextEscapes: "%%d degree, %%p plus-minus, %%c diameter", [DxfReference], "", Memory;
        LayerNames: "discipline, major and minor groups of a layer's name", [CadStandard], "1", Read;
        ShopDiscipline: "contractor and shop drawings have discipline Z", [CadStandard], "5.3", Read;
        LineWidths: "line widths of 0.13 to 2.0 mm in steps of about root 2", [IsoLines], "", Memory;
        LineTypes: "dashes of 12, long dashes of 24 and gaps of 3 line widths", [IsoLines], "", Memory;
        FederalWidths: "fine 0.18, thin 0.25, medium 0.35, wide 0.50 mm", [CadStandard], "", Memory;
        GradeLine: "grade is the heaviest line of an elevation", [NavyDrafting], "", Read;
        ArchitecturalScales: "1/4 in to the foot is 1 to 48, 3/32 in 1 to 128", [], "", Exact;
        MetricScales: "1 to 100, 50, 20, 10 and 5", [IsoScales], "", Memory;
        AnsiPaper: "ANSI A to E: 8.5 x 11 to 34 x 44 in", [AnsiPaper], "", Read;
        ArchitecturalPaper: "ARCH A to E1: 9 x 12 to 36 x 48 in", [AnsiPaper], "", Read;
        IsoPaper: "A0 to A4: 841 x 1189 to 210 x 297 mm", [IsoPaper], "", Read;
        TextHeight: "letters of at least 3/32 in on paper", [CadStandard, IsoLettering], "", Memory;
        TextSizes: "heights of letters from 3/32, 1/8, 3/16 and 1/4 in, few of them on one sheet", [CadStandard], "", Memory;
        Contrast: "letters 4.5 to 1 and lines 3 to 1 against what they stand on", [WebContrast], "1.4.3, 1.4.11", Memory;
        DimensionTicks: "dimensions with oblique ticks, read from below or the right", [CadStandard], "", Memory;
        RevisionLetters: "letters of revisions leave out I, O, Q, S, X and Z", [RevisionStandard], "", Memory;
        RevisionClouds: "a cloud round what is revised, a triangle with the letter beside it", [], "", Practice;
        SlopeTriangle: "a slope is drawn as a triangle with a run of 12", [], "", Practice;
    }
}
