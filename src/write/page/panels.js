// Beside the board: what was read, what was found, layers, settings, the job.
const panels = (() => {
  let wrong = [], next = 0;
  function table(title, heads, rows) {
    const t = make("table", {}, make("caption", {}, title));
    t.append(make("thead", {}, make("tr", {}, ...heads.map((h) => make("th", { scope: "col" }, h)))));
    t.append(make("tbody", {}, ...rows));
    return t;
  }
  const show_button = (label, place) => { const b = make("button", { type: "button", "aria-label": `${W.show} ${label}` }, W.show); b.onclick = () => { board.go(place); board.canvas.scrollIntoView({ block: "nearest" }); }; return b; };
  const out_button = (id) => { const b = make("button", { type: "button", "aria-label": `${W.tool_out}: ${id}` }, W.tool_out); b.onclick = () => work.change({ at: ["skip"], add: id }); return b; };
  function read(seen) {
    const walls = seen.walls.map((w) => make("tr", {}, make("th", { scope: "row" }, w.id), make("td", {}, w.elevation), make("td", { class: "n" }, w.area), make("td", {}, show_button(w.id, board.middle(w.faces[0])), " ", out_button(w.id))));
    const holes = seen.openings.map((o) => make("tr", {}, make("th", { scope: "row" }, o.id), make("td", {}, W["kind_" + o.kind] || o.kind), make("td", { class: "n" }, o.size), make("td", {}, show_button(o.id, board.middle(o.outline)))));
    const scale = seen.inches ? `${W.one_unit} ${+seen.inches.toPrecision(6)}"` : W.no_scale;
    el("read").replaceChildren(make("p", {}, `${seen.format}. ${scale}`), ...(walls.length ? [table(W.walls, [W.name, W.elevation, W.area, ""], walls)] : []), ...(holes.length ? [table(W.openings, [W.name, W.kind, W.size, ""], holes)] : []));
    if (/PDF/.test(seen.format)) el("read").append(page_field());
  }
  function page_field() {
    const box = make("input", { type: "number", min: 1, id: "pdf_page", size: 5 });
    const b = make("button", { type: "button" }, W.take);
    b.onclick = () => box.value && work.change({ at: ["drawing", "pages"], set: [+box.value] });
    return make("p", {}, make("label", {}, W.page_number + " ", box), " ", b);
  }
  function finding(f) {
    const item = make("li", { class: f.severity.toUpperCase() }, make("b", {}, W["severity_" + f.severity] + " "), make("code", {}, f.code), f.elevation ? ` (${f.elevation})` : "", ": " + f.message, make("br"), f.help + " ");
    if (f.at) item.append(show_button(f.code, f.at));
    return item;
  }
  function found(list) {
    // The list comes gathered: what is told under one head stands together, the gravest first.
    const rows = [];
    let under = null, head = "";
    for (const f of list) {
      if (f.head && f.head !== head) {
        under = make("ul");
        rows.push(make("li", { class: f.severity.toUpperCase() }, make("b", {}, f.head), under));
      }
      head = f.head;
      if (head) under.append(finding(f)); else rows.push(finding(f));
    }
    wrong = list.filter((f) => f.at && f.severity !== "info"); next = 0;
    el("found").replaceChildren(...rows);
    el("n_found").textContent = list.length ? `(${list.length})` : W.none;
  }
  function layers(seen) {
    el("layers").replaceChildren(...seen.layers.map((l) => {
      const box = make("input", { type: "checkbox" });
      box.checked = !board.hidden.has(l.name);
      box.onchange = () => { if (box.checked) board.hidden.delete(l.name); else board.hidden.add(l.name); board.fresh(); };
      const role = make("select", { "aria-label": `${W.read_as} ${l.name}` }, make("option", { value: "" }, W.not_read), ...settings.roles().map((r) => make("option", { value: r }, r)));
      role.value = l.role || "";
      role.onchange = () => role.value && work.change({ at: ["layers", role.value], add: l.name });
      return make("p", {}, make("label", {}, box, " ", l.name, ` (${l.lines.length})`), " ", make("label", {}, W.read_as + " ", role));
    }));
  }
  el("show_wrong").onclick = () => { if (wrong.length) { const f = wrong[next++ % wrong.length]; board.go(f.at); tell(f.message); } else tell(W.no_place); };
  return {
    show(seen, job) { read(seen); found(seen.findings); layers(seen); settings.show(seen.said); el("job").value = job; },
    refused(why) { found(why); if (why[0]) tell(why[0].message); },
  };
})();
