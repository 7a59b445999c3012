//! Takeoff: what is counted, and by which rules.

use super::record::facts;

facts! {
    /// Facts of counting and ordering.
    TakeoffFact {
        Square: "one square is 100 sq ft, 9.290304 m2", [], "", Exact;
        CoveragePerPiece: "a piece covers its nominal length times its exposure; the lap is not taken off", [], "", Exact;
        CartonOfTwoSquares: "the usual carton holds 2 squares; some hold 1 or 1/2", [ShopPages], "", Read;
        PanelsInTwoSquares: "24 panels of double 4 at 12 ft 6 in are two squares", [], "", Exact;
        GeneralWaste: "10 % for waste", [LumberYard, HouseHandbook, WesternLumber, CarpenterPages], "", Read;
        GableWaste: "one third more for waste in gables", [SidingShop], "", Read;
        AllOpeningsOff: "subtract all openings, then add 10 %", [LumberYard, CarpenterPages, WesternLumber], "", Read;
        NoOpeningsOff: "subtract no opening: they pay for the waste", [CarpenterPages, TradesPocketbook], "", Read;
        LargeOpeningsOff: "subtract only large openings, such as over 20 or 50 sq ft", [], "", Practice;
        GableTriangle: "a gable or dormer cheek is base times height by two", [], "", Exact;
        CoursesRoundedUp: "courses are height by exposure, rounded up; material is their whole height", [SidingShop], "", Read;
        StarterByPerimeter: "starter strips are the perimeter less door widths, by the stock length", [LumberYard, HouseHandbook], "", Read;
        PostsByStory: "one corner post a corner and story", [LumberYard], "", Read;
        ChannelsByOpening: "2 pieces of J-channel for an opening smaller than 6 x 5 ft, 3 for a larger one, 4 a gable end", [LumberYard], "", Read;
        UndersillByLength: "undersill trim is tops under overhangs and sills, by the stock length", [LumberYard], "", Read;
        NailPounds: "a pound of nails a square", [LumberYard], "", Read;
        NailsBySquare: "about 125 nails a square of double 4 at 16 in: one more than spaces a piece", [], "", Exact;
        WoodCoverage: "running feet a square foot are 12 by the exposed face; board feet, the nominal width by it", [WesternLumber], "", Read;
        ThreeCounts: "cartons, pieces and net area are three separate numbers", [], "", Practice;
        CallSizes: "a call size is width and height in feet and inches: 3040 is 3 ft 0 in by 4 ft 0 in", [], "", Exact;
        RoundedForSafety: "counts are rounded up, lengths to cut down to 1/16 in", [], "", Practice;
        BarrierLaps: "a weather barrier laps 2 in at level seams and 6 in at upright ones", [ResidentialCode], "R703.2", Read;
        OneLot: "one production lot for one building: lots differ in color", [PvcInstallation2003], "note 2", Read;
        FullCartonsBack: "only full cartons are taken back", [], "", Practice;
    }
}
