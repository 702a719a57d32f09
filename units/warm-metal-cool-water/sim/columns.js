// The drawing: one column for the warm thing, one for the water. Height is temperature, width is energy for one degree,
// so an area is an energy. What the one gave and the other took are two areas of one size.

import { CUP } from "./model.js";

const SVG = "http://www.w3.org/2000/svg";
const LEFT = 34;
const FLOOR = 132;
const LEAST_C = 15;
const MOST_C = 60;
const PER_C = 2.6;
const PER_J_PER_K = 0.11;
const APART = 14;
const CUP_WORD_LEFT = 82;

const at = (temperature_C) => FLOOR - (temperature_C - LEAST_C) * PER_C;

function draw(parent, name, attributes, text = "") {
  const node = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  if (text) node.textContent = text;
  parent.append(node);
  return node;
}

function scale(parent) {
  const ticks = [];
  for (let temperature = LEAST_C; temperature <= MOST_C; temperature += 1) {
    const long = temperature % 10 === 0 ? 8 : temperature % 5 === 0 ? 5 : 2.5;
    ticks.push(`M${LEFT - 4} ${at(temperature)}h${-long}`);
  }
  draw(parent, "path", { class: "tick", d: ticks.join("") });
  for (let ten = 20; ten <= MOST_C; ten += 10) {
    draw(parent, "text", { class: "tick-word", x: LEFT - 14, y: at(ten) + 3, "text-anchor": "end" }, String(ten));
  }
  draw(parent, "text", { class: "tick-word", x: LEFT - 14, y: at(55) + 3, "text-anchor": "end" }, "°C");
}

function column(svg) {
  const body = draw(svg, "rect", { class: "column" });
  const moved = draw(svg, "rect", { class: "moved" });
  return (x, width, now_C, from_C) => {
    const top = at(now_C);
    for (const [node, y, height] of [[body, top, FLOOR - top], [moved, Math.min(top, at(from_C)), Math.abs(at(from_C) - top)]]) {
      node.setAttribute("x", x);
      node.setAttribute("width", width);
      node.setAttribute("y", y);
      node.setAttribute("height", height);
    }
  };
}

function name_of(svg) {
  const lines = [12, 23].map((below) => draw(svg, "text", { class: "word", y: FLOOR + below }));
  return (x, ...words) => {
    for (const [index, line] of lines.entries()) {
      line.setAttribute("x", x);
      line.textContent = words[index];
    }
  };
}

export function make_columns(svg) {
  scale(svg);
  const warm_column = column(svg);
  const cool_column = column(svg);
  draw(svg, "path", { class: "floor", d: `M${LEFT - 4} ${FLOOR}H236` });
  const warm_word = draw(svg, "text", { class: "word strong", x: LEFT });
  const cool_word = draw(svg, "text", { class: "word strong" });
  const warm_name = name_of(svg);
  const cool_name = name_of(svg);

  // `together` from 0, apart, to 1, in the cup. `settled` once both have one temperature: then one number stands over both.
  return function show({ mass_g, material, start_C, warm_J_per_K, cool_J_per_K, warm_C, cool_C, together, settled }) {
    const warm_width = warm_J_per_K * PER_J_PER_K;
    const cool_width = cool_J_per_K * PER_J_PER_K;
    const cool_left = LEFT + warm_width + APART * (1 - together);
    warm_column(LEFT, warm_width, warm_C, start_C);
    cool_column(cool_left, cool_width, cool_C, CUP.start_C);
    warm_word.setAttribute("y", at(Math.max(warm_C, start_C)) - 4);
    warm_word.textContent = settled ? "" : `${warm_C.toFixed(1)} °C`;
    cool_word.setAttribute("x", cool_left + cool_width + 4);
    cool_word.setAttribute("y", at(cool_C) + 3);
    cool_word.textContent = `${cool_C.toFixed(1)} °C`;
    warm_name(LEFT, `${mass_g} g`, material);
    cool_name(Math.max(cool_left, CUP_WORD_LEFT), `${CUP.mass_g} g`, "water in the cup");
  };
}
