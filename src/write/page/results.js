// What a layout came to, and its files.
const results = (() => {
  let urls = [];
  const kinds = { html: "text/html", svg: "image/svg+xml", pdf: "application/pdf", png: "image/png", csv: "text/csv", json: "application/json", txt: "text/plain", dxf: "application/dxf", zip: "application/zip", toml: "application/toml", xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet" };
  function link(bytes, file, label, of = {}) {
    const url = URL.createObjectURL(new Blob([bytes], { type: kinds[file.split(".").pop()] || "application/octet-stream" }));
    urls.push(url);
    return make("a", { href: url, download: file.split("/").pop(), ...of }, label);
  }
  const kb = (n) => (n < 1e6 ? Math.max(1, Math.round(n / 1e3)) + " kB" : (n / 1e6).toFixed(1) + " MB");
  function show(told, files, archive, stem) {
    urls.forEach((u) => URL.revokeObjectURL(u)); urls = [];
    el("alarm").hidden = !told.alarm; el("alarm").textContent = told.alarm;
    el("sum").hidden = told.refused; el("sum").textContent = told.summary;
    if (told.refused) panels.refused(told.findings);
    el("results").replaceChildren();
    el("files").replaceChildren(...files.map(([path, bytes]) => make("li", {}, link(bytes, path, path, { "data-file": path }), ` ${kb(bytes.length)}`)));
    if (!files.length) return;
    if (archive) el("results").append(link(archive, stem + "-layout.zip", W.save_all, { id: "save_all" }));
    const page = files.find(([path]) => path === "review.html");
    if (page) {
      const b = make("button", { type: "button", id: "open_review" }, W.open_review);
      b.onclick = () => {
        const old = el("review");
        if (old) return old.remove();
        const url = URL.createObjectURL(new Blob([page[1]], { type: "text/html" }));
        urls.push(url);
        el("results").after(make("iframe", { id: "review", src: url, title: W.review, sandbox: "allow-scripts allow-downloads" }));
      };
      el("results").append(b);
    }
  }
  return { show, link };
})();
