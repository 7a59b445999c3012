//! The page from drop to saved outputs, each control, by mouse, touch and keys, on a desk and a phone.

use std::collections::BTreeMap;
use std::io::Read;
use std::path::Path;
use std::process::Command;

use fantoccini::Locator;
use fantoccini::key::Key;
use lapwright_browser_tests::{Browser, command, root, sample};
use serde_json::json;

/// Files of the command for a drawing and its job.
fn by_command(drawing: &Path, job: &Path) -> BTreeMap<String, Vec<u8>> {
    let dir = tempfile::tempdir().unwrap();
    let out = dir.path().join("out");
    let ended = Command::new(command())
        .args(["layout", "--quiet", "--out"])
        .arg(&out)
        .arg(drawing)
        .arg("--job")
        .arg(job)
        .status()
        .unwrap();
    assert!(ended.success());
    let mut files = BTreeMap::new();
    let mut folders = vec![out.clone()];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).unwrap().map(Result::unwrap) {
            if entry.path().is_dir() {
                folders.push(entry.path());
            } else {
                let name = entry.path().strip_prefix(&out).unwrap().display().to_string();
                files.insert(name, std::fs::read(entry.path()).unwrap());
            }
        }
    }
    // The list of what a folder holds is written by the command alone.
    files.retain(|name, _| !name.ends_with(".sha256"));
    files
}

fn unpacked(archive: &[u8]) -> BTreeMap<String, Vec<u8>> {
    let mut zip = zip::ZipArchive::new(std::io::Cursor::new(archive)).unwrap();
    (0..zip.len())
        .map(|i| {
            let mut file = zip.by_index(i).unwrap();
            let mut bytes = Vec::new();
            file.read_to_end(&mut bytes).unwrap();
            (file.name().unwrap().into_owned(), bytes)
        })
        .collect()
}

fn pixels(bytes: &[u8]) -> (u32, u32, Vec<u8>) {
    let mut reader = png::Decoder::new(std::io::Cursor::new(bytes)).read_info().unwrap();
    let mut out = vec![0; reader.output_buffer_size().unwrap()];
    let info = reader.next_frame(&mut out).unwrap();
    (info.width, info.height, out)
}

#[tokio::test]
async fn the_sample_from_drop_to_saved_outputs_as_the_command_writes_them() {
    let (drawing, job) = (sample("curlew-cottage.dxf"), sample("curlew-cottage.toml"));
    let b = Browser::open(1400, 900, false).await;
    b.give(&drawing, Some(&job)).await;
    b.press("lay").await;
    b.idle().await;
    assert!(b.text("sum").await.contains("panels"), "{}", b.state().await);
    let made = unpacked(&b.saved("save_all", "curlew-cottage-layout.zip").await);
    let told = by_command(&drawing, &job);
    let names = |m: &BTreeMap<String, Vec<u8>>| m.keys().cloned().collect::<Vec<_>>();
    assert_eq!(names(&made), names(&told));
    let mut differing: Vec<String> = Vec::new();
    for (name, bytes) in &told {
        if name.ends_with(".png") {
            let ((w, h, a), (v, k, c)) = (pixels(bytes), pixels(&made[name]));
            assert_eq!((w, h), (v, k), "{name}");
            let off = a.iter().zip(&c).filter(|(a, c)| a.abs_diff(**c) > 1).count();
            assert_eq!(
                off,
                0,
                "{name}: {off} of {} samples are off by more than one step",
                a.len()
            );
        } else {
            if made[name] != *bytes {
                differing.push(name.clone());
                if let Some(kept) = std::env::var_os("LAPWRIGHT_KEPT") {
                    let of = |by: &str| {
                        Path::new(&kept).join(format!("{by}-{}", name.replace('/', "-")))
                    };
                    std::fs::write(of("page"), &made[name]).unwrap();
                    std::fs::write(of("command"), bytes).unwrap();
                }
            }
        }
    }
    assert_eq!(differing, [""; 0], "LAPWRIGHT_KEPT names a folder for them");
    assert_eq!(b.errors().await, [""; 0]);
    b.close().await;
}

