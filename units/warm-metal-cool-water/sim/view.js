// The page: reads the controls, lowers the warm thing into the cup, says what happens.

import { CUP, LIMITS, MATERIALS, lower_into_cup, material, on_the_way_C, whole_within } from "./model.js";
import { make_columns } from "./columns.js";
import { make_table } from "./table.js";
import { cleared_sentence, limit_sentence, result_sentence, waiting_sentence } from "./words.js";

const LOWERED_MS = 1400;
const APPROACH = 0.2;
const get = (id) => document.getElementById(id);
const calm = window.matchMedia("(prefers-reduced-motion: reduce)");

const show = make_columns(get("columns"));
const table = make_table(get("trials"), get("no-trials"));
const state = { mass_g: LIMITS.mass_g.start, start_C: LIMITS.start_C.start, material: MATERIALS[0] };
let moving = 0;

function say(text) {
  get("result").textContent = text;
}

function say_limit(text) {
  get("limit").textContent = text;
}

function trial_now() {
  const { mass_g, start_C } = state;
  return { mass_g, start_C, material: state.material.id, ...lower_into_cup(mass_g, state.material.specific_heat_J_per_g_K, start_C) };
}

function apart() {
  cancelAnimationFrame(moving);
  show({ ...trial_now(), warm_C: state.start_C, cool_C: CUP.start_C, together: 0, settled: false });
  say(waiting_sentence);
}

// A trial counts once both have one temperature: a control that moves before that leaves no line.
function settle(trial) {
  table.add(trial);
  show_clear();
  say(result_sentence(trial));
  show({ ...trial, warm_C: trial.end_C, cool_C: trial.end_C, together: 1, settled: true });
}

function wait_for_end(trial) {
  const begun = performance.now();
  const step = (now) => {
    const part = Math.min(1, Math.max(0, (now - begun) / LOWERED_MS));
    if (part === 1) return settle(trial);
    const mixed = Math.max(0, (part - APPROACH) / (1 - APPROACH));
    const warm_C = on_the_way_C(trial.start_C, trial.end_C, mixed);
    const cool_C = on_the_way_C(CUP.start_C, trial.end_C, mixed);
    show({ ...trial, warm_C, cool_C, together: Math.min(1, part / APPROACH), settled: false });
    moving = requestAnimationFrame(step);
    return undefined;
  };
  moving = requestAnimationFrame(step);
}

function lower() {
  cancelAnimationFrame(moving);
  const trial = trial_now();
  if (calm.matches) settle(trial);
  else wait_for_end(trial);
}

function quantity(key, name, unit) {
  const limits = LIMITS[key];
  const typed = get(`${key}-typed`);
  const slid = get(`${key}-slid`);
  const put = (value) => {
    typed.value = value;
    slid.value = value;
    if (state[key] === value) return;
    state[key] = value;
    apart();
  };
  const read_typed = () => {
    const value = whole_within(typed.value, limits);
    say_limit(value === Number(typed.value) && typed.value !== "" ? "" : limit_sentence(name, unit, limits));
    put(value ?? state[key]);
  };
  for (const box of [typed, slid]) {
    box.min = limits.least;
    box.max = limits.most;
  }
  slid.addEventListener("input", () => {
    say_limit("");
    put(Number(slid.value));
  });
  typed.addEventListener("change", read_typed);
  typed.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    read_typed();
    lower();
  });
  const nudge = (by) => {
    const value = state[key] + by;
    say_limit(value < limits.least || value > limits.most ? limit_sentence(name, unit, limits) : "");
    put(Math.min(limits.most, Math.max(limits.least, value)));
  };
  get(`${key}-less`).addEventListener("click", () => nudge(-1));
  get(`${key}-more`).addEventListener("click", () => nudge(1));
  put(limits.start);
  return () => put(limits.start);
}

function show_clear() {
  const button = get("clear");
  button.textContent = table.can_bring_back && table.count === 0 ? "Bring the table back" : "Clear the table";
  button.disabled = table.count === 0 && !table.can_bring_back;
}

function clear_or_bring_back() {
  if (table.count === 0 && table.can_bring_back) {
    say_limit(`The table is back, ${table.bring_back()} in all.`);
  } else {
    say_limit(cleared_sentence(table.clear()));
  }
  show_clear();
}

function materials() {
  const box = get("material");
  for (const one of MATERIALS) box.append(new Option(one.name, one.id));
  const choose = (id) => {
    box.value = id;
    state.material = material(id);
    apart();
  };
  box.addEventListener("change", () => choose(box.value));
  choose(MATERIALS[0].id);
  return () => choose(MATERIALS[0].id);
}

const back_to_start = [quantity("mass_g", "Mass", "g"), quantity("start_C", "Start", "°C"), materials()];
get("lower").addEventListener("click", lower);
get("reset").addEventListener("click", () => {
  for (const back of back_to_start) back();
  say_limit("");
});
get("clear").addEventListener("click", clear_or_bring_back);
show_clear();
