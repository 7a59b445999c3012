// Every setting of a job as a field, made from the schema: what it is, what it may be, what it is now.
const settings = (() => {
  let schema = null, made = false;
  const of = (s) => {
    let now = s;
    for (let i = 0; i < 9 && now; i++) {
      if (now.$ref) now = schema.$defs[now.$ref.split("/").pop()];
      else if (now.allOf && now.allOf.length === 1) now = now.allOf[0];
      else if (now.anyOf && now.anyOf.some((a) => a.type === "null")) now = now.anyOf.find((a) => a.type !== "null");
      else return now;
    }
    return now || {};
  };
  const words_of = (s) => (s.enum || (s.oneOf || []).map((o) => o.const)).filter((w) => typeof w === "string");
  const value = (text) => (text === "" ? null : /^-?[0-9]+(\.[0-9]+)?$/.test(text) ? +text : text);
  function field(section, key, raw) {
    const s = of(raw), label = `${section}.${key}`, words = words_of(s);
    let box;
    if (s.type === "boolean" || (Array.isArray(s.type) && s.type.includes("boolean"))) { box = make("select", {}, make("option", { value: "" }, W.as_given), make("option", { value: "true" }, W.yes), make("option", { value: "false" }, W.no)); }
    else if (words.length) box = make("select", {}, make("option", { value: "" }, W.as_given), ...words.map((w) => make("option", { value: w }, w)));
    else if (s.type === "object" || s.type === "array" || s.properties) return null;
    else box = make("input", { autocomplete: "off", placeholder: raw.default == null ? "" : String(raw.default) });
    box.name = label;
    box.onchange = () => work.change({ at: [section, key], set: box.value === "true" ? true : box.value === "false" ? false : value(box.value.trim()) });
    return make("label", { "data-said": (label + " " + (raw.description || "")).toLowerCase() }, make("code", {}, label), " ", box, make("small", {}, raw.description || s.description || ""));
  }
  function build() {
    made = true;
    for (const [section, raw] of Object.entries(schema.properties)) {
      const s = of(raw);
      if (!s.properties) continue;
      const fields = Object.entries(s.properties).map(([k, f]) => field(section, k, f)).filter(Boolean);
      if (fields.length) el("settings").append(make("fieldset", {}, make("legend", {}, section), ...fields));
    }
  }
  el("seek").oninput = () => {
    const word = el("seek").value.toLowerCase();
    for (const f of el("settings").querySelectorAll("label")) f.hidden = !f.dataset.said.includes(word);
    for (const f of el("settings").querySelectorAll("fieldset")) f.hidden = !f.querySelector("label:not([hidden])");
  };
  return {
    async start() { schema = JSON.parse(await program.call("settings", [])); build(); },
    roles: () => { const l = schema && of(schema.properties.layers); return l ? Object.keys(l.properties || {}) : []; },
    // What the job says, as the program reads its text.
    show(said) {
      if (!made) return;
      for (const box of el("settings").querySelectorAll("input, select")) {
        const [section, key] = box.name.split("."), now = said[section] && said[section][key];
        box.value = now == null ? "" : String(now);
      }
    },
  };
})();