#[tokio::test]
async fn each_control_does_what_it_says() {
    let b = Browser::open(1400, 900, false).await;
    b.give(&sample("one-window.dxf"), Some(&sample("one-window.toml"))).await;
    assert!(b.state().await.contains("1 wall, 1 opening"), "{}", b.state().await);
    let before = b.job().await;
    // Not siding: by the list, taken back and made again.
    b.ask("[...document.querySelectorAll('#read button')].find(x => x.textContent === 'Not siding').click()").await;
    b.idle().await;
    assert!(b.job().await.contains("skip = ["), "{}", b.job().await);
    b.press("undo").await;
    b.idle().await;
    assert_eq!(b.job().await, before);
    b.press("redo").await;
    b.idle().await;
    assert_ne!(b.job().await, before);
    // A reload loses nothing, nor what can be taken back.
    b.reload().await;
    b.idle().await;
    assert_ne!(b.job().await, before);
    b.press("undo").await;
    b.idle().await;
    assert_eq!(b.job().await, before);
    // A setting by its field; comments of the job stay.
    b.ask("const f = document.querySelector('[name=\"courses.stud_spacing\"]'); f.value = '24'; f.dispatchEvent(new Event('change'))").await;
    b.idle().await;
    assert!(b.job().await.contains("stud_spacing = 24"), "{}", b.job().await);
    for line in before.lines().filter(|l| l.starts_with('#')) {
        assert!(b.job().await.contains(line), "{line}");
    }
    // A value that no layout can be made with is refused in words, and the job stays as it was.
    let kept = b.job().await;
    b.ask("const f = document.querySelector('[name=\"courses.stud_spacing\"]'); f.value = '-3'; f.dispatchEvent(new Event('change'))").await;
    b.idle().await;
    assert_eq!(b.job().await, kept);
    assert!(b.text("found").await.contains("stud_spacing"), "{}", b.text("found").await);
    // The job by its text, and saved.
    b.ask("document.getElementById('job').value = '[title]\\nproject = \"Gull House\"\\n'; document.getElementById('use_job').click()").await;
    b.idle().await;
    let saved = b.saved("save_job", "one-window.toml").await;
    assert_eq!(String::from_utf8_lossy(&saved), "[title]\nproject = \"Gull House\"\n");
    // Looks, nearer and farther, layers.
    for look in ["light", "dark", "sun"] {
        b.ask(&format!("const s = document.getElementById('look'); s.value = '{look}'; s.dispatchEvent(new Event('change'))")).await;
        assert_eq!(b.ask("return document.documentElement.dataset.look").await, json!(look));
    }
    b.ask("document.querySelectorAll('details').forEach(d => d.open = true)").await;
    for id in ["nearer", "farther", "whole", "show_wrong", "first_job"] {
        b.press(id).await;
        b.idle().await;
    }
    assert!(
        b.job().await.contains("first job") || b.job().await.contains("[drawing]"),
        "{}",
        b.job().await
    );
    assert_eq!(b.errors().await, [""; 0]);
    b.close().await;
}

/// A page of strokes that no rule reads: a rectangle of 20 by 8 in lines that do not meet, as an SVG.
fn loose() -> tempfile::TempDir {
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(
        dir.path().join("loose.svg"),
        "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 240 96'><path fill='none' stroke='black' d='M0 0H100 M140 0H240 M0 96H240 M0 0V96 M240 20V96 M100 30H140V70H100Z'/></svg>",
    )
    .unwrap();
    dir
}

#[tokio::test]
async fn a_wall_an_opening_and_a_length_by_keys_alone_lead_to_a_layout() {
    let dir = loose();
    let b = Browser::open(1200, 900, false).await;
    b.give(&dir.path().join("loose.svg"), None).await;
    b.ask("document.getElementById('job').value = ''; document.getElementById('use_job').click()")
        .await;
    b.idle().await;
    // The two ends of the left side: 8 ft. Typed on the board: the cross goes by steps of 40 and 8 points.
    by_keys(&b, "known", &[(0.0, 0.0), (0.0, 96.0)]).await;
    b.ask("document.getElementById('answer').value = ''").await;
    b.page
        .find(Locator::Id("answer"))
        .await
        .unwrap()
        .send_keys(&format!("8'{}", char::from(Key::Enter)))
        .await
        .unwrap();
    b.idle().await;
    assert!(b.job().await.contains("known"), "{}", b.job().await);
    by_keys(&b, "wall", &[(0.0, 0.0), (240.0, 96.0)]).await;
    b.idle().await;
    by_keys(&b, "opening", &[(100.0, 26.0), (140.0, 66.0)]).await;
    b.idle().await;
    assert!(b.state().await.contains("1 wall, 1 opening"), "{} {}", b.state().await, b.job().await);
    b.press("lay").await;
    b.idle().await;
    assert!(
        b.text("sum").await.contains("panels"),
        "{} {}",
        b.state().await,
        b.text("found").await
    );
    assert_eq!(b.errors().await, [""; 0]);
    b.close().await;
}

