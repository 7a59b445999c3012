//! Worked examples with all their numbers: printed ones, and ones reckoned by hand.

use super::record::facts;

facts! {
    /// Worked examples that tests hold the program to.
    Example {
        BoardsBesideWindow: "61 in of window with boards of 12 in: 6 courses of 10 1/6 in", [NavyBuilder], "figure 4-3", Read;
        BoardsUnderWindow: "31 in under the sill: 3 courses of 10 1/3 in", [NavyBuilder], "figure 4-3", Read;
        ShinglesBesideWindow: "49 in by 8 in: 6 courses of 8 1/6 in", [JournalShingles], "", Read;
        RafterOfSeven: "run of 8 ft at 7 in 12: 111.140 in, printed 111 1/8", [NavyBuilder], "", Read;
        RafterOfSix: "run of 12 1/2 ft at 6 in 12: 167.705 in, printed 167.75", [Griffith, NavyBuilder], "", Read;
        RafterOfThirteen: "run of 10 ft 4 in at 13 in 12: 182.815 in, printed 182.79", [ArmyCarpentry], "", Read;
        HouseOfDoubleFour: "walls of 99 in take 13 courses of 8 in: 1525.33 sq ft of 176 ft round, printed 1524", [SidingShop], "", Read;
        HouseOfDoubleFive: "walls of 99 in take 10 courses of 10 in: 1466.67 sq ft, printed 1466", [SidingShop], "", Read;
        HouseGables: "two gables of 30 x 6 ft with a third for waste: 240 sq ft", [SidingShop], "", Read;
        WholeCourses: "96 in is 12 courses of 8 in", [SidingShop], "", Read;
        WallAndGable: "25 x 8 ft and a gable 8 ft high: 300 sq ft", [CarpenterPages], "", Read;
        GableAndCheeks: "a gable of 28 x 4 ft has 56 sq ft, two cheeks of 6 x 4 ft 24", [LumberYard], "", Read;
        BoardCoverage: "running and board feet a square foot, by nominal width and exposed face", [WesternLumber], "", Read;
        NailsThroughBoards: "2 in through 1/2 in bevel siding, 3 1/4 in through 3/4 in boards over 1 in of foam", [RedwoodAssociation], "", Read;
        RunOfTwentyFiveFeet: "25 ft takes three panels of 12 ft 6 in: half an inch makes the third", [], "", Exact;
        RunOfOnePanel: "12 ft 6 in takes one panel and no seam", [], "", Exact;
        LongRuns: "40 ft takes four panels of 12 ft 6 in, 60 ft five, 28 ft three", [], "", Exact;
        RunOnColdDay: "25 ft with gaps of 3/8 in takes three panels", [], "", Exact;
        GableOfFour: "a gable of 24 ft at 4 in 12: 48 sq ft, 6 courses of 8 in, rake 12 ft 7 13/16 in", [], "", Exact;
        ArchedTops: "a bulge of 0.4142 on 10 in has a sagitta of 2.0711 in; a half circle of 36 in 508.94 sq in", [], "", Exact;
        RiseOfGaps: "gaps of 1/4 in cover a rise of 74.1 F of a 12 ft 6 in panel at 4.5e-5", [], "", Exact;
        DatumShift: "sill 36 and head 84 in from a start at 0 fall on course lines when it moves by 4 in", [], "", Exact;
    }
}
