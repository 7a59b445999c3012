//! Trim: starter, posts, channels, flashing, and what cut edges are held in.

use super::record::facts;

facts! {
    /// Facts of trim and flashing.
    TrimFact {
        StarterLocksFirstCourse: "the first course locks into a starter strip made for its class of siding", [AssociationWind, AssociationCode], "R703.11.1.1", Read;
        CutFirstCourse: "a first course that is cut is held by undersill trim and snap-lock lugs", [AssociationCode], "", Read;
        OneLevelLine: "one level line goes right round the house from its lowest point", [JournalVinyl, AssociationStart], "", Read;
        StarterOverEdge: "the starter line is about 2 in over the bottom edge of the first course", [JournalVinyl], "", Read;
        StarterGaps: "1/4 in between starter strips, and from starter to corner post", [JournalVinyl], "", Read;
        PocketDepth: "pockets are 1/2 to 3/4 in for plain siding, about 1 1/4 in for insulated", [], "", Practice;
        FoamPocket: "pockets of 1 1/8 in for foam-backed panels", [], "", Practice;
        CornerFlashing: "corner flashing of 10 in to each side", [AssociationAccessories], "", Read;
        PostPastStarter: "a corner post runs 3/4 in past the starter strip", [AssociationAccessories], "", Read;
        PostTopGap: "1/4 in between the top of a corner post and the eave", [AssociationAccessories], "", Read;
        PostSplice: "an upper post's flange is cut back 1 in and its face lapped 3/4 in over the lower, which leaves 1/4 in to move", [AssociationAccessories, JournalVinyl], "", Read;
        PostStock: "corner posts come in 10 ft and 20 ft", [JournalVinyl], "", Read;
        InsideCorner: "an inside corner takes a post, or one or two J-channels", [AssociationAccessories], "", Read;
        PostCap: "a post is capped where it stops over an overhang", [AssociationAccessories], "", Read;
        SillFlashing: "sill flashing is at least 9 in high and reaches 9 in past each jamb", [AssociationAccessories], "", Read;
        JambFlashing: "jamb flashing stops 1/2 in short of the sill flashing's end and runs 8 1/2 in over the head", [AssociationAccessories], "", Read;
        WindowFrame: "head and sill channels are the opening and two channel faces long, jambs likewise", [], "", Practice;
        HeadTabs: "a head channel's ends are tabbed down into the jamb channels, about one face", [], "", Practice;
        UndersillLugs: "cut edges under sills and at wall tops are held in undersill trim by lugs every 6 in", [AssociationWind], "", Read;
        FurredUndersill: "shim behind undersill trim to hold the panel angle where the last piece is cut", [], "", Practice;
        RakeGap: "1/4 in to the rake channel; one pattern at the roof's pitch is copied", [HouseHandbook], "", Read;
        FixtureClearance: "siding is kept 1/4 in clear round lamps, taps and vents on blocks", [AssociationOlder], "", Practice;
        GradeClearance: "vinyl siding stays 6 in over the ground", [AssociationCode], "R703.3.1", Disputed;
        RoofClearance: "vinyl siding stays 1/2 in over decks, roofs and slabs", [AssociationCode], "R703.3.1", Disputed;
        BoardRoofClearance: "cladding that moisture harms stays 50 mm, 2 in, over roofs", [OntarioCode], "9.27.2.4", Read;
        LedgeClearance: "boards stay 1/4 in over the flashing on a ledge of stone or a band", [], "", Practice;
        StepFlashing: "step flashing of at least 4 x 4 in where a roof meets a wall, turned out at its low end", [ResidentialCode], "R905.2.8.3", Read;
        KickOut: "a kick-out is large and crosses courses at a slope, so it cuts them", [JournalFiberCement], "", Read;
        FlashingPlaces: "flashing stands at openings, over projecting trim, and where roofs and decks meet walls", [ResidentialCode], "R703.4", Read;
        FiberCementLap: "fiber-cement laps at least 1 1/4 in at the head", [JournalFiberCement], "", Read;
        FiberCementStarter: "the starter under the first fiber-cement board is 1/4 in thick", [JournalFiberCement], "", Read;
        FiberCementJoints: "joints of fiber-cement stand on studs, staggered, over a splice 6 in wide; 1/8 in to trim", [JournalFiberCement], "", Read;
        DripCaps: "a drip cap over every horizontal trim; flashing behind the sheet above, over the piece below", [ResidentialCode], "R703.4", Read;
        TopFinish: "a wall's top takes a nailed base with a snap-on face board, or a top panel", [], "", Practice;
        UndersillInChannel: "under a sill, undersill trim goes inside the J-channel where the cut asks for it", [], "", Practice;
        LugSpacing: "lugs every 6 in", [], "", Practice;
        NailSlots: "where a top course is ripped, nail slots are punched every 16 in", [], "", Practice;
        CutAtObstacle: "an obstacle without a block gets a seam: the first panel is cut 1 in past it", [], "", Practice;
    }
}
