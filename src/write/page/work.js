// The drawing and its job; every change of the job can be taken back.
const work = (() => {
  let name = "", bytes = null, jobs = [""], at = 0, seen = null, turn = 0, settled = Promise.resolve();
  const job = () => jobs[at];
  const keep = () => bytes && store.keep({ name, bytes, jobs, at });
  async function busy(what, calling) {
    const mine = ++turn;
    tell(what); el("busy").hidden = false; el("done").removeAttribute("value");
    try { return await calling(); } catch (fault) {
      tell(fault.stopped ? W.stopped : W.failed + " " + fault.message);
      return undefined;
    } finally { if (mine === turn) el("busy").hidden = true; }
  }
  async function look(keep_view) {
    if (!bytes) return;
    const text = await busy(W.reading, () => program.call("look", [bytes, name, job()]));
    if (text === undefined) return;
    seen = JSON.parse(text);
    board.show(seen, keep_view);
    panels.show(seen, job());
    el("undo").disabled = at === 0; el("redo").disabled = at + 1 >= jobs.length;
    el("lay").disabled = seen.stopped;
    tell(said(seen));
  }
  const counted = (n, of) => `${n} ${W["n_" + of + (n === 1 ? "" : "s")]}`;
  const said = (s) => `${s.name}: ${counted(s.walls.length, "wall")}, ${counted(s.openings.length, "opening")}` + (s.stopped ? ". " + W.stopped_read : "");
  async function open(file_name, file_bytes, text) {
    name = file_name; bytes = file_bytes; jobs = [text || ""]; at = 0;
    await keep();
    await look(false);
    // A drawing that reads well has no need of a job; any other is given the best that is found.
    if (!text && seen && seen.stopped) await first_job();
  }
  async function first_job() {
    const text = await busy(W.trying, () => program.call("start", [bytes, name]));
    if (text === undefined) return;
    const made = JSON.parse(text);
    if (made.job) { await put(made.job.text); tell(made.job.said); } else panels.refused(made.refused.why);
  }
  async function put(text, keep_view = true) {
    jobs = [...jobs.slice(0, at + 1), text]; at = jobs.length - 1;
    await keep();
    await look(keep_view);
  }
  async function change(what) {
    const text = await busy(W.changing, () => program.call("edit", [job(), JSON.stringify(what)]));
    if (text === undefined) return;
    const made = JSON.parse(text);
    if (made.job) await put(made.job.text);
    else { panels.refused(made.refused.why); if (!made.refused.why.length) tell(W.unfit); }
  }
  async function go(by) {
    if (!jobs[at + by] && jobs[at + by] !== "") return;
    at += by;
    await keep();
    await look(true);
  }
  async function lay() {
    const watch = (done, of, panels_so_far) => { el("done").max = of || 1; el("done").value = done; if (panels_so_far) tell(`${W.laying} ${panels_so_far} ${W.so_far}`); };
    const out = await busy(W.laying, () => program.call("lay", [bytes, name, job(), el("pictures").checked], watch));
    if (out === undefined) return;
    const told = JSON.parse(out[0]), files = [];
    for (let i = 1; i + 1 < out.length; i += 2) files.push([out[i], out[i + 1]]);
    results.show(told, files, out[out.length - 1], stem());
    tell(told.refused ? W.refused : told.alarm ? told.alarm : W.laid);
  }
  const stem = () => name.replace(/\.[^.]*$/, "") || "house";
  // One thing at a time: what is asked for while another runs waits for it.
  const queue = (f) => (...args) => (settled = settled.then(() => f(...args), () => f(...args)));
  return {
    open: queue(open), change: queue(change), put: queue(put), lay: queue(lay), first_job: queue(first_job), undo: queue(() => go(-1)), redo: queue(() => go(1)),
    seen: () => seen, job, stem,
    async restore() {
      const kept = await store.kept();
      if (!kept || !kept.bytes) return tell(W.ready);
      ({ name, bytes, jobs, at } = kept);
      await look(false);
    },
  };
})();
