// The drawing on the board: what was read of it, moved about, and places on it found again by the pointer.
const board = (() => {
  const canvas = el("sheet"), pen = canvas.getContext("2d");
  const still = document.createElement("canvas"), still_pen = still.getContext("2d");
  let seen = null, paths = [], view = { x: 0, y: 0, k: 1 }, drawn_at = null, soon = 0, frame = 0;
  let corners = [], grid = new Map(), cell = 1, hidden = new Set(), lit = null;
  const over = { points: [], shape: "line", cursor: null, picked: [] };
  const css = (name) => getComputedStyle(document.documentElement).getPropertyValue("--" + name).trim();
  const dense = () => window.devicePixelRatio || 1;
  const size = () => [canvas.clientWidth, canvas.clientHeight];
  const to_page = ([x, y]) => [(x - view.x) * view.k, size()[1] - (y - view.y) * view.k];
  const to_drawing = ([x, y]) => [x / view.k + view.x, (size()[1] - y) / view.k + view.y];

  function trace(path, line) {
    for (let i = 0; i < line.length; i += 2) {
      if (i === 0) path.moveTo(line[0] - origin[0], line[1] - origin[1]);
      else path.lineTo(line[i] - origin[0], line[i + 1] - origin[1]);
    }
  }
  // Coordinates far from the origin lose their last digits on a canvas: paths are drawn from here.
  let origin = [0, 0];

  function show(what, keep_view) {
    seen = what;
    const b = seen.bounds || [0, 0, 1, 1];
    origin = [b[0], b[1]];
    paths = seen.layers.map((layer) => {
      const path = new Path2D();
      layer.lines.forEach((line) => trace(path, line));
      return path;
    });
    cell = Math.max(b[2] - b[0], b[3] - b[1], 1e-9) / 400;
    grid = new Map();
    for (const layer of seen.layers) for (const line of layer.lines) for (let i = 0; i < line.length; i += 2) put(line[i], line[i + 1]);
    if (!keep_view) whole(); else fresh();
  }
  function put(x, y) {
    const key = Math.floor(x / cell) + "," + Math.floor(y / cell), list = grid.get(key);
    if (!list) grid.set(key, [x, y]); else if (list.length < 400) list.push(x, y);
  }
  function whole() { fit((seen && seen.bounds) || [0, 0, 1, 1]); }
  function fit([x0, y0, x1, y1]) {
    const [w, h] = size(), dx = Math.max(x1 - x0, 1e-9), dy = Math.max(y1 - y0, 1e-9);
    view.k = Math.min(w / dx, h / dy) * 0.92;
    view.x = (x0 + x1) / 2 - w / 2 / view.k;
    view.y = (y0 + y1) / 2 - h / 2 / view.k;
    fresh();
  }
  function zoom(by, at) {
    const [w, h] = size(), p = at || [w / 2, h / 2], q = to_drawing(p);
    view.k *= by;
    view.x = q[0] - p[0] / view.k;
    view.y = q[1] - (h - p[1]) / view.k;
    later();
  }
  function move(dx, dy) { view.x -= dx / view.k; view.y += dy / view.k; later(); }
  // While it moves, the last picture is moved; when it stands still it is drawn anew.
  function later() { clearTimeout(soon); soon = setTimeout(fresh, 90); ask(); }
  function ask() { if (!frame) frame = requestAnimationFrame(() => { frame = 0; paint(); }); }
  function fresh() {
    clearTimeout(soon);
    const [w, h] = size(), d = dense();
    if (!w || !h) return;
    for (const c of [canvas, still]) if (c.width !== Math.round(w * d) || c.height !== Math.round(h * d)) { c.width = Math.round(w * d); c.height = Math.round(h * d); }
    still_pen.setTransform(1, 0, 0, 1, 0, 0);
    still_pen.clearRect(0, 0, still.width, still.height);
    if (seen) picture(still_pen, d, h);
    drawn_at = { ...view };
    ask();
  }
  function world(p, d, h) {
    p.setTransform(view.k * d, 0, 0, -view.k * d, (origin[0] - view.x) * view.k * d, (h - (origin[1] - view.y) * view.k) * d);
  }
  function picture(p, d, h) {
    world(p, d, h);
    p.lineWidth = 0.8 / view.k;
    seen.layers.forEach((layer, i) => {
      if (hidden.has(layer.name)) return;
      p.strokeStyle = css(layer.role ? "ink" : "edge");
      p.stroke(paths[i]);
    });
    for (const w of seen.walls) face(p, w.faces, "wall", 0.22, 1.8);
    for (const o of seen.openings) face(p, [o.outline], "hole", 0.12, 1.8);
    p.setTransform(d, 0, 0, d, 0, 0);
    p.fillStyle = css("ink");
    for (const t of seen.texts) {
      const high = t.height * view.k;
      if (high < 5 || high > 400) continue;
      const [x, y] = to_page(t.at);
      p.save(); p.translate(x, y); p.rotate(-t.angle * Math.PI / 180); p.font = high + "px sans-serif"; p.fillText(t.text, 0, 0); p.restore();
    }
    p.font = "600 14px system-ui, sans-serif";
    for (const w of seen.walls) {
      const [x, y] = to_page(middle(w.faces[0] || [0, 0]));
      p.fillStyle = css("wall"); p.fillText(w.id, x - p.measureText(w.id).width / 2, y);
    }
    seen.findings.forEach((f) => {
      if (!f.at || f.severity === "info") return;
      const [x, y] = to_page(f.at);
      p.strokeStyle = css("bad"); p.lineWidth = 2; p.beginPath(); p.arc(x, y, 9, 0, 7); p.stroke();
    });
  }
  function face(p, rings, color, alpha, wide) {
    const path = new Path2D();
    rings.forEach((r) => { trace(path, r); path.closePath(); });
    p.globalAlpha = alpha; p.fillStyle = css(color); p.fill(path, "evenodd");
    p.globalAlpha = 1; p.strokeStyle = css(color); p.lineWidth = wide / view.k; p.stroke(path);
  }
  function paint() {
    const [w, h] = size(), d = dense();
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.clearRect(0, 0, canvas.width, canvas.height);
    if (drawn_at && still.width) {
      const k = view.k / drawn_at.k;
      const x = (drawn_at.x - view.x) * view.k, y = h - (drawn_at.y - view.y) * view.k - h * k;
      pen.drawImage(still, x * d, y * d, w * k * d, h * k * d);
    }
    pen.setTransform(d, 0, 0, d, 0, 0);
    mine();
  }
  function mine() {
    const points = over.points.map(to_page), at = over.cursor && to_page(over.cursor);
    pen.strokeStyle = pen.fillStyle = css("new"); pen.lineWidth = 3;
    if (points.length) {
      const last = at || points[points.length - 1];
      pen.beginPath();
      if (over.shape === "box") pen.rect(points[0][0], points[0][1], last[0] - points[0][0], last[1] - points[0][1]);
      else { points.forEach((p, i) => (i ? pen.lineTo(...p) : pen.moveTo(...p))); if (at) pen.lineTo(...at); }
      pen.stroke();
      points.forEach((p) => { pen.beginPath(); pen.arc(p[0], p[1], 5, 0, 7); pen.fill(); });
    }
    if (at) {
      pen.lineWidth = 2; pen.beginPath();
      pen.moveTo(at[0] - 14, at[1]); pen.lineTo(at[0] + 14, at[1]); pen.moveTo(at[0], at[1] - 14); pen.lineTo(at[0], at[1] + 14); pen.stroke();
    }
    for (const w of over.picked) for (const ring of w.faces) outline(ring, 4);
    if (lit) { const [x, y] = to_page(lit); pen.beginPath(); pen.arc(x, y, 22, 0, 7); pen.lineWidth = 4; pen.stroke(); }
  }
  function outline(ring, wide) {
    pen.beginPath(); pen.lineWidth = wide;
    for (let i = 0; i < ring.length; i += 2) { const p = to_page([ring[i], ring[i + 1]]); i ? pen.lineTo(...p) : pen.moveTo(...p); }
    pen.closePath(); pen.stroke();
  }
  // The nearest corner of the drawing within reach of the pointer, else the place itself, level or plumb with the last.
  function snapped(place, last) {
    const reach = 14 / view.k, cells = Math.min(Math.ceil(reach / cell), 60);
    const cx = Math.floor(place[0] / cell), cy = Math.floor(place[1] / cell);
    let best = null, off = reach;
    for (let i = -cells; i <= cells; i++) for (let j = -cells; j <= cells; j++) {
      const list = grid.get((cx + i) + "," + (cy + j)) || [];
      for (let n = 0; n < list.length; n += 2) {
        const far = Math.hypot(list[n] - place[0], list[n + 1] - place[1]);
        if (far < off) { off = far; best = [list[n], list[n + 1]]; }
      }
    }
    if (best) return best;
    if (last && Math.abs(place[0] - last[0]) < reach) return [last[0], place[1]];
    if (last && Math.abs(place[1] - last[1]) < reach) return [place[0], last[1]];
    return place;
  }
  const inside = (ring, [x, y]) => {
    let is = false;
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      if ((ring[i + 1] > y) !== (ring[j + 1] > y) && x < ((ring[j] - ring[i]) * (y - ring[i + 1])) / (ring[j + 1] - ring[i + 1]) + ring[i]) is = !is;
    }
    return is;
  };
  const middle = (ring) => {
    let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = 0; i < ring.length; i += 2) { x0 = Math.min(x0, ring[i]); x1 = Math.max(x1, ring[i]); y0 = Math.min(y0, ring[i + 1]); y1 = Math.max(y1, ring[i + 1]); }
    return [(x0 + x1) / 2, (y0 + y1) / 2];
  };
  const wall_at = (place) => seen && seen.walls.find((w) => w.faces.filter((r) => inside(r, place)).length % 2);
  function go(place) {
    const b = seen.bounds, reach = Math.max(b[2] - b[0], b[3] - b[1]) / 12;
    lit = place; fit([place[0] - reach, place[1] - reach, place[0] + reach, place[1] + reach]);
  }
  new ResizeObserver(() => fresh()).observe(canvas);
  return { canvas, over, show, whole, zoom, move, ask, fresh, to_drawing, to_page, snapped, wall_at, middle, go, hidden, view: () => view };
})();
