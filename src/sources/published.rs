//! What has been published, by title.

/// Declares the sources, each with its title and edition.
macro_rules! published {
    ($($name:ident: $title:literal, $edition:literal;)*) => {
        /// A published source.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Published {
            $(#[doc = $title] $name,)*
        }

        impl Published {
            /// Every source.
            pub const ALL: &'static [Published] = &[$(Published::$name),*];

            /// Its title, as a reader is told it.
            pub fn title(self) -> &'static str {
                match self { $(Published::$name => $title,)* }
            }

            /// Its edition or date; empty where none is stated.
            pub fn edition(self) -> &'static str {
                match self { $(Published::$name => $edition,)* }
            }
        }
    };
}

published! {
    AssociationHorizontal: "siding association's manual, horizontal siding", "as of 2026";
    AssociationAccessories: "siding association's manual, accessories", "as of 2026";
    AssociationStart: "siding association's manual, getting started", "as of 2026";
    AssociationOlder: "siding association's manual, an older edition", "undated";
    AssociationWind: "siding association on windy places", "as of 2026";
    AssociationCode: "siding association on IRC R703", "as of 2026";
    ResidentialCode2018: "IRC 2018", "2018";
    ResidentialCode: "IRC", "as quoted in 2026";
    BuildingCode: "IBC", "as summarized in the trade press";
    OntarioCode: "Ontario Building Code", "Part 9, as of 2026";
    PvcInstallation2003: "ASTM D4756-03", "2003, withdrawn in 2023";
    CanadianPvcSiding: "CAN/CGSB-41.24", "1995";
    NavyBuilder: "NAVEDTRA 14044", "";
    NavyDrafting: "NAVEDTRA 14069", "";
    ArmyCarpentry: "a US Army carpentry course", "";
    Griffith: "Griffith, Carpentry", "1916";
    TradesPocketbook: "a building trades pocketbook", "about 1900";
    JournalVinyl: "Journal of Light Construction on vinyl siding", "";
    JournalShingles: "Journal of Light Construction on laying out courses", "";
    JournalFiberCement: "Journal of Light Construction on fiber-cement", "";
    HomeBuildingMagazine: "a home building magazine on vinyl siding", "";
    HouseHandbook: "a house-building handbook", "";
    EstimatingHandbook: "an estimating handbook of 2018", "2018";
    LumberYard: "a lumber yard's estimating page", "";
    SidingShop: "a siding shop's measuring page", "";
    SidingAssociationFigure: "siding association, as a fire service quotes it", "";
    ShopPages: "shop pages", "";
    TradeUsage: "usage of the trade", "";
    CarpenterPages: "a carpenter's takeoff pages", "2008";
    WesternLumber: "western lumber association", "";
    RedwoodAssociation: "California Redwood Association", "";
    CadStandard: "US National CAD Standard", "";
    DxfReference: "DXF reference", "";
    IsoLines: "ISO 128", "";
    RevisionStandard: "ASME Y14.35", "";
    IsoScales: "ISO 5455", "";
    IsoPaper: "ISO 216", "";
    IsoLettering: "ISO 3098", "";
    WebContrast: "Web Content Accessibility Guidelines 2.1", "";
    AnsiPaper: "ANSI and architectural sheet sizes", "";
    SafetyRules: "29 CFR 1926", "";
    LeadRule: "40 CFR 745", "";
    AsbestosRule: "40 CFR 61.145", "";
    SilicaTable: "silica Table 1 (29 CFR 1926.1153)", "";
}
