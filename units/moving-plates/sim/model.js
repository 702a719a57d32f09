// A plate that moves over a hot spot which stays. Speeds in cm a year, ages in million years, distances in km. Pure functions only.

export const LIMITS = Object.freeze({
  speed_cm_per_year: Object.freeze({ least: 1, most: 15, step: 0.1, start: 3 }),
  time_million_years: Object.freeze({ least: 0.5, most: 8, step: 0.1, start: 1 }),
});

// 1 cm a year is 10 km in a million years: 1,000,000 cm = 10 km.
const KM_IN_A_MILLION_YEARS_PER_CM_A_YEAR = 10;

export function distance_km(speed_cm_per_year, age_million_years) {
  return speed_cm_per_year * age_million_years * KM_IN_A_MILLION_YEARS_PER_CM_A_YEAR;
}

export function speed_cm_per_year(distance, age_million_years) {
  return distance / (age_million_years * KM_IN_A_MILLION_YEARS_PER_CM_A_YEAR);
}

// The first island is as old as the run is long; after it one is born every million years.
export function islands(speed, time_million_years) {
  const ages = [];
  for (let age = time_million_years; age > 1e-9; age -= 1) ages.push(age);
  return ages.map((age) => ({ age_million_years: age, distance_km: distance_km(speed, age) }));
}

// A typed number becomes one inside the limits, on a whole step; anything else is null.
export function on_step(text, limits) {
  const value = Number(text);
  if (String(text).trim() === "" || !Number.isFinite(value)) return null;
  const inside = Math.min(limits.most, Math.max(limits.least, value));
  return Math.round(inside / limits.step) / Math.round(1 / limits.step);
}
