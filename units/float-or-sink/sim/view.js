// The page: reads the controls, drops the block, says what happens.

import { LIMITS, LIQUIDS, TANK, block_height_cm, immersed_depth_cm, liquid, liquid_level_cm, outcome, rest_cm, whole_within } from "./model.js";
import { make_table } from "./table.js";
import { make_tank, start_bottom_cm } from "./tank.js";
import { cleared_sentence, limit_sentence, result_sentence, waiting_sentence } from "./words.js";

const FALL_MS = 900;
const get = (id) => document.getElementById(id);
const calm = window.matchMedia("(prefers-reduced-motion: reduce)");

const show = make_tank(get("tank"));
const table = make_table(get("trials"), get("no-trials"));
const state = { mass_g: LIMITS.mass_g.start, volume_mL: LIMITS.volume_mL.start, liquid: LIQUIDS[0] };
let falling = 0;

function say(text) {
  get("result").textContent = text;
}

function say_limit(text) {
  get("limit").textContent = text;
}

function hang() {
  cancelAnimationFrame(falling);
  show({ ...state, bottom_cm: null, level_cm: TANK.liquid_cm, liquid_name: state.liquid.name, under_cm: null, settled: false });
  say(waiting_sentence);
}

function trial_now() {
  const { mass_g, volume_mL } = state;
  const density = state.liquid.density_kg_per_m3;
  return {
    mass_g,
    volume_mL,
    liquid_word: state.liquid.id,
    outcome: outcome(mass_g, volume_mL, density),
    height_cm: block_height_cm(volume_mL),
    under_cm: immersed_depth_cm(mass_g, volume_mL, density),
    rest_cm: rest_cm(mass_g, volume_mL, density),
    level_cm: liquid_level_cm(mass_g, volume_mL, density),
  };
}

// A trial counts once the block is at rest: a block lifted out while it falls leaves no line.
function settle(trial) {
  table.add(trial);
  show_clear();
  say(result_sentence(trial));
  const under_cm = trial.outcome === "floats" ? trial.under_cm : null;
  show({ ...trial, bottom_cm: trial.rest_cm, liquid_name: state.liquid.name, under_cm, settled: true });
}

function fall(trial) {
  const begun = performance.now();
  const step = (now) => {
    const part = Math.min(1, Math.max(0, (now - begun) / FALL_MS));
    if (part === 1) return settle(trial);
    const eased = part < 0.5 ? 2 * part * part : 1 - 2 * (1 - part) * (1 - part);
    const bottom_cm = start_bottom_cm + (trial.rest_cm - start_bottom_cm) * eased;
    const wet = Math.min(1, Math.max(0, (TANK.liquid_cm - bottom_cm) / trial.height_cm));
    const level_cm = TANK.liquid_cm + (trial.level_cm - TANK.liquid_cm) * Math.min(1, wet);
    show({ ...trial, bottom_cm, level_cm, liquid_name: state.liquid.name, under_cm: null, settled: false });
    falling = requestAnimationFrame(step);
    return undefined;
  };
  falling = requestAnimationFrame(step);
}

function drop() {
  cancelAnimationFrame(falling);
  const trial = trial_now();
  if (calm.matches) settle(trial);
  else fall(trial);
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
    hang();
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
    drop();
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

function liquids() {
  const box = get("liquid");
  for (const one of LIQUIDS) box.append(new Option(one.name, one.id));
  box.value = LIQUIDS[0].id;
  box.addEventListener("change", () => {
    state.liquid = liquid(box.value);
    hang();
  });
  return () => {
    box.value = LIQUIDS[0].id;
    state.liquid = LIQUIDS[0];
  };
}

const back_to_start = [quantity("mass_g", "Mass", "g"), quantity("volume_mL", "Volume", "mL"), liquids()];
get("drop").addEventListener("click", drop);
get("reset").addEventListener("click", () => {
  for (const back of back_to_start) back();
  say_limit("");
  hang();
});
get("clear").addEventListener("click", clear_or_bring_back);
show_clear();
hang();
