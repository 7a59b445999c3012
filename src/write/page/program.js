// The program in its worker: calls one after the other, one that takes too long stopped by ending the worker.
const program = (() => {
  let module = null, worker = null, next = 1;
  const waiting = new Map();
  const bytes_of = async (base64) => {
    const text = atob(base64), packed = new Uint8Array(text.length);
    for (let i = 0; i < text.length; i++) packed[i] = text.charCodeAt(i);
    return new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();
  };
  const begin = () => {
    const script = document.getElementById("binding").textContent + "\n" + document.getElementById("worker").textContent;
    const url = URL.createObjectURL(new Blob([script], { type: "text/javascript" }));
    worker = new Worker(url);
    worker.onmessage = ({ data }) => {
      if (data.ready) return;
      const call = waiting.get(data.id);
      if (!call) return;
      if (data.watch) { call.watch && call.watch(...data.watch); return; }
      waiting.delete(data.id);
      if ("fault" in data) { again(); call.failed(new Error(data.fault)); } else call.done(data.value);
    };
    worker.onerror = (e) => { e.preventDefault(); again(); end_all(new Error(e.message || "")); };
    worker.postMessage({ program: module });
  };
  const again = () => { worker.terminate(); begin(); };
  const end_all = (why) => { for (const c of waiting.values()) c.failed(why); waiting.clear(); };
  return {
    async start() {
      const at = document.getElementById("program");
      module = await WebAssembly.compile(await bytes_of(at.textContent.trim()));
      at.remove();
      begin();
    },
    call: (call, args, watch) => new Promise((done, failed) => {
      const id = next++;
      waiting.set(id, { done, failed, watch });
      worker.postMessage({ id, call, args });
    }),
    stop() { again(); const why = new Error(""); why.stopped = true; end_all(why); },
  };
})();
