// What the page says, so that the screen and the live region say the same. A number and its unit stay on one line.

import { CUP } from "./model.js";

const one_place = (value) => value.toFixed(1);
const whole = (value) => Math.round(value).toLocaleString("en-US");

export function result_sentence(trial) {
  const what = `${trial.mass_g}\u00a0g of ${trial.material} at ${trial.start_C}\u00a0°C`;
  const rise = `The water goes from ${one_place(CUP.start_C)} to ${one_place(trial.end_C)}\u00a0°C with ${what}.`;
  return `${rise} The ${trial.material === "water" ? "bag" : "block"} gave ${whole(trial.gave_J)}\u00a0J and the water took ${whole(trial.took_J)}\u00a0J.`;
}

export const waiting_sentence = "Warm and cool are still apart. Lower it into the cup.";

export function limit_sentence(name, unit, limits) {
  return `${name} goes from ${limits.least} to ${limits.most} ${unit}, in whole numbers.`;
}

export function cleared_sentence(count) {
  return count === 1 ? "One trial taken off the table." : `${count} trials taken off the table.`;
}
