//! The PDF reader: any bytes as the content of a page, and as a whole file, give a drawing within the
//! limits, the same twice, or a refusal.
#![no_main]

mod shared;

use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let mut file = b"%PDF-1.4\n".to_vec();
    file.extend(bytes.strip_prefix(b"%PDF-1.4\n").unwrap_or(bytes));
    shared::read_twice(&file, "fuzz.pdf");
    let mut page = b"%PDF-1.4\n1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>\nendobj\n2 0 obj\n<< /Type /Pages \
        /Kids [3 0 R] /Count 1 >>\nendobj\n3 0 obj\n<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] \
        /Contents 4 0 R >>\nendobj\n"
        .to_vec();
    page.extend(format!("4 0 obj\n<< /Length {} >>\nstream\n", bytes.len()).into_bytes());
    page.extend(bytes);
    page.extend(b"\nendstream\nendobj\ntrailer\n<< /Size 5 /Root 1 0 R >>\n%%EOF\n");
    shared::read_twice(&page, "fuzz.pdf");
});
