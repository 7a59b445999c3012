//! The fuzz target that goes through the whole program, on shapes from a fixed seed: it keeps up with
//! the program, and finds no fault within a few seconds.

#[path = "../fuzz/targets/drawn.rs"]
mod drawn;
#[path = "../fuzz/targets/shared.rs"]
mod shared;
#[path = "../fuzz/targets/whole.rs"]
mod whole;

use crate::random_sheets::Dice;

#[test]
fn shapes_from_random_bytes_go_through_the_whole_program() {
    let mut dice = Dice(8);
    let kept = (0..60usize).filter(|i| {
        let mut bytes: Vec<u8> = (0..20 + 3 * i).map(|_| dice.roll(256) as u8).collect();
        // Bytes that begin as text does would be read as text.
        bytes[0] |= 128;
        whole::through(&bytes)
    });
    assert!(kept.count() > 40, "most jobs are in range");
}

#[test]
fn shapes_with_settings_from_the_schema_go_through_the_whole_program() {
    let mut dice = Dice(9);
    let kept = (0..12usize).filter(|i| {
        let bytes: Vec<u8> = (0..20 + 6 * i).map(|_| dice.roll(256) as u8).collect();
        whole::with_job(&crate::jobcase::settings_of(dice.roll(u64::MAX)), &bytes)
    });
    assert!(kept.count() > 8, "most drawings are laid out");
}
