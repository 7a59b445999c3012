//! Nobody's files are lost: where results go by default, what is replaced and what never is, folders from
//! before there were lists of files, and folders that cannot be exchanged as a whole.

use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;
use std::time::Duration;

use lapwright::outputs::marker::MARKER;
use lapwright::outputs::paths::name_fault;

use crate::support::{dxf, rect, root};

const PROGRAM: &str = env!("CARGO_BIN_EXE_lapwright");

/// A wall of this width, as a drawing that names its unit.
fn wall(width: f64) -> String {
    let head = "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n1\n0\nENDSEC\n";
    format!("{head}{}", dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, width, 40.0))]))
}

/// Every file below a folder by its path, and what it holds.
fn contents(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let mut out = BTreeMap::new();
    let mut open = vec![folder.to_owned()];
    while let Some(at) = open.pop() {
        for entry in std::fs::read_dir(at).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() && !path.is_symlink() {
                open.push(path);
            } else {
                let name = path.strip_prefix(folder).unwrap().to_string_lossy().replace('\\', "/");
                out.insert(name, std::fs::read(&path).unwrap_or_default());
            }
        }
    }
    out
}

/// A program run in a folder: its exit and what it said, on one line.
fn run(at: &Path, args: &[&str]) -> (Option<i32>, String) {
    let out = Command::new(PROGRAM).current_dir(at).args(args).output().unwrap();
    let err = String::from_utf8_lossy(&out.stderr).replace(['\n', '│'], " ");
    (out.status.code(), err.split_whitespace().collect::<Vec<_>>().join(" "))
}

#[track_caller]
fn done(at: &Path, args: &[&str]) -> String {
    let (code, err) = run(at, args);
    assert_eq!(code, Some(0), "{args:?}: {err}");
    err
}

/// The run is refused with these words, and everything is as it was.
#[track_caller]
fn refused(at: &Path, args: &[&str], words: &[&str]) {
    let before = contents(at);
    let (code, err) = run(at, args);
    assert_eq!(code, Some(1), "{args:?}: {err}");
    for word in words.iter().chain(&["out-refused"]) {
        assert!(err.contains(word), "`{word}` not in: {err}");
    }
    assert!(contents(at) == before, "{args:?} wrote something: {:?}", contents(at).keys());
}

const LAYOUT: [&str; 3] = ["layout", "house.dxf", "--no-pictures"];
const AGAIN: [&str; 4] = ["layout", "house.dxf", "--no-pictures", "--replace"];

/// A folder with `house.dxf`, laid out into `house-layout`.
fn house() -> tempfile::TempDir {
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join("house.dxf"), wall(120.0)).unwrap();
    done(dir.path(), &LAYOUT);
    dir
}

#[test]
fn drawings_of_one_name_in_many_folders_keep_their_results_apart() {
    let dir = tempfile::tempdir().unwrap();
    for (folder, width) in [("a", 120.0), ("b c", 150.0), ("d/e", 180.0)] {
        let folder = dir.path().join(folder);
        std::fs::create_dir_all(&folder).unwrap();
        std::fs::write(folder.join("house.dxf"), wall(width)).unwrap();
    }
    for (folder, width) in [("a", 120.0), ("b c", 150.0), ("d/e", 180.0)] {
        let said = done(dir.path(), &["layout", &format!("{folder}/house.dxf"), "--no-pictures"]);
        assert!(said.contains(&format!("Wrote {folder}/house-layout:")), "{said}");
        let path = dir.path().join(folder).join("house-layout/layout.json");
        let json: serde_json::Value =
            serde_json::from_slice(&std::fs::read(path).unwrap()).unwrap();
        let outline = json["elevations"][0]["walls"][0]["outline"].to_string();
        assert!(outline.contains(&format!("{width:.1}")), "{outline}");
    }
    assert_eq!(std::fs::read_dir(dir.path()).unwrap().count(), 3);
}

#[test]
fn two_drawings_of_one_stem_do_not_take_each_others_folder() {
    let dir = house();
    std::fs::write(dir.path().join("house.DXF"), wall(150.0)).unwrap();
    let other = ["layout", "house.DXF", "--no-pictures"];
    refused(dir.path(), &other, &["house-layout", "another drawing, house.dxf", "--out"]);
    done(dir.path(), &["layout", "house.DXF", "--no-pictures", "--replace"]);
    // A folder that the user names is the user's to choose.
    done(dir.path(), &["layout", "house.dxf", "--no-pictures", "--out", "house-layout"]);
}

