// What a class file says (schema/class-file.schema.json), or why it can't be used here. It came from a disk: nothing in it is trusted.
const VERSION = 1;
const MOST_STUDENTS = 99; // class numbers have two digits
const SEAT = /^[a-z][a-z0-9-]{0,11}-[0-9]{2}$/;
const LETTERS = ["A", "B", "C"];
const KINDS = new Set(["online", "hands_on", "teacher_led"]);

// Returns { names, notYet, plan, date } for the class, `plan` null where the file holds no groups of the unit; else { why, other }.
export const understood = (text, classId, unit) => {
  let file;
  try {
    file = JSON.parse(text);
  } catch {
    return { why: "no_file" };
  }
  if (file?.class_file !== VERSION || !Array.isArray(file.students) || file.students.length > MOST_STUDENTS) return { why: "no_file" };
  if (file.class !== classId) return { why: "other_class", other: String(file.class) };
  const students = file.students.filter((each) => isSeat(each?.seat) && typeof each.name === "string");
  return {
    names: shortNames(new Map(students.map((each) => [each.seat, each.name.trim()]))),
    notYet: new Map(students.map((each) => [each.seat, list(each.not_yet).filter(isSeat)])),
    plan: list(file.plans).find((plan) => plan?.unit === unit && plan.class === classId && isPlan(plan)) ?? null,
    date: String(file.made_on),
  };
};

// First names, as they are called in class; the whole name where two share one. Students without a name keep their number.
export const shortNames = (names) => {
  const first = new Map([...names].map(([seat, name]) => [seat, firstName(name)]));
  const times = new Map();
  for (const name of first.values()) times.set(name, (times.get(name) ?? 0) + 1);
  return new Map([...names].filter(([, name]) => name).map(([seat, name]) => [seat, times.get(first.get(seat)) > 1 ? name : first.get(seat)]));
};

const firstName = (name) => (name.includes(",") ? name.slice(name.indexOf(",") + 1) : name).trim().split(/\s+/)[0] || name;
const list = (value) => (Array.isArray(value) ? value : []);
const isSeat = (value) => typeof value === "string" && SEAT.test(value);
const isText = (value) => typeof value === "string";
const isMapping = (value) => typeof value === "object" && value !== null && !Array.isArray(value);

const all = (value, holds) => Array.isArray(value) && value.every(holds);
const byLetter = (value, holds) => isMapping(value) && Object.entries(value).every(([letter, each]) => LETTERS.includes(letter) && holds(each));

const isPlan = (plan) =>
  byLetter(plan.groups, isGroup) &&
  all(plan.rounds, (round) => byLetter(round?.stations, (kind) => KINDS.has(kind))) &&
  all(plan.spot_checks, (check) => isSeat(check?.seat) && [check.team, check.kind, check.ask, check.listen_for].every(isText));

const isGroup = (group) =>
  isMapping(group?.teams) &&
  Object.values(group.teams).every(isTeam) &&
  all(group.pairs, (pair) => all(pair, isSeat) && pair.length > 0);

const isTeam = (team) => isMapping(team) && Object.entries(team).every(([seat, roles]) => isSeat(seat) && all(roles, isText));
