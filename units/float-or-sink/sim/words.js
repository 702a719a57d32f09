// What the page says, so that the screen and the live region say the same.

const one_place = (value) => value.toFixed(1);

export function result_sentence(trial) {
  const block = `The ${trial.mass_g} g block of ${trial.volume_mL} mL`;
  const height = one_place(trial.height_cm);
  if (trial.outcome === "floats") return `${block} floats, ${one_place(trial.under_cm)} of its ${height} cm under ${trial.liquid_word}.`;
  if (trial.outcome === "sinks") return `${block} sinks and rests on the floor of the tank.`;
  return `${block} hovers: it neither rises nor sinks.`;
}

export const waiting_sentence = "The block hangs above the tank. Drop it.";

export function limit_sentence(name, unit, limits) {
  return `${name} goes from ${limits.least} to ${limits.most} ${unit}, in whole numbers.`;
}

export function cleared_sentence(count) {
  return count === 1 ? "One trial taken off the table." : `${count} trials taken off the table.`;
}
