// What is done on the board: each tool makes one change in the job.
const tools = (() => {
  const over = board.over, all = ["look", "wall", "opening", "out", "join", "known", "view"];
  let tool = "look", then = null;
  const round = (v) => +v.toPrecision(9);
  const rounded = (points) => points.map((p) => p.map(round));
  const box = (a, b) => [[Math.min(a[0], b[0]), Math.min(a[1], b[1])], [Math.max(a[0], b[0]), Math.max(a[1], b[1])]];
  const group = el("tools");
  all.forEach((name) => {
    const b = make("button", { type: "button", role: "radio", id: "tool_" + name, tabindex: name === "look" ? 0 : -1 }, W["tool_" + name]);
    b.onclick = () => take(name);
    group.append(b);
  });
  group.onkeydown = (e) => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[e.key];
    if (!step) return;
    e.preventDefault();
    take(all[(all.indexOf(tool) + step + all.length) % all.length]);
    el("tool_" + tool).focus();
  };
  function take(name) {
    tool = name; cancel();
    all.forEach((n) => { const b = el("tool_" + n); b.setAttribute("aria-checked", String(n === name)); b.tabIndex = n === name ? 0 : -1; });
    say(W["hint_" + name]);
  }
  const say = (text) => { el("hint").textContent = text; };
  function cancel() {
    over.points = []; over.picked = []; over.cursor = null; over.shape = tool === "view" ? "box" : "line";
    then = null; el("ask").hidden = true; board.ask();
  }
  function ask(question, done) {
    el("asked").textContent = question; el("ask").hidden = false; el("answer").value = ""; el("answer").focus(); then = done;
  }
  el("ask").onsubmit = (e) => { e.preventDefault(); const text = el("answer").value.trim(); if (text && then) { const done = then; el("ask").hidden = true; done(text); } };
  el("drop").onclick = () => { cancel(); board.canvas.focus(); };
  const finish = async (change) => { cancel(); await work.change(change); };
  function point(place) {
    const last = over.points[over.points.length - 1];
    const p = board.snapped(place, last), first = over.points[0];
    const closes = first && over.points.length > 2 && Math.hypot(p[0] - first[0], p[1] - first[1]) * board.view().k < 12;
    if (closes) return end();
    over.points.push(p); board.ask();
    if (over.points.length === 2 && (tool === "known" || tool === "view")) end();
  }
  function end() {
    const points = rounded(over.points);
    if (tool === "wall" || tool === "opening") {
      if (points.length < 2) return say(W.too_few);
      finish({ at: [tool], add: { outline: points.length === 2 ? box(...points) : points } });
    } else if (tool === "known" && points.length === 2) {
      ask(W.ask_length, (text) => finish({ at: ["drawing", "known"], set: points.map((p) => p.join(",")).join(" ") + " = " + text }));
    } else if (tool === "view" && points.length === 2) {
      ask(W.ask_name, (name) => finish({ at: ["elevation"], merge: [["name", name], ["region", box(...points).flat()]] }));
    } else if (tool === "join") {
      if (over.picked.length < 2) return say(W.too_few_walls);
      finish({ at: ["join"], add: over.picked.map((w) => w.id) });
    }
  }
  function tap(place) {
    if (!work.seen()) return;
    const wall = board.wall_at(place);
    if (tool === "look") return say(wall ? `${wall.id}: ${wall.area}` : W.no_wall);
    if (tool === "out") return wall ? finish({ at: ["skip"], add: wall.id }) : say(W.no_wall);
    if (tool === "join") {
      if (!wall) return say(W.no_wall);
      over.picked = over.picked.includes(wall) ? over.picked.filter((w) => w !== wall) : [...over.picked, wall];
      say(over.picked.map((w) => w.id).join(", ") + ". " + W.join_more);
      return board.ask();
    }
    point(place);
  }
  const at = (e) => { const b = board.canvas.getBoundingClientRect(); return [e.clientX - b.left, e.clientY - b.top]; };
  const fingers = new Map();
  let far = 0, moved = 0;
  board.canvas.onpointerdown = (e) => { board.canvas.setPointerCapture(e.pointerId); fingers.set(e.pointerId, at(e)); moved = 0; far = apart(); };
  const apart = () => { const [a, b] = [...fingers.values()]; return b ? Math.hypot(a[0] - b[0], a[1] - b[1]) : 0; };
  board.canvas.onpointermove = (e) => {
    const now = at(e), was = fingers.get(e.pointerId);
    if (!was) { if (tool !== "look" && tool !== "out" && tool !== "join") { over.cursor = board.snapped(board.to_drawing(now), over.points[over.points.length - 1]); board.ask(); } return; }
    fingers.set(e.pointerId, now);
    moved += Math.hypot(now[0] - was[0], now[1] - was[1]);
    if (fingers.size === 2) {
      const next = apart(), [a, b] = [...fingers.values()];
      if (far > 0 && next > 0) board.zoom(next / far, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
      far = next;
      board.move((now[0] - was[0]) / 2, (now[1] - was[1]) / 2);
    } else if (moved > 6) board.move(now[0] - was[0], now[1] - was[1]);
  };
  board.canvas.onpointerup = (e) => { const was = fingers.delete(e.pointerId); far = apart(); if (was && moved <= 6 && !fingers.size) tap(board.to_drawing(at(e))); };
  board.canvas.onpointercancel = (e) => fingers.delete(e.pointerId);
  board.canvas.addEventListener("wheel", (e) => { e.preventDefault(); board.zoom(Math.exp(-e.deltaY * (e.deltaMode ? 0.05 : 0.0015)), at(e)); }, { passive: false });
  board.canvas.ondblclick = () => { if (tool === "wall" || tool === "opening") end(); };
  // By keys alone: arrows move the cross, Enter taps there, F ends a shape.
  board.canvas.onkeydown = (e) => {
    const step = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[e.key];
    const { clientWidth: w, clientHeight: h } = board.canvas;
    if (step) {
      const by = (e.shiftKey ? 40 : 8) / board.view().k, from = over.cursor || board.to_drawing([w / 2, h / 2]);
      over.cursor = [from[0] + step[0] * by, from[1] + step[1] * by];
      const p = board.to_page(over.cursor);
      if (p[0] < 0 || p[1] < 0 || p[0] > w || p[1] > h) board.move(-step[0] * w / 4, step[1] * h / 4);
      board.ask();
    } else if (e.key === "Enter" || e.key === " ") tap(over.cursor || board.to_drawing([w / 2, h / 2]));
    else if (e.key === "f" || e.key === "F") end();
    else if (e.key === "Escape") cancel();
    else if (e.key === "Backspace") { over.points.pop(); board.ask(); }
    else if (e.key === "+" || e.key === "=") board.zoom(1.3);
    else if (e.key === "-") board.zoom(1 / 1.3);
    else return;
    e.preventDefault();
  };
  return { start: () => take("look"), cancel };
})();
