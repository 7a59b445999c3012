//! Nails: length, shank, head and spacing.

use super::record::facts;

facts! {
    /// Facts of fastening.
    NailFact {
        Spacing: "nails at most 16 in apart in horizontal siding", [ResidentialCode2018, AssociationCode], "R703.11.1.3", Read;
        PostNailing: "corner posts nailed every 8 to 12 in", [AssociationAccessories], "", Read;
        TrimNailingInPrint: "trim nailed every 8 to 10 in, or 6 to 12 in", [EstimatingHandbook, JournalVinyl], "", Read;
        RoomUnderHead: "1/32 in between nail head and hem", [AssociationHorizontal], "", Read;
        Penetration: "1 1/4 in into nailable material", [AssociationHorizontal, ResidentialCode], "", Read;
        FoamHoldsNothing: "foam and other sheathing that holds no nail counts as nothing", [AssociationHorizontal], "", Read;
        Shank: "shank of at least 0.120 in", [ResidentialCode], "R703.11", Read;
        Head: "head of at least 5/16 in", [ResidentialCode], "R703.11", Read;
        NailLength: "a nail is as long as the hem's stand-off, layers that hold none and the penetration", [], "", Exact;
        PlainVinylNails: "nails of 1 1/2 to 2 in for plain vinyl", [HouseHandbook], "", Read;
        FoamBackedNails: "nails of at least 2 1/2 in for foam-backed siding", [], "", Practice;
        PostNails: "corner posts nailed every 10 to 12 in", [], "", Practice;
        ChannelNails: "J-channel round openings nailed every 8 to 10 in", [], "", Practice;
        WoodPenetration: "1 1/2 in of penetration for wood siding", [NavyBuilder], "", Read;
        FiberCementPenetration: "1 in into studs for fiber-cement", [BuildingCode], "1405.16", Read;
    }
}