#[test]
fn the_list_has_the_hash_of_each_file() {
    let dir = house();
    let out = dir.path().join("house-layout");
    let list = std::fs::read_to_string(out.join(MARKER)).unwrap();
    let listed = list.lines().filter(|l| !l.starts_with('#')).count();
    assert_eq!(listed, contents(&out).len() - 1);
    // By a program of the system's, where there is one.
    match Command::new("sha256sum").current_dir(&out).args(["--quiet", "-c", MARKER]).output() {
        Ok(o) => assert!(o.status.success(), "{}", String::from_utf8_lossy(&o.stdout)),
        Err(_) => println!("skipped: there is no sha256sum"),
    }
}

#[test]
fn edited_files_and_others_are_never_replaced_unless_the_user_says_so() {
    let dir = house();
    let out = dir.path().join("house-layout");
    let at = |name: &str| out.join(name);
    // What was deleted is no loss: it is written anew.
    std::fs::remove_file(at("cut-list.csv")).unwrap();
    std::fs::remove_dir_all(at("sheets")).unwrap();
    done(dir.path(), &LAYOUT);
    let whole = contents(&out);
    let mut csv = std::fs::read(at("takeoff.csv")).unwrap();
    csv.extend(b"mine");
    std::fs::write(at("takeoff.csv"), &csv).unwrap();
    refused(dir.path(), &LAYOUT, &["changed since Lapwright wrote it (takeoff.csv)"]);
    std::fs::write(at("sheets/notes.txt"), "mine").unwrap();
    std::fs::create_dir(at("photos")).unwrap();
    let words = ["did not write (photos/, sheets/notes.txt)", "(takeoff.csv)", "--replace"];
    refused(dir.path(), &LAYOUT, &words);
    // A link in a file's place is not ours either, even to the same bytes.
    #[cfg(unix)]
    {
        std::fs::rename(at("report.txt"), dir.path().join("elsewhere.txt")).unwrap();
        std::os::unix::fs::symlink("../elsewhere.txt", at("report.txt")).unwrap();
        refused(dir.path(), &LAYOUT, &["report.txt"]);
    }
    done(dir.path(), &AGAIN);
    let mut after = contents(&out);
    assert_eq!(after.remove("sheets/notes.txt").as_deref(), Some(&b"mine"[..]));
    assert!(after == whole && at("photos").is_dir());
    #[cfg(unix)]
    assert!(!at("report.txt").is_symlink() && dir.path().join("elsewhere.txt").exists());
    refused(dir.path(), &LAYOUT, &["did not write (photos/, sheets/notes.txt)"]);
    std::fs::remove_file(at("sheets/notes.txt")).unwrap();
    std::fs::remove_dir(at("photos")).unwrap();
    done(dir.path(), &LAYOUT);
    // What was edited and has not the name of a result of this run stays.
    done(dir.path(), &["layout", "house.dxf", "--no-pictures", "--overlay", "separate"]);
    std::fs::write(at("overlay-alone.dxf"), "mine").unwrap();
    done(dir.path(), &AGAIN);
    assert_eq!(std::fs::read_to_string(at("overlay-alone.dxf")).unwrap(), "mine");
    // And a folder is not replaced by a file, whatever is said of files.
    std::fs::remove_file(at("overlay-alone.dxf")).unwrap();
    std::fs::remove_file(at("report.txt")).unwrap();
    std::fs::create_dir(at("report.txt")).unwrap();
    std::fs::write(at("report.txt/mine"), "mine").unwrap();
    refused(dir.path(), &AGAIN, &["report.txt is a folder"]);
}

#[test]
fn a_forged_or_damaged_list_frees_nothing() {
    let dir = house();
    let out = dir.path().join("house-layout");
    let list = std::fs::read_to_string(out.join(MARKER)).unwrap();
    std::fs::write(out.join(MARKER), "mine").unwrap();
    refused(dir.path(), &LAYOUT, &[MARKER]);
    // A list that leads outside is no list.
    let hash = "0".repeat(64);
    std::fs::write(out.join(MARKER), format!("{list}{hash}  ../house.dxf\n")).unwrap();
    refused(dir.path(), &LAYOUT, &[MARKER]);
    std::fs::write(out.join(MARKER), list).unwrap();
    done(dir.path(), &LAYOUT);
}

