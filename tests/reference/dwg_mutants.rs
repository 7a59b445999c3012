//! A DWG changed at random, many times.

#[test]
fn two_thousand_mutants_end_in_a_drawing_or_a_refusal() {
    let whole = crate::dwgcase::dwg();
    let (read, refused) = crate::dwgcase::mutants::run(&whole, 0..2000);
    assert_eq!(read + refused, 2000);
    assert!(read > 100 && refused > 100, "{read} read, {refused} refused");
}
