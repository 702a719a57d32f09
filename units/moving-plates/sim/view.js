// The page: reads speed and time, lets the years pass, draws the islands to scale and says how far the oldest has come.

import { LIMITS, distance_km, islands, on_step } from "./model.js";

const SVG = "http://www.w3.org/2000/svg";
const RUN_MS = 1200;
const FAR_KM = 1200;
const HOT_X = 336;
const FAR_X = 16;
const SEA_Y = 78;
const COLUMNS = ["trial", "speed, cm a year", "time, million years", "oldest island, km away"];
const get = (id) => document.getElementById(id);
const calm = window.matchMedia("(prefers-reduced-motion: reduce)");
const state = Object.fromEntries(Object.entries(LIMITS).map(([key, limits]) => [key, limits.start]));
let running = 0;
let trials = 0;

const x_of = (km) => HOT_X - ((HOT_X - FAR_X) * km) / FAR_KM;

function draw(parent, name, attributes, text = "") {
  const node = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  node.textContent = text;
  parent.append(node);
  return node;
}

function make_map() {
  const map = get("map");
  draw(map, "path", { class: "sea", d: `M${FAR_X} ${SEA_Y}H${HOT_X + 16}` });
  draw(map, "path", { class: "plume", d: `M${HOT_X - 5} 126L${HOT_X} ${SEA_Y + 14}L${HOT_X + 5} 126` });
  draw(map, "text", { class: "word second", x: HOT_X + 16, y: 138, "text-anchor": "end" }, "hot spot stays");
  draw(map, "path", { class: "plate", d: `M${FAR_X} ${SEA_Y + 12}H${HOT_X + 16}` });
  draw(map, "text", { class: "word second", x: FAR_X, y: SEA_Y + 28 }, "\u2190 plate moves");
  const ticks = [];
  for (let km = 0; km <= FAR_KM; km += 100) ticks.push(`M${x_of(km)} 158v${km % 500 === 0 ? 9 : 5}`);
  draw(map, "path", { class: "tick", d: `M${FAR_X} 158H${HOT_X}${ticks.join("")}` });
  for (const km of [0, 500, 1000]) draw(map, "text", { class: "word second", x: x_of(km), y: 180, "text-anchor": "middle" }, km === 0 ? "0 km" : String(km));
  return draw(map, "g", {});
}

const group = make_map();

// Older islands are lower: rain and waves wear them down. The heights are a sketch, the distances are to scale.
function show(time) {
  group.replaceChildren();
  for (const one of islands(state.speed_cm_per_year, time)) {
    const x = x_of(one.distance_km);
    const height = Math.max(6, 34 - 3.5 * one.age_million_years);
    draw(group, "path", { class: "island", d: `M${x - 9} ${SEA_Y + 12}L${x} ${SEA_Y - height}L${x + 9} ${SEA_Y + 12}Z` });
  }
  const oldest = distance_km(state.speed_cm_per_year, time);
  if (oldest === 0) return;
  const x = x_of(oldest);
  draw(group, "path", { class: "bracket", d: `M${x} 34v-8H${HOT_X}v8` });
  draw(group, "text", { class: "word strong", x: (x + HOT_X) / 2, y: 19, "text-anchor": oldest < 250 ? "end" : "middle" }, `${Math.round(oldest)} km`);
}

function wait_for_run() {
  cancelAnimationFrame(running);
  show(0);
  get("result").textContent = "No island yet. Run the time.";
}

function write_trial() {
  const km = Math.round(distance_km(state.speed_cm_per_year, state.time_million_years));
  const row = document.createElement("tr");
  trials += 1;
  for (const [index, text] of [trials, state.speed_cm_per_year.toFixed(1), state.time_million_years.toFixed(1), km].entries()) {
    const cell = document.createElement(index === 0 ? "th" : "td");
    if (index === 0) cell.scope = "row";
    cell.textContent = text;
    cell.dataset.label = COLUMNS[index];
    row.append(cell);
  }
  get("trials").append(row);
  get("no-trials").hidden = true;
  get("result").textContent = `At ${state.speed_cm_per_year.toFixed(1)} cm a year, the oldest island is ${km} km away after ${state.time_million_years.toFixed(1)} million years.`;
}

function arrive() {
  show(state.time_million_years);
  write_trial();
}

function run() {
  cancelAnimationFrame(running);
  if (calm.matches) return arrive();
  const begun = performance.now();
  const step = (now) => {
    const part = Math.min(1, Math.max(0, (now - begun) / RUN_MS));
    if (part === 1) return arrive();
    show(state.time_million_years * part);
    running = requestAnimationFrame(step);
    return undefined;
  };
  running = requestAnimationFrame(step);
  return undefined;
}

function bind(key, name, unit) {
  const limits = LIMITS[key];
  const boxes = [get(`${key}-typed`), get(`${key}-slid`)];
  const put = (value) => {
    for (const box of boxes) box.value = value.toFixed(1);
    if (state[key] !== value) {
      state[key] = value;
      wait_for_run();
    }
  };
  for (const box of boxes) {
    Object.assign(box, { min: limits.least, max: limits.most, step: limits.step });
    box.addEventListener(box.type === "range" ? "input" : "change", () => {
      const value = on_step(box.value, limits);
      get("limit").textContent = value === Number(box.value) && box.value !== "" ? "" : `${name} goes from ${limits.least} to ${limits.most} ${unit}, in steps of ${limits.step}.`;
      put(value ?? state[key]);
    });
  }
  put(limits.start);
}

bind("speed_cm_per_year", "Speed", "cm a year");
bind("time_million_years", "Time", "million years");
get("run").addEventListener("click", run);
wait_for_run();