/// Without its list a folder is one from before there were lists.
#[test]
#[allow(clippy::too_many_lines)] // One walk, told in order.
fn a_folder_from_before_lists_is_ours_only_as_we_made_it() {
    let dir = tempfile::tempdir().unwrap();
    let sample = root().join("sample-drawings/one-window");
    for ending in ["dxf", "toml"] {
        let to = dir.path().join("house").with_extension(ending);
        std::fs::copy(sample.with_extension(ending), to).unwrap();
    }
    let first = ["layout", "house.dxf", "--job", "house.toml", "--overlay", "separate"];
    done(dir.path(), &first);
    let out = dir.path().join("house-layout");
    std::fs::remove_file(out.join(MARKER)).unwrap();
    // There was no page for a browser before there were lists.
    std::fs::remove_file(out.join("review.html")).unwrap();
    let old = contents(&out);
    assert!(old.len() > 20, "{:?}", old.keys());
    let text = |name: &str| String::from_utf8(old[name].clone()).unwrap();
    let appended = |name: &str, more: &str| [old[name].clone(), more.into()].concat();
    let changed = |name: &str, from: &str, to: &str| {
        assert!(text(name).contains(from), "{name} without {from}");
        text(name).replacen(from, to, 1).into_bytes()
    };
    let order = text("takeoff.csv").lines().nth(1).unwrap().to_owned();
    let cells: Vec<&str> = order.splitn(5, ',').collect();
    let panels = format!("{},{},{},", cells[0], cells[1], cells[2]);
    let entity = "0\nLINE\n  8\nMINE\n 10\n0\n 20\n0\n 11\n9\n 21\n9\n";
    let last = text("overlay-alone.dxf").rfind("0\nENDSEC").unwrap();
    let mut drawn_on = text("overlay-alone.dxf");
    drawn_on.insert_str(last, entity);
    let mut spoiled = old["takeoff.xlsx"].clone();
    let at = spoiled.windows(16).rposition(|w| w == b"docProps/app.xml").unwrap();
    spoiled[at] = b'D';
    let edits: [(&str, Vec<u8>); 14] = [
        ("report.txt", appended("report.txt", "\nPaid the lumber yard.\n")),
        ("report.txt", b"my notes\n".to_vec()),
        ("takeoff.csv", appended("takeoff.csv", "nails,box,4\r\n")),
        ("takeoff.csv", changed("takeoff.csv", &panels, &panels.replace(cells[2], "17"))),
        ("takeoff.csv", text("takeoff.csv").replace("\r\n", "\n").into_bytes()),
        ("cut-list.csv", changed("cut-list.csv", "W1-", "X1-")),
        ("takeoff.json", changed("takeoff.json", "  ", "")),
        ("layout.json", b"{}\n".to_vec()),
        ("sheets/01-cover.svg", appended("sheets/01-cover.svg", "<!-- seen -->")),
        ("sheets/01-cover.png", old["sheets/02-window-wall.svg"].clone()),
        ("sheets.pdf", appended("sheets.pdf", "1 0 obj\n<</Annots[]>>\nendobj\n%%EOF\n")),
        ("takeoff.xlsx", spoiled),
        ("overlay-alone.dxf", drawn_on.into_bytes()),
        ("sheets/20-my-photo.png", old["sheets/01-cover.png"].clone()),
    ];
    for (name, bytes) in edits {
        println!("{name}");
        std::fs::write(out.join(name), bytes).unwrap();
        refused(dir.path(), &first, &[name]);
        match old.get(name) {
            Some(bytes) => std::fs::write(out.join(name), bytes).unwrap(),
            None => std::fs::remove_file(out.join(name)).unwrap(),
        }
    }
    // Changed long after the rest, whatever it holds.
    let report = std::fs::File::options().write(true).open(out.join("report.txt")).unwrap();
    let written = report.metadata().unwrap().modified().unwrap();
    report.set_modified(written + Duration::from_secs(86_400)).unwrap();
    refused(dir.path(), &first, &["changed since Lapwright wrote it (report.txt)"]);
    report.set_modified(written).unwrap();
    drop(report);
    done(dir.path(), &first);
    assert!(out.join(MARKER).exists());
}

