"use strict";
(function () {
  const doc = document, body = doc.body, root = doc.documentElement, data = body.dataset;
  root.classList.add("js");
  const all = (what, within) => Array.from((within || doc).querySelectorAll(what));
  const one = (id) => doc.getElementById(id);
  const key = "lapwright-ticks/1 " + data.key;

  // Coming nearer: the box of each picture that is shown.
  const whole = new Map();
  const box = (svg) => svg.viewBox.baseVal;
  all("svg.view").forEach((svg) => {
    const b = box(svg);
    whole.set(svg, [b.x, b.y, b.width, b.height]);
  });
  function show(svg, x, y, w, h) {
    const [, , W, H] = whole.get(svg);
    w = Math.min(Math.max(w, W / 60), W);
    h = w * H / W;
    x = Math.min(Math.max(x, 0), W - w);
    y = Math.min(Math.max(y, 0), H - h);
    svg.setAttribute("viewBox", [x, y, w, h].join(" "));
    svg.classList.toggle("near", w < W * 0.995);
  }
  function nearer(svg, times, at) {
    const b = box(svg), w = b.width / times;
    const p = at || { x: b.x + b.width / 2, y: b.y + b.height / 2 };
    show(svg, p.x - (p.x - b.x) / times, p.y - (p.y - b.y) / times, w, b.height / times);
  }
  function place(svg, event) {
    const p = new DOMPoint(event.clientX, event.clientY);
    return p.matrixTransform(svg.getScreenCTM().inverse());
  }
  function move(svg, dx, dy) {
    const b = box(svg), k = svg.getScreenCTM().a || 1;
    show(svg, b.x - dx / k, b.y - dy / k, b.width, b.height);
  }
  function fly(svg, x, y, wide) {
    const [, , W, H] = whole.get(svg), w = Math.min(W, wide), h = w * H / W;
    show(svg, x - w / 2, y - h / 2, w, h);
    svg.scrollIntoView({ block: "center" });
  }

  all("svg.view").forEach((svg) => {
    const down = new Map();
    let moved = 0;
    svg.addEventListener("wheel", (e) => {
      if (!e.ctrlKey && !svg.classList.contains("near") && e.deltaY > 0) return;
      e.preventDefault();
      nearer(svg, e.deltaY < 0 ? 1.2 : 1 / 1.2, place(svg, e));
    }, { passive: false });
    svg.addEventListener("pointerdown", (e) => {
      down.set(e.pointerId, e);
      if (down.size === 1) moved = 0;
    });
    svg.addEventListener("pointermove", (e) => {
      const before = down.get(e.pointerId);
      if (!before) return;
      const others = Array.from(down.values()).filter((o) => o.pointerId !== e.pointerId);
      if (others.length === 1) {
        const o = others[0];
        const was = Math.hypot(before.clientX - o.clientX, before.clientY - o.clientY);
        const is = Math.hypot(e.clientX - o.clientX, e.clientY - o.clientY);
        if (was > 0) nearer(svg, is / was, place(svg, e));
        moved = 99;
      } else if (svg.classList.contains("near")) {
        move(svg, e.clientX - before.clientX, e.clientY - before.clientY);
      }
      moved += Math.abs(e.clientX - before.clientX) + Math.abs(e.clientY - before.clientY);
      down.set(e.pointerId, e);
    });
    ["pointerup", "pointercancel", "pointerleave"].forEach((end) =>
      svg.addEventListener(end, (e) => down.delete(e.pointerId)));
    svg.addEventListener("click", (e) => {
      const piece = e.target.closest(".pc");
      if (piece && moved < 8) tell(piece.dataset.mark, false);
    });
    svg.addEventListener("keydown", (e) => {
      const b = box(svg), step = b.width / 10, keys = {
        ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step],
      };
      if (keys[e.key]) show(svg, b.x + keys[e.key][0], b.y + keys[e.key][1], b.width, b.height);
      else if (e.key === "+" || e.key === "=") nearer(svg, 1.3);
      else if (e.key === "-") nearer(svg, 1 / 1.3);
      else if (e.key === "0") show(svg, ...whole.get(svg));
      else return;
      e.preventDefault();
    });
  });
  all("[data-zoom]").forEach((b) => b.addEventListener("click", () => {
    const svg = b.closest("section").querySelector("svg.view");
    if (b.dataset.zoom === "all") show(svg, ...whole.get(svg));
    else nearer(svg, b.dataset.zoom === "in" ? 1.5 : 1 / 1.5);
  }));

  // What is told of a piece or a panel.
  const told = one("told");
  const piece = (mark) => one("m-" + mark);
  function plain() {
    all(".lit,.of").forEach((p) => p.classList.remove("lit", "of"));
  }
  function panelOf(mark) {
    const button = all("li[data-panel] [data-go]").find((b) => b.dataset.go === mark);
    return button ? button.closest("li") : null;
  }
  function button(mark) {
    const b = doc.createElement("button");
    b.type = "button";
    b.className = "mark";
    b.textContent = mark;
    b.addEventListener("click", () => tell(mark, true));
    return b;
  }
  function line(text) {
    const p = doc.createElement("p");
    p.textContent = text;
    return p;
  }
  function close() {
    const b = doc.createElement("button");
    b.type = "button";
    b.textContent = data.close;
    b.addEventListener("click", () => { told.hidden = true; plain(); });
    return b;
  }
  function tell(mark, go) {
    const p = piece(mark);
    if (!p) return false;
    plain();
    p.classList.add("lit");
    if (go) {
      const b = p.getBBox();
      fly(p.ownerSVGElement, b.x + b.width / 2, b.y + b.height / 2, Math.max(b.width * 1.6, 120));
    }
    const head = doc.createElement("h2");
    head.textContent = p.querySelector("title").textContent;
    told.replaceChildren(head);
    const row = one("r-" + mark), cut = row && row.querySelector(".cut").textContent;
    if (cut) told.append(line(cut));
    const panel = panelOf(mark);
    const others = panel ? all("[data-go]", panel).map((b) => b.dataset.go).filter((m) => m !== mark) : [];
    if (others.length) {
      const also = line(data.also + " ");
      others.forEach((m) => {
        also.append(button(m), " ");
        const o = piece(m);
        if (o) o.classList.add("of");
      });
      told.append(also);
    } else told.append(line(data.alone));
    told.append(close());
    told.hidden = false;
    return true;
  }
  function tellPanel(id) {
    const li = one(id);
    if (!li || !li.dataset.panel) return false;
    const marks = all("[data-go]", li).map((b) => b.dataset.go);
    if (!marks.length || !tell(marks[0], true)) return false;
    marks.forEach((m) => { const p = piece(m); if (p) p.classList.add("lit"); });
    return true;
  }
  doc.addEventListener("click", (e) => {
    const b = e.target.closest("button");
    if (!b) return;
    if (b.dataset.panelGo) tellPanel(b.dataset.panelGo);
    else if (b.dataset.go) tell(b.dataset.go, true);
    else if (b.dataset.view) {
      const svg = one(b.dataset.view).querySelector("svg.view");
      fly(svg, +b.dataset.x, +b.dataset.y, 160);
    }
  });
  doc.addEventListener("keydown", (e) => {
    if (e.key === "Escape" && !told.hidden) { told.hidden = true; plain(); }
  });
  doc.addEventListener("click", (e) => {
    const a = e.target.closest("a[href^='#']");
    const target = a && one(a.getAttribute("href").slice(1));
    for (let d = target && target.closest("details"); d; d = d.parentElement.closest("details")) d.open = true;
  });

  // What the page is asked.
  one("ask").addEventListener("submit", (e) => {
    e.preventDefault();
    const wanted = one("find").value.trim().toUpperCase();
    const p = all(".pc").find((x) => x.dataset.mark.toUpperCase() === wanted);
    const found = p ? tell(p.dataset.mark, true) : tellPanel(wanted);
    one("said").textContent = found ? "" : data.none;
  });
  one("course").addEventListener("change", (e) => {
    const c = e.target.value;
    all(".pc").forEach((p) => p.classList.toggle("off", c !== "" && p.dataset.course !== c));
  });
  all("[data-show]").forEach((box) => box.addEventListener("change", () =>
    body.classList.toggle("no-" + box.dataset.show, !box.checked)));
  const store = {
    get(k) { try { return localStorage.getItem(k); } catch { return null; } },
    set(k, v) { try { localStorage.setItem(k, v); return true; } catch { return false; } },
  };
  const look = one("look");
  function set(value) {
    if (value) root.dataset.look = value; else delete root.dataset.look;
  }
  look.value = store.get("lapwright-look") || "";
  set(look.value);
  look.addEventListener("change", () => { set(look.value); store.set("lapwright-look", look.value); });

  // Ticks.
  const boxes = all("input[data-tick]");
  const ticked = (what) => boxes.filter((b) => b.checked && b.dataset.tick === what).map((b) => b.dataset.of);
  const ticks = () => ({ format: "lapwright-ticks/1", drawing: data.key, cut: ticked("cut"), hung: ticked("hung") });
  function mark() {
    const hung = new Set(ticked("hung"));
    all(".pc").forEach((p) => p.classList.toggle("hung", hung.has(p.dataset.mark)));
  }
  try {
    const kept = JSON.parse(store.get(key) || "null");
    if (kept) boxes.forEach((b) => { b.checked = (kept[b.dataset.tick] || []).includes(b.dataset.of); });
  } catch { /* What is kept is none of ours. */ }
  mark();
  boxes.forEach((b) => b.addEventListener("change", () => {
    mark();
    if (!store.set(key, JSON.stringify(ticks()))) one("said").textContent = data.unkept;
  }));
  one("save").addEventListener("click", () => {
    const url = URL.createObjectURL(new Blob([JSON.stringify(ticks(), null, 1)], { type: "application/json" }));
    const a = doc.createElement("a");
    a.href = url;
    a.download = "ticks.json";
    a.click();
    setTimeout(() => URL.revokeObjectURL(url), 1000);
  });
})();
