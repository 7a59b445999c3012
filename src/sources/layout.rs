//! Laying out a house: datum, courses, what a drawing shows and hides, the order of work.

use super::record::facts;

facts! {
    /// Facts of laying out.
    LayoutFact {
        OneDatum: "one level datum for the whole house; courses meet at every corner", [AssociationHorizontal, JournalVinyl], "", Read;
        LowestStart: "start at the lowest point of the wall base; step at grade in whole courses", [JournalVinyl], "", Read;
        StoryPole: "one stick for all walls: sills, heads, soffits and bands", [Griffith, JournalShingles], "", Read;
        WoodMayVary: "wood and fiber-cement may vary exposure between features, vinyl may not", [NavyBuilder], "", Read;
        LinesAtHeadsAndSills: "course lines at the heads and sills of the main windows; no thin strips", [NavyBuilder], "", Read;
        LeastTopCourse: "a top course of 4 in for shingles, 2 to 3 in for vinyl", [], "", Practice;
        ButtsAtOpenings: "a butt edge stands on the drip cap, a course ends flush under the sill", [NavyBuilder], "", Read;
        NotchRoundSills: "where both cannot be had, keep the exposure and notch round the sill", [NavyBuilder], "", Read;
        OrderOfWork: "barrier and flashing, posts, starter, channels, panels, undersill trim", [AssociationAccessories], "", Read;
        OffcutStartsNext: "the offcut of one course starts the next if it is long enough", [], "", Practice;
        BandsPartWalls: "bands and friezes part a wall into fields that share the datum", [], "", Practice;
        MovementJoints: "siding does not bridge a movement joint of the building", [], "", Practice;
        AngledWallsShort: "a wall at an angle to its elevation is drawn too short", [], "", Exact;
        HiddenWalls: "walls behind porches, in recesses and on returns are not on the elevations", [], "", Practice;
        CornersAgree: "two elevations of one corner agree in height", [], "", Practice;
        HatchIsNoLayout: "siding lines in a drawing are a texture, not a layout", [], "", Practice;
        DrawnEdge: "windows are drawn to frame, trim or rough opening: ask which", [], "", Practice;
        RestrictedAccess: "between two receivers one is fixed later, or panels slide in from an end", [], "", Practice;
        DrawnSlope: "a drawn slope off by half a degree is told", [], "", Practice;
    }
}
