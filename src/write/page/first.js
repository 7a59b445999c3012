"use strict";
const W = JSON.parse(document.getElementById("words").textContent);
const el = (id) => document.getElementById(id);
// Everything of a drawing goes into the page as text, never as markup.
const make = (tag, of = {}, ...inner) => {
  const e = document.createElement(tag);
  for (const [k, v] of Object.entries(of)) if (v === true) e.setAttribute(k, ""); else if (v !== false && v != null) e.setAttribute(k, v);
  e.append(...inner);
  return e;
};
const tell = (text) => { el("state").textContent = text; };