#[test]
fn files_of_the_users_by_our_names_are_the_users() {
    for name in [
        "report.txt",
        "takeoff.csv",
        "layout.json",
        "sheets/01-roof.svg",
        "sheets/02-site.png",
        "overlay.dxf",
        "check.txt",
        "sheets.pdf",
        "zone-1-gable/report.txt",
    ] {
        let dir = tempfile::tempdir().unwrap();
        std::fs::write(dir.path().join("house.dxf"), wall(120.0)).unwrap();
        let path = dir.path().join("house-layout").join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(&path, "item,unit\r\nmine,1\r\n").unwrap();
        refused(dir.path(), &LAYOUT, &[name]);
    }
}

#[test]
fn nothing_by_the_name_of_a_stage_is_touched_without_our_lock() {
    let dir = house();
    let names = [
        ".lapwright-empty/",
        ".lapwright-file",
        ".lapwright-mine/new/a",
        ".lapwright-old/old/a",
        ".lapwright-lock/lock",
        ".lapwright-locks/lock/a",
        ".lapwright-half/lock-making",
    ];
    for name in names {
        let path = dir.path().join(name);
        std::fs::create_dir_all(if name.ends_with('/') { &path } else { path.parent().unwrap() })
            .unwrap();
        if !name.ends_with('/') {
            std::fs::write(path, "mine").unwrap();
        }
    }
    done(dir.path(), &LAYOUT);
    for name in names {
        assert!(dir.path().join(name).exists(), "{name}");
    }
}

/// The state that a run leaves which is stopped between taking the old folder away and putting the new
/// one, as `src/cli/stage.rs` describes it.
#[test]
fn results_that_a_stopped_run_had_taken_away_are_found_again() {
    let dir = house();
    let before = contents(&dir.path().join("house-layout"));
    let stage = dir.path().join(".lapwright-Ab12Cd");
    std::fs::create_dir_all(stage.join("new")).unwrap();
    std::fs::rename(dir.path().join("house-layout"), stage.join("old")).unwrap();
    let lock = "lapwright-lock/1\nto house-layout\n# lapwright-files/1\n";
    std::fs::write(stage.join("lock"), lock).unwrap();
    // Even a run that comes to nothing puts them back, and says so.
    std::fs::write(dir.path().join("house.dxf"), "no drawing").unwrap();
    let (code, said) = run(dir.path(), &["layout", "house.dxf", "--quiet"]);
    assert_eq!(code, Some(1), "{said}");
    assert!(said.contains("house-layout: what was there before is back"), "{said}");
    assert!(contents(&dir.path().join("house-layout")) == before);
    assert_eq!(std::fs::read_dir(dir.path()).unwrap().count(), 2, "the stage is still there");
}

#[test]
fn a_drawing_without_a_folder_that_takes_results_is_laid_out_in_the_working_folder() {
    let dir = tempfile::tempdir().unwrap();
    let mut piped = Command::new("sh");
    piped.current_dir(dir.path()).args([
        "-c",
        "printf '%s' \"$DRAWING\" | \"$0\" layout - --no-pictures",
        PROGRAM,
    ]);
    match piped.env("DRAWING", wall(120.0)).output() {
        Ok(o) => {
            let said = String::from_utf8_lossy(&o.stderr).into_owned();
            assert!(o.status.success() && said.contains("by standard input"), "{said}");
            assert!(dir.path().join("drawing-layout/layout.json").exists(), "{said}");
        }
        Err(_) => println!("skipped: there is no shell"),
    }
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let lock = |name: &str, mode| {
            let mode = std::fs::Permissions::from_mode(mode);
            std::fs::set_permissions(dir.path().join(name), mode).unwrap();
        };
        for name in ["plans", "more"] {
            std::fs::create_dir(dir.path().join(name)).unwrap();
            std::fs::write(dir.path().join(name).join("house.dxf"), wall(150.0)).unwrap();
            lock(name, 0o555);
        }
        let said = done(dir.path(), &["layout", "plans/house.dxf", "--no-pictures"]);
        assert!(said.contains("folder cannot be written to"), "{said}");
        assert!(dir.path().join("house-layout/layout.json").exists());
        done(dir.path(), &["layout", "./plans/house.dxf", "--no-pictures"]);
        // The next drawing of that name does not take its place.
        let words = ["another drawing, plans/house.dxf"];
        refused(dir.path(), &["layout", "more/house.dxf", "--no-pictures"], &words);
        lock("plans", 0o755);
        lock("more", 0o755);
    }
}

