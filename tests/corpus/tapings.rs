//! The real house's sheets, taped at random.

use crate::corpus;
use crate::house_prints::KNOWN;
use crate::taping::{Taped, tapings};

#[test]
fn a_real_house_taped_at_random_is_laid_out_and_keeps_every_rule() {
    let brief = "[seams]\neffort = \"brief\"\n";
    let sheets = [
        ("H1_south_east.dxf", brief),
        ("H1_south_east.dwg", brief),
        ("H2_north_west.dxf", brief),
        ("H2_north_west.dwg", brief),
        ("H3_south_east.pdf", KNOWN),
        ("H4_north_west.pdf", KNOWN),
    ];
    let mut faults = Vec::new();
    for (name, job) in sheets {
        let bytes = std::fs::read(corpus().join("house").join(name)).unwrap();
        let (laid, wrong) = Taped { bytes: &bytes, name, job }.faults(tapings(2));
        assert!(laid > 0, "{name} is laid out: {wrong:?}");
        faults.extend(wrong);
    }
    assert!(faults.is_empty(), "{} faults\n{}", faults.len(), faults.join("\n"));
}
