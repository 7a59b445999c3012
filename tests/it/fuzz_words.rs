//! The words the fuzz targets are given: every key of the job file and every agreed layer, so that a new
//! feature is fuzzed from its first day.

use std::collections::BTreeSet;

use lapwright::job::layers::AGREED_LAYERS;
use lapwright::job::schema;
use lapwright::model::linework::Role;

use crate::support::root;

/// A file under `tests/fuzz`.
fn text(name: &str) -> String {
    std::fs::read_to_string(root().join("tests/fuzz").join(name)).unwrap()
}

#[test]
fn the_job_dictionary_holds_every_table_and_key() {
    let words = text("job.dict");
    let words: BTreeSet<&str> = words.lines().collect();
    let keys = schema::keys();
    assert!(keys.len() > 150);
    let is_table = |k: &String| keys.iter().any(|o| o.starts_with(&format!("{k}.")));
    for key in &keys {
        let last = key.rsplit('.').next().unwrap();
        let forms = match is_table(key) {
            true => [format!("\"[{key}]\""), format!("\"[[{key}]]\"")],
            false => [format!("\"{last} = \""), format!("\"{last} = [\"")],
        };
        assert!(forms.iter().any(|f| words.contains(f.as_str())), "add {key} to job.dict");
    }
}

#[test]
fn drawn_shapes_and_dictionaries_hold_every_agreed_layer() {
    let (shapes, dxf, svg) = (text("targets/drawn.rs"), text("dxf.dict"), text("svg.dict"));
    // In the shapes a layer stands in a list or within the text of an entity.
    let drawn =
        |l: &str| shapes.contains(&format!("\"{l}\"")) || shapes.contains(&format!("\\n{l}\\n"));
    let whole = |l: &&(Role, &str)| l.0 != Role::Ignore && !l.1.contains('*');
    for (role, layer) in AGREED_LAYERS.iter().filter(whole) {
        assert!(dxf.contains(&format!("8\\x0a{layer}\\x0a")), "add {layer} to dxf.dict");
        assert!(svg.contains(&format!("id=\\\"{layer}\\\"")), "add {layer} to svg.dict");
        let mut of_role = AGREED_LAYERS.iter().filter(|l| l.0 == *role);
        assert!(of_role.any(|l| drawn(l.1)), "draw {role:?} in targets/drawn.rs");
    }
}
