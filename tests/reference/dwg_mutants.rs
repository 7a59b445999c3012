//! A DWG changed at random, many times.

#[test]
fn two_thousand_mutants_end_in_a_drawing_or_a_refusal() {
    let whole = crate::dwgcase::dwg();
    let (read, refused) = crate::dwgcase::mutants::run(&whole, 0..2000);
    assert_eq!(read + refused, 2000);
    assert!(read > 100 && refused > 100, "{read} read, {refused} refused");
}

#[test]
fn two_thousand_mutants_of_unpacked_sections_end_in_a_drawing_or_a_refusal() {
    let whole = crate::dwgcase::dwg();
    let (read, refused, unpacked) = crate::dwgcase::mutants::run_sections(&whole, 0..2000);
    assert_eq!(read + refused + unpacked, 2000);
    assert!(read > 200 && unpacked < 500, "{read} read, {refused} refused, {unpacked} not packed");
}