/// Takes a tool, and two corners of the drawing (y up), by keys: arrows move the cross near, which catches the
/// corner; F ends what two corners are enough for.
async fn by_keys(b: &Browser, tool: &str, corners: &[(f64, f64)]) {
    b.ask(&format!("document.getElementById('tool_{tool}').focus()")).await;
    b.press(&format!("tool_{tool}")).await;
    let sheet = b.page.find(Locator::Id("sheet")).await.unwrap();
    for (x, y) in corners {
        // As many steps as the picture asks for, counted from the middle of the board.
        let steps = b
            .ask(&format!("const c = document.getElementById('sheet'), w = c.clientWidth, h = c.clientHeight, k = Math.min(w / 240, h / 96) * 0.92; return [({x} - 120) * k, ({y} - 48) * k]"))
            .await;
        let (dx, dy) = (steps[0].as_f64().unwrap(), steps[1].as_f64().unwrap());
        // Escape would drop the points: the cross is brought back by what it went.
        let keys = |v: f64, plus: Key, minus: Key| {
            let n = (v.abs() / 8.0).round() as usize;
            let key = char::from(if v > 0.0 { plus } else { minus });
            std::iter::repeat_n(key, n).collect::<String>()
        };
        sheet
            .send_keys(&(keys(dx, Key::Right, Key::Left) + &keys(dy, Key::Up, Key::Down)))
            .await
            .unwrap();
        sheet.send_keys(&char::from(Key::Enter).to_string()).await.unwrap();
        if b.ask("return document.getElementById('ask').hidden").await == json!(true) {
            sheet
                .send_keys(&(keys(-dx, Key::Right, Key::Left) + &keys(-dy, Key::Up, Key::Down)))
                .await
                .unwrap();
        }
    }
    if tool != "known" {
        sheet.send_keys("f").await.unwrap();
    }
}

#[tokio::test]
async fn a_phone_shows_all_of_it_and_takes_fingers() {
    let b = Browser::open(360, 740, true).await;
    b.give(&sample("one-window.dxf"), Some(&sample("one-window.toml"))).await;
    let wide = b.ask("return document.documentElement.scrollWidth").await;
    assert_eq!(wide, json!(360), "nothing stands out at the side");
    // WCAG 2.2, 2.5.8: targets of 24 by 24 CSS pixels at least; ours are 44 high.
    let small = b
        .ask("return [...document.querySelectorAll('button, select, summary, input:not([type=checkbox]):not([type=file])')].filter(e => e.offsetParent && e.getBoundingClientRect().height < 40).map(e => e.id || e.textContent)")
        .await;
    assert_eq!(small, json!([]));
    // One finger drags, two spread.
    let moved = b.ask("const c = document.getElementById('sheet'), r = c.getBoundingClientRect(); const at = (id, x, y, type) => c.dispatchEvent(new PointerEvent(type, { pointerId: id, pointerType: 'touch', clientX: r.left + x, clientY: r.top + y, bubbles: true, isPrimary: id === 1 })); c.setPointerCapture = () => {}; const before = JSON.stringify(c.toDataURL().length); at(1, 100, 100, 'pointerdown'); at(2, 200, 100, 'pointerdown'); at(1, 60, 100, 'pointermove'); at(2, 260, 100, 'pointermove'); at(1, 60, 100, 'pointerup'); at(2, 260, 100, 'pointerup'); return true").await;
    assert_eq!(moved, json!(true));
    b.press("lay").await;
    b.idle().await;
    assert!(b.text("sum").await.contains("panels"), "{}", b.state().await);
    assert_eq!(b.errors().await, [""; 0]);
    b.close().await;
}

