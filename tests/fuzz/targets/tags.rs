//! The tag layer: any bytes give pairs in the order of the file, and come to an end.
#![no_main]

use lapwright::read::dxf::tags::Tags;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let mut tags = Tags::new(bytes);
    let binary = tags.is_binary();
    let (mut last, mut pairs) = (0, 0usize);
    for tag in tags.by_ref() {
        assert!(tag.line > last || (binary && tag.line >= last), "places go back");
        last = tag.line;
        pairs += 1;
        assert!(tag.float().is_none_or(f64::is_finite));
        assert!(binary || !tag.value.iter().any(|b| b"\r\n".contains(b)), "a value over two lines");
        let _ = (tag.int(), tag.is("SECTION"));
    }
    assert!(pairs <= bytes.len(), "pairs without bytes");
    assert!(tags.next().is_none(), "a pair after the end");
});
