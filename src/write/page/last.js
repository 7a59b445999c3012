// Everything is there: it begins.
(async () => {
  const open = async (file) => {
    if (/\.toml$/i.test(file.name)) return work.put(await file.text());
    tools.cancel();
    await work.open(file.name, new Uint8Array(await file.arrayBuffer()));
  };
  el("file").onchange = (e) => e.target.files[0] && open(e.target.files[0]);
  el("jobfile").onchange = (e) => e.target.files[0] && open(e.target.files[0]);
  const body = document.body;
  body.ondragover = (e) => { e.preventDefault(); body.classList.add("drop"); };
  body.ondragleave = () => body.classList.remove("drop");
  body.ondrop = async (e) => { e.preventDefault(); body.classList.remove("drop"); for (const f of e.dataTransfer.files) await open(f); };
  el("undo").onclick = work.undo;
  el("redo").onclick = work.redo;
  document.addEventListener("keydown", (e) => {
    if (!(e.ctrlKey || e.metaKey) || e.target.matches("input, textarea") || e.key.toLowerCase() !== "z") return;
    e.preventDefault();
    if (e.shiftKey) work.redo(); else work.undo();
  });
  el("nearer").onclick = () => board.zoom(1.5);
  el("farther").onclick = () => board.zoom(1 / 1.5);
  el("whole").onclick = board.whole;
  el("use_job").onclick = () => work.put(el("job").value);
  el("first_job").onclick = work.first_job;
  el("save_job").onclick = () => { const a = results.link(new TextEncoder().encode(work.job()), work.stem() + ".toml", ""); a.click(); };
  el("lay").onclick = work.lay;
  el("stop").onclick = program.stop;
  const look = (to) => { document.documentElement.dataset.look = to; el("look").value = to; board.fresh(); };
  el("look").onchange = () => { look(el("look").value); try { localStorage.setItem("lapwright-look", el("look").value); } catch { /* It is for this time alone, then. */ } };
  let kept = "";
  try { kept = localStorage.getItem("lapwright-look") || ""; } catch { /* As the device. */ }
  look(kept);
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", board.fresh);
  tools.start();
  try {
    await program.start();
    await settings.start();
    await work.restore();
  } catch (fault) { tell(W.no_start + " " + fault.message); }
  document.body.dataset.ready = "yes";
})();