#[tokio::test]
async fn nothing_of_a_drawing_runs_and_nothing_is_fetched() {
    let dir = tempfile::tempdir().unwrap();
    let evil = "&lt;img src=x onerror=window.evil=1&gt;&lt;script&gt;window.evil=1&lt;/script&gt;";
    let svg = format!(
        "<svg xmlns='http://www.w3.org/2000/svg' width='240in' height='96in' viewBox='0 0 240 96'><g id='A-WALL-OTLN {evil}'><path fill='none' stroke='black' d='M0 0H240V96H0Z'/></g><g id='{evil}'><text x='9' y='9'>{evil}</text><path fill='none' stroke='red' d='M9 9H20'/></g></svg>"
    );
    let drawing = dir.path().join("a<img src=x onerror=window.evil=1>.svg");
    std::fs::write(&drawing, svg).unwrap();
    let job = dir.path().join("job.toml");
    std::fs::write(&job, "[title]\nproject = \"</script><script>window.evil=1</script>\"\n")
        .unwrap();
    let b = Browser::open(1200, 900, false).await;
    b.give(&drawing, Some(&job)).await;
    if b.ask("return document.getElementById('lay').disabled").await == json!(false) {
        b.press("lay").await;
        b.idle().await;
    }
    assert_eq!(b.ask("return window.evil === undefined").await, json!(true));
    assert_eq!(
        b.ask("return document.querySelectorAll('img, #found script, #read script').length").await,
        json!(0)
    );
    // No way out: the page's own policy forbids each.
    let out = b
        .page
        .execute_async(
            "const done = arguments[0]; const tries = [() => fetch('http://127.0.0.1:9/'), () => new Promise((y, n) => { const x = new XMLHttpRequest(); x.onload = y; x.onerror = n; x.open('GET', 'http://127.0.0.1:9/'); x.send(); }), () => new Promise((y, n) => { const i = new Image(); i.onload = y; i.onerror = n; i.src = 'http://127.0.0.1:9/a.png'; })]; const seen = []; document.addEventListener('securitypolicyviolation', e => seen.push(e.effectiveDirective)); Promise.allSettled(tries.map(t => t())).then(r => setTimeout(() => done([r.map(x => x.status), seen.sort()]), 300))",
            vec![],
        )
        .await
        .unwrap();
    assert_eq!(out[0], json!(["rejected", "rejected", "rejected"]));
    assert_eq!(out[1], json!(["connect-src", "connect-src", "img-src"]));
    b.close().await;
}

#[tokio::test]
async fn no_rule_of_accessibility_is_broken() {
    // A checker of the npm registry, for tests alone; its version is pinned, its package is kept under target/.
    let kept = root().join("target/axe-core-4.10.2.js");
    if !kept.exists() {
        let dir = tempfile::tempdir().unwrap();
        let got = Command::new("npm")
            .args(["pack", "axe-core@4.10.2", "--silent"])
            .current_dir(dir.path())
            .status();
        assert!(got.is_ok_and(|s| s.success()), "npm gives no axe-core: apt-get install -y npm");
        let all = Command::new("tar")
            .args(["xzf", "axe-core-4.10.2.tgz"])
            .current_dir(dir.path())
            .status();
        assert!(all.is_ok_and(|s| s.success()));
        std::fs::copy(dir.path().join("package/axe.min.js"), &kept).unwrap();
    }
    let axe = std::fs::read_to_string(kept).unwrap();
    let b = Browser::open(1200, 900, false).await;
    b.give(&sample("one-window.dxf"), Some(&sample("one-window.toml"))).await;
    b.press("lay").await;
    b.idle().await;
    b.ask("document.querySelectorAll('details').forEach(d => d.open = true)").await;
    b.page.execute(&axe, vec![]).await.unwrap();
    for look in ["light", "dark", "sun"] {
        b.ask(&format!("const s = document.getElementById('look'); s.value = '{look}'; s.dispatchEvent(new Event('change'))")).await;
        let found = b
            .page
            .execute_async("const done = arguments[0]; axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then(r => done(r.violations.map(v => v.id + ': ' + v.nodes.slice(0, 3).map(n => n.html).join(' | '))), e => done([String(e)]))", vec![])
            .await
            .unwrap();
        assert_eq!(found, json!([]), "{look}");
    }
    b.close().await;
}

