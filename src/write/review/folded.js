// The house folded up, turned by hand: a plain projection, the farthest wall drawn first.
(function () {
  const canvas = document.getElementById("folded"), data = document.getElementById("stood");
  if (!canvas || !data) return;
  const walls = JSON.parse(data.textContent), pen = canvas.getContext("2d"), radians = Math.PI / 180;
  if (!walls.length) return;
  let turn = 30, tilt = 22, near = 1;
  const plan = (w, x) => [w.from[0] + x * Math.cos(w.turn * radians), w.from[1] + x * Math.sin(w.turn * radians)];
  const all = walls.flatMap((w) => w.outline.map((p) => [...plan(w, p[0]), p[1]]));
  const span = (i) => [Math.min(...all.map((p) => p[i])), Math.max(...all.map((p) => p[i]))];
  const middle = [0, 1, 2].map((i) => { const [a, b] = span(i); return (a + b) / 2; });
  const size = Math.hypot(...[0, 1, 2].map((i) => { const [a, b] = span(i); return b - a; })) || 1;
  // From plan and height to the picture, with how far behind it lies.
  function seen([x, y, z]) {
    const a = -turn * radians, b = tilt * radians, X = x - middle[0], Y = y - middle[1], Z = z - middle[2];
    const across = X * Math.cos(a) - Y * Math.sin(a), deep = X * Math.sin(a) + Y * Math.cos(a);
    const k = near * Math.min(canvas.width, canvas.height * 1.5) / size;
    return [canvas.width / 2 + across * k, canvas.height / 2 - (Z * Math.cos(b) + deep * Math.sin(b)) * k, deep];
  }
  const color = (name) => getComputedStyle(document.documentElement).getPropertyValue(name).trim() || "#444";
  function ring(w, points) {
    pen.beginPath();
    points.forEach((p, i) => { const [x, y] = seen([...plan(w, p[0]), p[1]]); if (i) pen.lineTo(x, y); else pen.moveTo(x, y); });
    pen.closePath();
  }
  function draw() {
    const dense = window.devicePixelRatio || 1;
    canvas.width = canvas.clientWidth * dense; canvas.height = canvas.clientHeight * dense;
    const depth = (w) => w.outline.reduce((sum, p) => sum + seen([...plan(w, p[0]), p[1]])[2], 0) / (w.outline.length || 1);
    const ink = getComputedStyle(canvas).color, face = getComputedStyle(document.body).backgroundColor;
    for (const w of [...walls].sort((a, b) => depth(b) - depth(a))) {
      pen.lineWidth = dense * 1.6; pen.strokeStyle = ink; pen.fillStyle = face; pen.setLineDash(w.joined ? [] : [6 * dense, 4 * dense]);
      ring(w, w.outline); pen.fill(); pen.stroke();
      pen.setLineDash([]); pen.lineWidth = dense * 0.5;
      for (const [x0, x1, y] of w.courses) {
        const a = seen([...plan(w, x0), y]), b = seen([...plan(w, x1), y]);
        pen.beginPath(); pen.moveTo(a[0], a[1]); pen.lineTo(b[0], b[1]); pen.stroke();
      }
      pen.lineWidth = dense * 1.2;
      for (const o of w.openings) { ring(w, o); pen.fill(); pen.stroke(); }
    }
  }
  const by = (t, u) => { turn = (turn + t + 360) % 360; tilt = Math.min(89, Math.max(0, tilt + u)); requestAnimationFrame(draw); };
  let down = null;
  canvas.addEventListener("pointerdown", (e) => { down = [e.clientX, e.clientY]; canvas.setPointerCapture(e.pointerId); });
  canvas.addEventListener("pointermove", (e) => { if (!down) return; by((e.clientX - down[0]) * 0.5, (e.clientY - down[1]) * 0.4); down = [e.clientX, e.clientY]; });
  canvas.addEventListener("pointerup", () => { down = null; });
  canvas.addEventListener("pointercancel", () => { down = null; });
  canvas.addEventListener("keydown", (e) => {
    const step = { ArrowLeft: [-10, 0], ArrowRight: [10, 0], ArrowUp: [0, 6], ArrowDown: [0, -6] }[e.key];
    if (step) { e.preventDefault(); by(...step); }
  });
  document.querySelectorAll("[data-turn]").forEach((b) => b.addEventListener("click", () => by(+b.dataset.turn, 0)));
  document.getElementById("look").addEventListener("change", () => requestAnimationFrame(draw));
  new ResizeObserver(() => requestAnimationFrame(draw)).observe(canvas);
})();
