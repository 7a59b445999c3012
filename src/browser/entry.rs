//! The calls as a page's worker makes them.

use js_sys::{Array, Function, Uint8Array};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

use super::calls;
use crate::write::json;

#[wasm_bindgen]
extern "C" {
    /// The worker's own: what went wrong, before the program ends.
    #[wasm_bindgen(js_name = noteFault)]
    fn note_fault(said: &str);
}

/// Called once, before all else: a fault is told in words.
#[wasm_bindgen(start)]
pub fn begin() {
    std::panic::set_hook(Box::new(|fault| note_fault(&fault.to_string())));
}

/// As [`calls::look`].
#[wasm_bindgen]
pub fn look(bytes: &[u8], name: &str, job: &str) -> String {
    calls::look(bytes, name, job)
}

/// As [`calls::start`].
#[wasm_bindgen]
pub fn start(bytes: &[u8], name: &str) -> String {
    calls::start(bytes, name)
}

/// As [`calls::edit`].
#[wasm_bindgen]
pub fn edit(job: &str, change: &str) -> String {
    calls::edit(job, change)
}

/// As [`calls::settings`].
#[wasm_bindgen]
pub fn settings() -> String {
    calls::settings()
}

/// As [`calls::lay`]: what is told as JSON, then each file's path and bytes by turns, then all of them as one
/// archive, null where they do not fit into one. `watch` is called with the rounds done, of how many, panels and bound.
#[wasm_bindgen]
pub fn lay(bytes: &[u8], name: &str, job: &str, pictures: bool, watch: &Function) -> Array {
    let laid = calls::lay(bytes, name, job, pictures, &mut |p| {
        let all = [p.done as f64, p.of as f64, p.panels as f64, p.bound as f64];
        let all: Array = all.iter().map(|v| JsValue::from_f64(*v)).collect();
        // What a page does with it is its own affair.
        let _ = watch.apply(&JsValue::NULL, &all);
    });
    let out = Array::of1(&json::compact(&laid.told).into());
    for (path, file) in &laid.files {
        out.push(&path.as_str().into());
        out.push(&Uint8Array::from(file.as_slice()));
    }
    let packed = calls::pack(&laid.files);
    out.push(&packed.map_or(JsValue::NULL, |p| Uint8Array::from(p.as_slice()).into()));
    out
}
