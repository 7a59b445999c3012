//! Siding: how it grows, how its ends meet, where seams may stand, how boards lap.

use super::record::facts;

facts! {
    /// Facts of panels and boards.
    SidingFact {
        PvcExpansion: "rigid PVC grows at most 4.5e-5 of its length for each F", [CanadianPvcSiding], "table 1", Read;
        UsualExpansion: "PVC siding grows 3.0e-5 to 3.6e-5 of its length for each F", [], "", Memory;
        LengthChangeTable: "length change is length by growth by degrees, for a swing of 100 F", [], "", Exact;
        FullSwing: "a panel of 12 ft 6 in grows 0.675 in over 100 F at the ceiling figure", [CanadianPvcSiding], "table 1", Exact;
        TypicalSwing: "a panel of 12 ft 6 in grows 0.525 in over 100 F at 3.5e-5", [], "", Exact;
        GapsAgainstSwing: "two gaps of 1/4 in do not cover 0.675 in", [], "", Exact;
        EndGap: "1/4 in from a panel's end to the bottom of its receiver above 40 F", [AssociationHorizontal], "", Read;
        ColdEndGap: "3/8 in below 40 F", [AssociationHorizontal], "", Read;
        LongPanelGap: "from 20 ft on the manufacturer states a larger gap", [AssociationHorizontal], "", Read;
        PlainLap: "plain vinyl laps half the factory notch, about 1 in", [AssociationHorizontal], "", Read;
        FoamButtsFoam: "at a lap of foam-backed panels the foam of one butts the foam of the next", [AssociationHorizontal, AssociationOlder], "", Read;
        FoamSetBack: "foam stops 5/8 in short of the vinyl at both factory ends", [], "", Practice;
        FoamLap: "where foam meets foam the vinyl laps 1 1/4 in", [], "", Practice;
        CutEndsInReceivers: "cut ends go into receivers, factory ends meet at a seam", [], "", Practice;
        CutEndAtSeam: "a cut end at a seam needs its hem, lock and foam cut back", [], "", Practice;
        ThreeCoursesApart: "no two end laps in one line unless three courses apart", [AssociationOlder], "", Disputed;
        SidewaysStagger: "end laps of near courses stand 24 in apart sideways; no published figure", [], "", Practice;
        LapsFaceAway: "the exposed edge of a lap faces away from the entry", [AssociationOlder, JournalVinyl], "", Read;
        BeginFarthest: "begin each course at the end farthest from the viewer", [HomeBuildingMagazine], "", Read;
        NoSeamAtOpenings: "no end lap over or under an opening that a full piece can cross", [], "", Practice;
        ShortestPiece: "shortest piece of 12 to 24 in", [], "", Practice;
        LevelChecks: "check level every fifth or sixth course", [AssociationHorizontal, JournalVinyl], "", Read;
        DoubleFour: "a double 4 shows two boards of 4 in and is one course of 8 in", [TradeUsage], "", Read;
        ProfileNames: "D4, D4.5, D5, T3, T4, S7: boards shown and their height", [TradeUsage], "", Read;
        WoodLap: "wood bevel siding laps at least 1 in", [NavyBuilder], "", Read;
        WoodExposure: "wood shows 2 in less than the board: 6 of 8 in", [NavyBuilder], "", Read;
    }
}
