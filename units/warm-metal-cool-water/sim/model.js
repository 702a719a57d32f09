// Something warm in a cup of cool water: what the one gives, the other takes, until both have one temperature. No loss to cup or air.
// Pure functions and handbook values only. Masses in g, temperatures in °C, energies in J, specific heat in J/(g·K).

// Metals: CRC Handbook of Chemistry and Physics, molar heat capacity at 25 °C over molar mass. Water at 20 °C: IAPWS-95.
export const MATERIALS = Object.freeze([
  Object.freeze({ id: "aluminum", name: "aluminum", specific_heat_J_per_g_K: 0.897 }),
  Object.freeze({ id: "copper", name: "copper", specific_heat_J_per_g_K: 0.385 }),
  Object.freeze({ id: "iron", name: "iron", specific_heat_J_per_g_K: 0.4495 }),
  Object.freeze({ id: "water", name: "water in a thin bag", specific_heat_J_per_g_K: 4.184 }),
]);

export const WATER_J_PER_G_K = 4.184;
export const CUP = Object.freeze({ mass_g: 100, start_C: 20 });

export const LIMITS = Object.freeze({
  mass_g: Object.freeze({ least: 20, most: 250, start: 50 }),
  start_C: Object.freeze({ least: 25, most: 60, start: 45 }),
});

export function material(id) {
  const found = MATERIALS.find((one) => one.id === id);
  if (!found) throw new RangeError(`no material is called ${id}`);
  return found;
}

// Energy for one degree, the width of a column in the picture.
export function heat_capacity_J_per_K(mass_g, specific_heat_J_per_g_K) {
  return mass_g * specific_heat_J_per_g_K;
}

// The mean of the two temperatures, each with the weight of its heat capacity: then as much is given as taken.
export function end_temperature_C(warm_J_per_K, warm_C, cool_J_per_K, cool_C) {
  return (warm_J_per_K * warm_C + cool_J_per_K * cool_C) / (warm_J_per_K + cool_J_per_K);
}

export function energy_J(heat_capacity, from_C, to_C) {
  return heat_capacity * (to_C - from_C);
}

// One trial in the cup: `gave_J` is what the warm thing gave, `took_J` what the water took.
export function lower_into_cup(mass_g, specific_heat_J_per_g_K, start_C) {
  const warm = heat_capacity_J_per_K(mass_g, specific_heat_J_per_g_K);
  const cool = heat_capacity_J_per_K(CUP.mass_g, WATER_J_PER_G_K);
  const end_C = end_temperature_C(warm, start_C, cool, CUP.start_C);
  return { warm_J_per_K: warm, cool_J_per_K: cool, end_C, gave_J: -energy_J(warm, start_C, end_C), took_J: energy_J(cool, CUP.start_C, end_C) };
}

// Where a temperature stands on its way, part 0 to 1. The gap closes ever more slowly, as Newton's law of cooling says; by 1 it is closed.
export function on_the_way_C(from_C, to_C, part) {
  const closed = (1 - Math.exp(-5 * part)) / (1 - Math.exp(-5));
  return from_C + (to_C - from_C) * closed;
}

// A typed number becomes a whole one inside the limits; anything else is null.
export function whole_within(text, limits) {
  const value = Number(text);
  if (String(text).trim() === "" || !Number.isFinite(value)) return null;
  return Math.min(limits.most, Math.max(limits.least, Math.round(value)));
}