/// Other people's prints, where `LAPWRIGHT_CORPUS` names a folder with them: `house/*.pdf`.
#[tokio::test]
async fn a_print_of_many_strokes_opens_and_its_scale_is_set_by_a_length() {
    let Some(folder) = std::env::var_os("LAPWRIGHT_CORPUS") else {
        println!("NOT TESTED: prints; LAPWRIGHT_CORPUS names no folder");
        return;
    };
    let folder = Path::new(&folder).join("house");
    let prints: Vec<_> = std::fs::read_dir(&folder)
        .unwrap()
        .map(|e| e.unwrap().path())
        .filter(|p| p.extension().is_some_and(|e| e == "pdf"))
        .collect();
    assert!(!prints.is_empty(), "{}", folder.display());
    let b = Browser::open(1400, 900, false).await;
    for print in prints {
        b.give(&print.canonicalize().unwrap(), None).await;
        let lines = b.ask("return [...document.querySelectorAll('#layers p')].length").await;
        assert!(lines.as_u64().unwrap() > 0, "{}", b.state().await);
        assert!(!b.state().await.contains("failed"), "{}", b.state().await);
        println!("{}: {}", print.display(), b.state().await);
    }
    assert_eq!(b.errors().await, [""; 0]);
    b.close().await;
}

#[tokio::test]
async fn what_a_crew_ticks_is_kept_and_saved_as_its_schema_says() {
    let (drawing, job) = (sample("one-gable.dxf"), sample("one-gable.toml"));
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join("review.html"), &by_command(&drawing, &job)["review.html"])
        .unwrap();
    let b = Browser::open(1000, 800, false).await;
    let url = format!("file://{}", dir.path().join("review.html").display());
    b.page.goto(&url).await.unwrap();
    let of = b.ask("const all = [...document.querySelectorAll('input[data-tick=cut]')]; all[0].click(); all[2].click(); document.querySelector('input[data-tick=hung]').click(); return [all[0].dataset.of, all[2].dataset.of, document.querySelector('input[data-tick=hung]').dataset.of]").await;
    b.page.goto(&url).await.unwrap();
    let saved = b.saved("save", "ticks.json").await;
    let saved: serde_json::Value = serde_json::from_slice(&saved).unwrap();
    assert_eq!(saved["format"], "lapwright-ticks/1");
    assert_eq!(saved["cut"], json!([of[0], of[1]]));
    assert_eq!(saved["hung"], json!([of[2]]));
    // Every key and no other, as `lapwright schema ticks` has them; the drawing by its hash.
    let schema = Command::new(command()).args(["schema", "ticks"]).output().unwrap();
    let schema: serde_json::Value = serde_json::from_slice(&schema.stdout).unwrap();
    let keys = |v: &serde_json::Value| {
        v.as_object().unwrap().keys().cloned().collect::<std::collections::BTreeSet<_>>()
    };
    assert_eq!(keys(&saved), keys(&schema["properties"]));
    let hash = saved["drawing"].as_str().unwrap();
    assert!(hash.len() == 64 && hash.bytes().all(|c| c.is_ascii_hexdigit()), "{hash}");
    assert_eq!(b.errors().await, [""; 0]);
    b.close().await;
}

#[tokio::test]
async fn the_house_folded_up_is_drawn_and_turned() {
    let files = by_command(&sample("curlew-cottage.dxf"), &sample("curlew-cottage.toml"));
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join("review.html"), &files["review.html"]).unwrap();
    let b = Browser::open(1000, 800, false).await;
    b.page.goto(&format!("file://{}", dir.path().join("review.html").display())).await.unwrap();
    tokio::time::sleep(std::time::Duration::from_millis(400)).await;
    let picture = "return document.getElementById('folded').toDataURL()";
    let before = b.ask(picture).await;
    b.ask("document.querySelector('[data-turn=\"15\"]').click()").await;
    tokio::time::sleep(std::time::Duration::from_millis(400)).await;
    let turned = b.ask(picture).await;
    assert_ne!(before, turned);
    // Back again is as before.
    b.ask("document.querySelector('[data-turn=\"-15\"]').click()").await;
    tokio::time::sleep(std::time::Duration::from_millis(400)).await;
    assert_eq!(b.ask(picture).await, before);
    assert_eq!(b.errors().await, [""; 0]);
    b.close().await;
}
