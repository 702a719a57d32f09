// The page: reads how many birds live, lets a year pass, draws the hundred birds and says how many have which beak.

import { BIRDS, LIMITS, START_COPIES, next_copies, small_of_100 } from "./model.js";

const SVG = "http://www.w3.org/2000/svg";
const COLUMNS = ["year", "small that lived, of 100", "large that lived, of 100", "small beaks, of 100", "large beaks, of 100"];
const get = (id) => document.getElementById(id);
const lives = { small: LIMITS.start, large: LIMITS.start };
let year = 0;
let copies = START_COPIES;

// A small beak is an outline and short, a large one solid and deep: told apart without color.
const BEAK = { small: "l6 2.4l-6 2.4z", large: "l12 6l-12 6z" };

function show_birds() {
  const few = small_of_100(copies);
  const birds = get("birds");
  birds.replaceChildren();
  for (let index = 0; index < BIRDS; index += 1) {
    const beak = index < few ? "small" : "large";
    const x = 8 + (index % 20) * 17.4;
    const y = 8 + Math.floor(index / 20) * 20;
    const mark = document.createElementNS(SVG, "path");
    mark.setAttribute("class", beak);
    mark.setAttribute("d", `M${x} ${beak === "small" ? y + 3.6 : y}${BEAK[beak]}`);
    birds.append(mark);
  }
}

function write_year() {
  const row = document.createElement("tr");
  const few = small_of_100(copies);
  const lived = year === 0 ? ["", ""] : [lives.small, lives.large];
  for (const [index, text] of [year, ...lived, few, BIRDS - few].entries()) {
    const cell = document.createElement(index === 0 ? "th" : "td");
    if (index === 0) cell.scope = "row";
    cell.textContent = text;
    cell.dataset.label = COLUMNS[index];
    row.append(cell);
  }
  get("years").append(row);
}

function say_birds() {
  const few = small_of_100(copies);
  const when = year === 0 ? "At the start" : `After year ${year}`;
  get("result").textContent = `${when}, ${few} of ${BIRDS} birds have small beaks and ${BIRDS - few} have large beaks.`;
}

function run_year() {
  const after = next_copies(copies, lives.small / 100, lives.large / 100);
  if (after === null) {
    get("result").textContent = "No bird would live through such a year. Let some live.";
    return;
  }
  copies = after;
  year += 1;
  show_birds();
  write_year();
  say_birds();
}

function start_over() {
  copies = START_COPIES;
  year = 0;
  get("years").replaceChildren();
  show_birds();
  write_year();
  say_birds();
}

function bind(beak) {
  const boxes = [get(`${beak}-typed`), get(`${beak}-slid`)];
  const put = (value) => {
    lives[beak] = value;
    for (const box of boxes) box.value = value;
  };
  for (const box of boxes) {
    Object.assign(box, { min: LIMITS.least, max: LIMITS.most, step: LIMITS.step });
    box.addEventListener(box.type === "range" ? "input" : "change", () => {
      const value = Number(box.value);
      const usable = box.value.trim() !== "" && Number.isFinite(value);
      const near = usable ? Math.min(LIMITS.most, Math.max(LIMITS.least, LIMITS.step * Math.round(value / LIMITS.step))) : lives[beak];
      get("limit").textContent = usable && near === value ? "" : "From 0 to 100 of 100 birds, in steps of 5.";
      put(near);
    });
  }
  put(LIMITS.start);
}

bind("small");
bind("large");
get("run").addEventListener("click", run_year);
get("reset").addEventListener("click", start_over);
start_over();
