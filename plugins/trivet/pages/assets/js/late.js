// The rest of a day when the lesson runs late: what stays, what shrinks, what moves to the next day.
// The same rule as planning/late.py; both are held to tests/shared/late.json. Minutes come in halves and are counted as whole half minutes.

export const RULES = { late_floor: 15, reflection_least: 5, reflection_most: 10, pack_up_least: 1, pack_up_most: 3 };

const OPENING = ["settle_in", "expectations", "places", "launch", "recap"];
const OF_ROUND = ["launch", "recap", "station", "clean_up"];
const GIVES_WAY = ["pack_up", "clean_up", "move", "places", "expectations", "settle_in", "launch", "recap", "station", "write_up", "reflection"];

const halves = (minutes) => Math.ceil(2 * minutes);

// parts: [{kind, minutes, round, before}] from the block going on to the last; done: minutes of the first that are behind; left: minutes to
// the bell. before: the minutes of a station that its round was worked on earlier days, until it was stopped there.
// Answers {parts, surplus, moved, write_up, half, half_left}: half is the round that stops, half_left its minutes still to work.
export function late(parts, done, left, rules = RULES) {
  if (Math.min(done, left, ...parts.map((part) => part.minutes), ...parts.map((part) => part.before ?? 0)) < 0) throw new RangeError("minutes of a day are never negative");
  const room = halves(left);
  let blocks = parts.map((part, place) => {
    const behind = place === 0 ? halves(done) : 0;
    const whole = halves(part.minutes);
    const rest = Math.max(0, whole - behind);
    const least =
      part.kind === "reflection" ? Math.max(0, halves(rules.reflection_least) - behind)
      : part.kind === "pack_up" ? Math.max(0, halves(rules.pack_up_least) - behind)
      : part.kind === "evidence" ? 0
      : rest;
    return { part, whole, rest, least, begun: place === 0 };
  });
  const worked = parts.length > 0 && !OPENING.includes(parts[0].kind);
  const moved = [];
  let writeUp = 0;
  let half = null;
  let halfLeft = 0;

  const over = () => blocks.reduce((sum, block) => sum + block.least, 0) - room;

  const move = (number) => {
    const first = blocks.findIndex((block) => block.part.round === number);
    const before = first > 0 && blocks[first - 1].part.kind === "move" ? first - 1 : first;
    blocks = blocks.filter((block, place) => block.part.round !== number && !(place >= before && place < first));
    moved.unshift(number);
    if (!worked && !blocks.some((block) => block.part.kind === "station")) {
      blocks = blocks.filter((block) => block.begun || !["expectations", "places", "evidence"].includes(block.part.kind));
    }
  };

  const coming = blocks.find((block) => block.part.kind === "write_up" && !block.begun);
  if (coming && over() > 0) {
    writeUp = coming.whole;
    blocks = blocks.filter((block) => block !== coming);
  }

  const begun = blocks.length ? blocks[0].part.round ?? null : null;
  const rounds = blocks.filter(({ part }) => part.kind === "station" && (part.round ?? null) !== begun).map(({ part }) => part.round);
  for (const number of rounds.reverse()) if (over() > 0) move(number);

  const shrinkRound = (much) => {
    const station = blocks.find((block) => block.part.kind === "station");
    if (!station) return;
    const behind = station.whole - station.rest;
    const before = halves(station.part.before ?? 0);
    const floor = Math.min(halves(rules.late_floor), before + station.whole);
    const rest = Math.max(0, station.rest - much);
    if (before + behind + rest >= floor) {
      station.rest = station.least = rest;
    } else if (station.begun) {
      half = station.part.round;
      halfLeft = station.whole - behind - rest;
      station.rest = station.least = rest;
    } else {
      move(station.part.round);
    }
  };

  const much = over();
  if (much > 0 && blocks.length) {
    const [first] = blocks;
    if (first.part.kind === "write_up") {
      const given = Math.min(much, first.rest);
      first.rest = first.least = first.rest - given;
      writeUp = given;
    } else if (OF_ROUND.includes(first.part.kind)) {
      shrinkRound(much);
    }
  }

  for (const kind of GIVES_WAY) {
    for (const block of [...blocks].reverse()) {
      if (block.part.kind === kind && over() > 0) {
        block.least -= Math.min(block.least, over());
        if (kind !== "reflection" && kind !== "pack_up") block.rest = Math.min(block.rest, block.least);
      }
    }
  }

  let free = -over();
  const mosts = { reflection: halves(rules.reflection_most), pack_up: halves(rules.pack_up_most) };
  for (const block of blocks) block.length = block.least;
  for (const kind of ["evidence", "reflection", "pack_up"]) {
    for (const block of blocks.filter(({ part }) => part.kind === kind)) {
      const behind = block.begun ? Math.max(0, block.whole - block.rest) : 0;
      const more =
        kind === "evidence"
          ? block.rest <= free ? block.rest : block.begun ? free : 0
          : Math.min(free, Math.max(0, Math.max(mosts[kind], block.whole) - behind - block.length));
      block.length += more;
      free -= more;
    }
  }
  return {
    parts: blocks.filter((block) => block.length || block.begun).map(({ part, length }) => ({ ...part, minutes: length / 2 })),
    surplus: free / 2,
    moved,
    write_up: writeUp / 2,
    half,
    half_left: halfLeft / 2,
  };
}
