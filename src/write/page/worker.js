// The program, by itself beside the page. A call is { id, call, args }, its answer { id, value }.
let ready = null, noted = "";
self.noteFault = (said) => { noted = said; };
onmessage = async ({ data }) => {
  if (data.program) { ready = wasm_bindgen({ module_or_path: data.program }); await ready; postMessage({ ready: true }); return; }
  const { id, call, args } = data;
  try {
    await ready;
    if (call === "lay") {
      let last = 0;
      args.push((done, of, panels, bound) => {
        const now = Date.now();
        if (now - last > 80) { last = now; postMessage({ id, watch: [done, of, panels, bound] }); }
      });
      const value = wasm_bindgen.lay(...args);
      postMessage({ id, value });
    } else {
      postMessage({ id, value: wasm_bindgen[call](...args) });
    }
  } catch (fault) {
    postMessage({ id, fault: noted || String(fault && fault.message || fault) });
  }
};