/// Runs `script` in a mount namespace of its own, where nothing stays mounted; none where that is not to
/// be had.
#[allow(clippy::print_stdout)] // What was left out is said.
#[cfg(target_os = "linux")]
fn unshared(at: &Path, script: &str) -> Option<String> {
    let mut c = Command::new("unshare");
    let o = c.current_dir(at).args(["-m", "sh", "-c", script, PROGRAM]).output().ok()?;
    let said = String::from_utf8_lossy(&o.stderr).replace(['\n', '│'], " ");
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    let there = o.status.code() != Some(77) && !said.contains("unshare failed");
    if !there {
        println!("skipped: nothing may be mounted here: {said}");
    }
    there.then_some(said)
}

#[test]
#[cfg(target_os = "linux")]
fn a_mount_point_and_a_folder_in_a_read_only_one_take_results_file_by_file() {
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join("house.dxf"), wall(120.0)).unwrap();
    let twice = "for n in 1 2; do \"$0\" layout house.dxf --no-pictures --out m/out >&2; echo \"exit $?\" >&2; done; \
                 rm m/out/cut-list.csv; echo x >> m/out/report.txt; \
                 \"$0\" layout house.dxf --no-pictures --out m/out >&2; echo \"exit $?\" >&2; \
                 \"$0\" layout house.dxf --no-pictures --out m/out --replace >&2; echo \"exit $?\" >&2; \
                 ls -A m m/out >&2; (cd m/out && sha256sum --quiet -c lapwright-files.sha256) >&2 && echo sound >&2";
    for mount in [
        // Another file system; a folder bound to itself, which has the number of the one it lies in; a folder
        // that may be written in one that may not.
        "mkdir -p m/out && mount -t tmpfs tmpfs m/out 2>/dev/null || exit 77; ",
        "mkdir -p m/out && mount --bind m/out m/out 2>/dev/null || exit 77; ",
        "mkdir -p m && mount -t tmpfs tmpfs m 2>/dev/null && mkdir m/out && mount -t tmpfs tmpfs m/out && mount -o remount,ro m || exit 77; ",
    ] {
        let Some(said) = unshared(dir.path(), &format!("{mount}{twice}")) else { return };
        let exits: Vec<&str> =
            said.match_indices("exit ").map(|(i, _)| &said[i + 5..i + 6]).collect();
        assert_eq!(exits, ["0", "0", "1", "0"], "{mount}: {said}");
        assert!(said.contains("report.txt") && said.ends_with("sound"), "{mount}: {said}");
        assert!(said.contains("m: out m/out:"), "something is left beside: {said}");
        let _ = std::fs::remove_dir_all(dir.path().join("m"));
    }
    // A drawing on a disk that may not be written.
    let script = "mkdir -p r && mount -t tmpfs tmpfs r 2>/dev/null || exit 77; cp house.dxf r; mount -o remount,ro r; \
                  \"$0\" layout r/house.dxf --no-pictures >&2; echo \"exit $?\" >&2; ls house-layout >&2";
    let Some(said) = unshared(dir.path(), script) else { return };
    assert!(said.contains("cannot be written to") && said.contains("exit 0"), "{said}");
    assert!(said.contains("layout.json"), "{said}");
}

