// Birds with two beaks, small and large, over the years. Small is recessive: a bird has a small beak if both of its copies say small.
// Mating is at random and the numbers are large, so that chance plays no part (Hardy and Weinberg 1908). Pure functions only.

export const BIRDS = 100;
export const START_COPIES = 0.8;
export const LIMITS = Object.freeze({ least: 0, most: 100, step: 5, start: 100 });

// Share of birds with small beaks, from the share of copies that say small.
export function small_share(copies) {
  return copies * copies;
}

// The share of copies one year on. `small_lives` and `large_lives` are shares of birds that live through the year, 0 to 1.
// Without survivors nothing can be said: null.
export function next_copies(copies, small_lives, large_lives) {
  const other = 1 - copies;
  const alive = copies * copies * small_lives + (1 - copies * copies) * large_lives;
  if (alive === 0) return null;
  return (copies * copies * small_lives + copies * other * large_lives) / alive;
}

// How many of 100 birds have small beaks, as a whole number.
export function small_of_100(copies) {
  return Math.round(BIRDS * small_share(copies));
}
