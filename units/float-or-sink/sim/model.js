// A block in a tank, by Archimedes: a floating block pushes aside its own mass of liquid, a sunken one its own volume.
// Pure functions and handbook values only. Masses in g, volumes in mL, lengths in cm, densities in kg/m³.

// Water at 20 °C: IAPWS-95. Ethanol and glycerol at 20 to 25 °C: CRC Handbook of Chemistry and Physics.
export const LIQUIDS = Object.freeze([
  Object.freeze({ id: "water", name: "water, 20 °C", density_kg_per_m3: 998.207 }),
  Object.freeze({ id: "ethanol", name: "ethanol", density_kg_per_m3: 789.3 }),
  Object.freeze({ id: "glycerol", name: "glycerol", density_kg_per_m3: 1261.3 }),
]);

export const LIMITS = Object.freeze({
  mass_g: Object.freeze({ least: 5, most: 250, start: 40 }),
  volume_mL: Object.freeze({ least: 20, most: 150, start: 60 }),
});

// A square base of 6 cm keeps every height the sliders allow under 6 / √1.5 = 4.9 cm, below which a block floats flat at any density.
export const BLOCK_BASE_CM = 6;
export const TANK = Object.freeze({ width_cm: 20, depth_cm: 12, height_cm: 13, liquid_cm: 10 });

export function liquid(id) {
  const found = LIQUIDS.find((one) => one.id === id);
  if (!found) throw new RangeError(`no liquid is called ${id}`);
  return found;
}

export function density_kg_per_m3(mass_g, volume_mL) {
  return (1000 * mass_g) / volume_mL;
}

// Compared as masses, so that equal densities compare equal without a division.
export function outcome(mass_g, volume_mL, liquid_kg_per_m3) {
  const pushed_aside_g = (liquid_kg_per_m3 * volume_mL) / 1000;
  if (mass_g < pushed_aside_g) return "floats";
  return mass_g > pushed_aside_g ? "sinks" : "hovers";
}

export function immersed_fraction(mass_g, volume_mL, liquid_kg_per_m3) {
  return Math.min(1, density_kg_per_m3(mass_g, volume_mL) / liquid_kg_per_m3);
}

export function block_height_cm(volume_mL) {
  return volume_mL / (BLOCK_BASE_CM * BLOCK_BASE_CM);
}

export function immersed_depth_cm(mass_g, volume_mL, liquid_kg_per_m3) {
  return immersed_fraction(mass_g, volume_mL, liquid_kg_per_m3) * block_height_cm(volume_mL);
}

// The liquid rises by what the block pushes aside, spread over the floor of the tank.
export function liquid_level_cm(mass_g, volume_mL, liquid_kg_per_m3) {
  const pushed_aside_mL = immersed_fraction(mass_g, volume_mL, liquid_kg_per_m3) * volume_mL;
  return TANK.liquid_cm + pushed_aside_mL / (TANK.width_cm * TANK.depth_cm);
}

// Height of the block's lower face above the floor of the tank, once it is at rest.
export function rest_cm(mass_g, volume_mL, liquid_kg_per_m3) {
  const state = outcome(mass_g, volume_mL, liquid_kg_per_m3);
  if (state === "sinks") return 0;
  const under_cm = immersed_depth_cm(mass_g, volume_mL, liquid_kg_per_m3);
  const surface_cm = liquid_level_cm(mass_g, volume_mL, liquid_kg_per_m3);
  return state === "floats" ? surface_cm - under_cm : (surface_cm - under_cm) / 2;
}

// A typed number becomes a whole one inside the limits; anything else is null.
export function whole_within(text, limits) {
  const value = Number(text);
  if (String(text).trim() === "" || !Number.isFinite(value)) return null;
  return Math.min(limits.most, Math.max(limits.least, Math.round(value)));
}
