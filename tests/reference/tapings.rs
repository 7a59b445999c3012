//! Houses as architects draw them, taped at random.

use crate::architect::drawing;
use crate::architect::run::{OPEN, seeds};
use crate::taping::{Taped, tapings};

#[test]
fn houses_taped_at_random_are_laid_out_and_keep_every_rule() {
    let (mut laid, mut faults) = (0, Vec::new());
    let seeds = seeds(OPEN..OPEN + 20);
    for seed in &seeds {
        let d = drawing(*seed);
        let job = format!("[drawing]\nunit = \"{}\"\n[seams]\neffort = \"brief\"\n", d.unit);
        let name = format!("drawing {seed}.dxf");
        let taped = Taped { bytes: d.dxf.as_bytes(), name: &name, job: &job };
        let (some, wrong) = taped.faults(tapings(2));
        laid += some;
        faults.extend(wrong);
    }
    assert!(faults.is_empty(), "{} faults\n{}", faults.len(), faults.join("\n"));
    // A few of the drawings need a job of their own.
    assert!(laid >= seeds.len(), "{laid} laid");
}
