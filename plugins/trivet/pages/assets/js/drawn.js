// The groups of a unit that the site does not tell, put where its sheet has blanks for them. The blanks come back with `undrawn`.

// Shows a plan's groups.
export const withGroups = (sheet, plan, words) => {
  for (const blank of sheet.querySelectorAll("[data-undrawn]")) blank.hidden = true;
  for (const blank of sheet.querySelectorAll("[data-board]")) showBoards(sheet, blank, plan, words);
  for (const blank of sheet.querySelectorAll("[data-lane]")) showLane(blank, plan, words);
  for (const blank of sheet.querySelectorAll("[data-asked]")) showChecks(sheet, blank, plan, words);
};

// Takes away what `withGroups` put there.
export const undrawn = (sheet) => {
  for (const shown of sheet.querySelectorAll("[data-drawn]")) shown.remove();
  for (const blank of sheet.querySelectorAll("[data-undrawn]")) blank.hidden = false;
};

// where each group is in a round of a day, by letter
const whereIn = (plan, day, round) => {
  const held = plan.rounds.find((each) => each.date === day && each.round === Number(round));
  return Object.entries(held?.stations ?? {})
    .filter(([letter]) => plan.groups[letter])
    .sort();
};

const showBoards = (sheet, blank, plan, words) => {
  const [day, round] = blank.dataset.board.split(" ");
  for (const [letter, kind] of whereIn(plan, day, round)) {
    const board = part(sheet, kind.replace("_", "-"));
    const group = plan.groups[letter];
    const teamOf = Object.fromEntries(Object.entries(group.teams).flatMap(([code, team]) => Object.keys(team).map((seat) => [seat, code])));
    board.querySelector(".letter").textContent = letter;
    board.querySelector("header .note").textContent = students(Object.keys(teamOf).length, words);
    const devices = board.querySelector(".devices");
    if (devices) {
      repeat(devices, group.pairs, (line, pair) => {
        repeat(line.querySelector("p"), pair, (place, seat) => seated(place, seat, pair.length > 1 ? teamOf[seat] : words.alone));
      });
    }
    repeat(board.querySelector(".teams"), Object.entries(group.teams).sort(), (line, [code, team]) => {
      line.querySelector("dt").textContent = code;
      repeat(line.querySelector("dd"), Object.entries(team).sort(), (place, [seat, roles]) => {
        seated(place, seat, roles.map((role) => words.roles[role]).filter(Boolean).join(", "));
      });
    });
    blank.before(board);
  }
};

const showLane = (blank, plan, words) => {
  const [day, round, kind] = blank.dataset.lane.split(" ");
  const here = whereIn(plan, day, round).filter(([, each]) => each.replace("_", "-") === kind);
  if (!here.length) return;
  const letters = here.map(([letter]) => letter);
  const teams = letters.flatMap((letter) => Object.entries(plan.groups[letter].teams));
  const [letter, note] = [marked(document.createElement("span")), marked(document.createElement("p"))];
  letter.className = "letter";
  letter.textContent = letters.join("");
  blank.closest(".lane").querySelector(".who").prepend(letter);
  note.className = "note last";
  const count = teams.reduce((sum, [, team]) => sum + Object.keys(team).length, 0);
  note.append(students(count, words), document.createElement("br"), teams.map(([code]) => code).join(" "));
  blank.before(note);
};

const showChecks = (sheet, blank, plan, words) => {
  const round = Number(blank.dataset.asked);
  const where = plan.rounds.find((each) => each.round === round)?.stations ?? {};
  for (const check of plan.spot_checks.filter((each) => each.round === round)) {
    const line = part(sheet, `check-${(where[check.team[0]] ?? "").replace("_", "-")}`) ?? part(sheet, "check-online");
    const box = line.querySelector("[data-tick]");
    box.dataset.tick = `r${round}-${check.team.toLowerCase()}`;
    line.querySelector("[data-part='label']").textContent = `${check.team}, ${check.seat.slice(-2)}`;
    line.querySelector("[data-part='team']").textContent = check.team;
    seated(line.querySelector(".lead"), check.seat, words.check[check.kind] ?? "");
    line.querySelector(".ask").textContent = check.ask;
    line.querySelector(".hear .say").textContent = check.listen_for;
    blank.before(line);
  }
};

const part = (sheet, name) => {
  const model = sheet.querySelector(`template[data-part="${name}"]`);
  return model && marked(model.content.firstElementChild.cloneNode(true));
};

const marked = (element) => {
  element.dataset.drawn = "";
  return element;
};

// gives each item a copy of the list's first line
const repeat = (list, items, fill) => {
  const model = list.firstElementChild;
  list.replaceChildren(
    ...items.map((item) => {
      const line = model.cloneNode(true);
      fill(line, item);
      return line;
    }),
  );
};

const seated = (place, seat, says) => {
  const number = place.querySelector("[data-seat]");
  number.dataset.seat = seat;
  number.textContent = seat.slice(-2);
  place.querySelector("[data-part='says']").textContent = says;
};

const students = (n, words) => (n === 1 ? words.students.one : words.students.other).replace("{n}", n);
