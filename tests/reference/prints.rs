//! The overlay on a PDF, read back by pypdf: of a file whose table of objects is text, and of one whose table
//! is a stream.

use std::path::Path;

use crate::venv::python;

/// A wall of 25 ft by 8 ft on a page, at 18 points to the foot, and short strokes beside it.
fn objects() -> Vec<String> {
    let mut content = String::from("1.42 w 0 G 144 216 m 594 216 l 594 360 l 144 360 l s 0.5 w\n");
    for i in 0..60 {
        content += &format!("{i} 10 m {i} 20 l S\n");
    }
    content += "BT /F 12 Tf 144 150 Td (FRONT ELEVATION) Tj ET\n";
    vec![
        "<< /Type /Catalog /Pages 2 0 R >>".to_owned(),
        "<< /Type /Pages /Kids [3 0 R] /Count 1 >>".to_owned(),
        "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 792 612] /Contents 4 0 R /Resources << /Font \
         << /F 5 0 R >> >> >>"
            .to_owned(),
        format!("<< /Length {} >>\nstream\n{content}\nendstream", content.len()),
        "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>".to_owned(),
    ]
}

fn pdf(packed: bool) -> Vec<u8> {
    let mut out = b"%PDF-1.5\n".to_vec();
    let mut places = Vec::new();
    for (i, object) in objects().iter().enumerate() {
        places.push(out.len());
        out.extend(format!("{} 0 obj\n{object}\nendobj\n", i + 1).into_bytes());
    }
    let table = out.len();
    let count = places.len() + 1;
    if packed {
        places.push(table);
        let mut rows = vec![0, 0, 0, 0, 0, 255, 255];
        for at in places {
            rows.push(1);
            rows.extend(u32::try_from(at).unwrap().to_be_bytes());
            rows.extend([0, 0]);
        }
        let head = format!(
            "{count} 0 obj\n<< /Type /XRef /Size {} /W [1 4 2] /Root 1 0 R /Length {} >>\nstream\n",
            count + 1,
            rows.len()
        );
        out.extend([head.as_bytes(), &rows, b"\nendstream\nendobj\n"].concat());
    } else {
        out.extend(format!("xref\n0 {count}\n0000000000 65535 f \n").into_bytes());
        places.iter().for_each(|at| out.extend(format!("{at:010} 00000 n \n").into_bytes()));
        out.extend(format!("trailer\n<< /Size {count} /Root 1 0 R >>\n").into_bytes());
    }
    out.extend(format!("startxref\n{table}\n%%EOF\n").into_bytes());
    out
}

#[test]
fn the_overlay_on_a_pdf_is_read_back_by_pypdf() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("print");
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    let job = "[drawing]\nknown = \"144,216 594,216 = 25'-0\\\"\"\n[layers]\nwall = [\"stroke 1.42 pt black\"]\n\
               [seams]\neffort = \"crew\"\n";
    std::fs::write(folder.join("job.toml"), job).unwrap();
    for (name, packed) in [("text", false), ("packed", true)] {
        let source = folder.join(format!("{name}.pdf"));
        std::fs::write(&source, pdf(packed)).unwrap();
        let out = std::process::Command::new(env!("CARGO_BIN_EXE_lapwright"))
            .current_dir(&folder)
            .args(["layout", &format!("{name}.pdf"), "--job", "job.toml", "--out", name])
            .output()
            .unwrap();
        assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
        let overlay = folder.join(name).join("overlay.pdf");
        let said = python("tests/reference/pdf_layers.py", &[&source, &overlay]);
        assert!(said.starts_with("ok"), "{name}: {said}");
        let added = std::fs::read(&overlay).unwrap().split_off(pdf(packed).len());
        let is_packed = added.windows(5).any(|w| w == b"/XRef");
        assert_eq!(is_packed, packed);
    }
}

#[test]
fn two_thousand_mutants_of_a_pdf_end_in_a_drawing_or_a_refusal() {
    // Neither keeps its content packed: what changes are strokes, words, dictionaries and tables of objects.
    let mut seen = (0, 0);
    for (whole, seeds) in [(pdf(false), 0..1000), (pdf(true), 1000..2000)] {
        let (read, refused) = crate::dwgcase::mutants::run(&whole, seeds);
        seen = (seen.0 + read, seen.1 + refused);
    }
    assert_eq!(seen.0 + seen.1, 2000);
    assert!(seen.0 > 200 && seen.1 > 200, "{seen:?}");
}
