//! How many pictures a second a house of fifteen walls with 18,000 outlines on them is moved about at: 30 at least.

use lapwright_browser_tests::Browser;

/// A house of fifteen walls in courses drawn line by line, each with three windows, as a DXF of the oldest kind.
fn fifteen_walls() -> String {
    let mut out = String::from("0\nSECTION\n2\nENTITIES\n");
    let mut ring = |layer: &str, x: f64, y: f64, w: f64, h: f64| {
        let mut all = format!("0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n");
        for (px, py) in [(x, y), (x + w, y), (x + w, y + h), (x, y + h)] {
            all += &format!("0\nVERTEX\n8\n{layer}\n10\n{px}\n20\n{py}\n");
        }
        out += &(all + "0\nSEQEND\n");
    };
    for i in 0..15 {
        let (x, y) = (f64::from(i % 5) * 500.0, f64::from(i / 5) * 300.0);
        ring("A-WALL-OTLN", x, y, 420.0, 120.0);
        for k in 0..3 {
            ring("A-GLAZ", x + 40.0 + f64::from(k) * 120.0, y + 36.0, 48.0, 60.0);
        }
        // What an architect draws on it: 1,200 short lines a wall.
        for line in 0..1200 {
            let (lx, ly) = (x + f64::from(line % 40) * 10.0, y + f64::from(line / 40) * 4.0);
            ring("A-ELEV-PATT", lx, ly, 8.0, 3.0);
        }
    }
    out + "0\nENDSEC\n0\nEOF\n"
}

#[tokio::main]
async fn main() {
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join("house.dxf"), fifteen_walls()).unwrap();
    std::fs::write(dir.path().join("job.toml"), "[drawing]\nunit = \"inch\"\n").unwrap();
    let b = Browser::open(1400, 900, false).await;
    b.give(&dir.path().join("house.dxf"), Some(&dir.path().join("job.toml"))).await;
    assert!(b.state().await.contains("15 walls"), "{}", b.state().await);
    // Dragged for two seconds, a step a picture.
    let pictures = b
        .page
        .execute_async("const done = arguments[0], c = document.getElementById('sheet'), r = c.getBoundingClientRect(); c.setPointerCapture = () => {}; const at = (type, x) => c.dispatchEvent(new PointerEvent(type, { pointerId: 1, clientX: r.left + x, clientY: r.top + 200, bubbles: true })); at('pointerdown', 300); const begun = performance.now(); let n = 0; const step = () => { at('pointermove', 300 + 100 * Math.sin(n / 9)); n++; if (performance.now() - begun < 2000) requestAnimationFrame(step); else { at('pointerup', 300); done(n / (performance.now() - begun) * 1000); } }; requestAnimationFrame(step)", vec![])
        .await
        .unwrap();
    let rate = pictures.as_f64().unwrap();
    println!("{rate:.0} pictures a second");
    assert!(rate >= 30.0, "{rate:.0} pictures a second");
    b.close().await;
}
