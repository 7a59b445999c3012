//! Cautions that hang on what the siding is made of (FACTS section 5).

use super::Kind;

impl Kind {
    /// What cutting and living with it can do: a sentence each.
    pub fn cautions(self) -> &'static [&'static str] {
        match self {
            Kind::FoamBacked | Kind::Vinyl => &[
                "Cutting: eye protection; no dry cutting of fibre cement without dust collection. Cold vinyl is brittle: cut slowly below freezing.",
                "Heat: vinyl softens at 160 to 165 F. Keep grills and vents away; glass that faces the wall can reflect enough sun to warp it.",
            ],
            Kind::Wood => &[
                "Cutting: eye protection; dust mask or collection. Treated or old painted wood: follow its label, never burn offcuts.",
                "Old walls: before 1978, disturbing more than 20 sq ft of painted outside surface needs a certified lead renovator (EPA, 40 CFR 745).",
            ],
            Kind::FibreCement => &[
                "Silica: fibre-cement dust scars lungs. Cut outdoors, downwind, with shears or a saw with a dust collector of 99 % filter efficiency, blade up to 8 in (29 CFR 1926.1153, Table 1; Cal. 1532.3); limit 50 micrograms a cubic metre over 8 hours. Eye protection; never sweep or blow it dry.",
                "Old walls: before 1978, disturbing more than 20 sq ft of painted outside surface needs a certified lead renovator (EPA, 40 CFR 745).",
            ],
        }
    }
}