#[test]
fn what_check_and_template_write_is_replaced_only_as_they_wrote_it() {
    let dir = house();
    for (args, name) in [
        (["check", "house.dxf", "--out", "told"].as_slice(), "told/check.txt"),
        (&["check", "house.dxf", "--out", "."], "problems.svg"),
        (&["template", "given"], "given/job.toml"),
    ] {
        let path = dir.path().join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(&path, "mine").unwrap();
        refused(dir.path(), args, &[path.file_name().unwrap().to_str().unwrap(), "did not write"]);
        std::fs::remove_file(&path).unwrap();
        done(dir.path(), args);
        // Its own are replaced without a word.
        done(dir.path(), args);
        let own = std::fs::read(&path).unwrap();
        std::fs::write(&path, "mine").unwrap();
        refused(dir.path(), args, &["changed since Lapwright wrote it"]);
        done(dir.path(), &[args, &["--replace"]].concat());
        assert!(std::fs::read(&path).unwrap() == own);
        assert!(dir.path().join("house.dxf").exists());
    }
    // Into a folder of results, and the next layout knows them for its own.
    done(dir.path(), &["check", "house.dxf", "--out", "house-layout"]);
    done(dir.path(), &LAYOUT);
    assert!(!dir.path().join("house-layout/check.txt").exists());
}

#[test]
fn files_named_after_views_have_names_that_every_system_takes() {
    let views = [
        "CON",
        "aux. ",
        "NUL.svg",
        "com1",
        "../../up",
        r"\\?\C:\x",
        "C:drive",
        "a<b>c|d?e*f\"g",
        "正面図",
        "FRONT",
        "front",
        "  ",
        &"long name ".repeat(40),
    ];
    let mut job = String::from("[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n");
    let mut rings = Vec::new();
    for (i, name) in views.iter().enumerate() {
        let x = 500.0 * i as f64;
        rings.push(("A-WALL-OTLN", rect(x, 0.0, x + 120.0, 40.0)));
        let name = serde_json::to_string(name).unwrap();
        let region = format!("[{:.1}, -90.0, {:.1}, 90.0]", x - 50.0, x + 200.0);
        job.push_str(&format!("[[elevation]]\nname = {name}\nregion = {region}\n"));
    }
    job.push_str("[[zone]]\nname = \"nul.\"\n[[zone.region]]\nbottom = \"2'-0\\\"\"\n[zone.product]\nkind = \"wood\"\n");
    let rings: Vec<(&str, &[(f64, f64)])> = rings.iter().map(|(l, r)| (*l, &r[..])).collect();
    let job = match lapwright::job::file::parse(&job, "job") {
        Ok(job) => job,
        // A view must have a name that can be read: what is refused makes no file.
        Err(_) => lapwright::job::file::parse(&job.replace("\"  \"", "\"x\""), "job").unwrap(),
    };
    let source = dxf(&rings);
    let mut findings = lapwright::finding::Findings::default();
    let sets =
        lapwright::pipeline::layout(source.as_bytes(), "d.dxf", &job, &mut findings, &mut |_| {})
            .unwrap();
    let mut seen = std::collections::BTreeSet::new();
    for set in sets.iter() {
        let folder = lapwright::outputs::names::set_folder(&set.layout);
        for (name, _) in lapwright::outputs::set::files(set, source.as_bytes(), false).unwrap() {
            let path = folder.iter().map(|f| format!("{f}/{name}")).next().unwrap_or(name);
            assert!(path.is_ascii() && path.len() < 120, "{path}");
            for part in path.split('/') {
                assert_eq!(name_fault(part), None, "{path}");
            }
            // Nor do two differ by nothing but case.
            assert!(seen.insert(path.to_lowercase()), "{path} is there twice");
        }
    }
    assert!(seen.len() > views.len(), "{seen:?}");
}

/// The first command of the README writes where its text says, into a folder that git does not look at.
#[test]
fn the_readmes_first_command_leaves_a_clone_clean() {
    let text = std::fs::read_to_string(root().join("README.md")).unwrap();
    let command = text.lines().find(|l| l.starts_with("cargo run")).unwrap();
    let words: Vec<&str> = command.split_whitespace().collect();
    let at = words.iter().position(|w| *w == "--out").unwrap();
    let folder = words[at + 1];
    let before = text.split(command).next().unwrap().lines().rev().take(4);
    assert!(before.collect::<String>().contains(&format!("`{folder}/`")), "{folder}");
    let ignored = std::fs::read_to_string(root().join(".gitignore")).unwrap();
    assert!(folder.ends_with("-layout") && ignored.lines().any(|l| l == "*-layout/"));
}
