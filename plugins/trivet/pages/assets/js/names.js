// Names on the teacher's own device: the class file that she opens puts names where numbers stood, in this tab alone, and shows groups
// that the site does not tell. Nothing is sent; what is kept is gone with the tab, or at once on "Forget".
import { understood } from "./class_file.js";
import { undrawn, withGroups } from "./drawn.js";

// Opens a class file on a sheet. `kept` holds it for the other sheets of this tab: { set(text), remove() }.
export const openOn = (sheet, text, kept) => {
  const [classId, unit] = sheet.dataset.run.split("/");
  const words = JSON.parse(sheet.querySelector("[data-words]").dataset.words);
  const found = understood(text, classId, unit);
  if (found.why) {
    say(sheet, fill(words[found.why], { class: classId, other: found.other }));
    return;
  }
  kept.set(text);
  undrawn(sheet);
  if (found.plan) withGroups(sheet, found.plan, words);
  const missing = !found.plan && sheet.querySelector("[data-undrawn]") !== null;
  show(sheet, found, words, true);
  buttons(sheet, true);
  say(sheet, fill(words.opened, { date: spoken(found.date) }) + (missing ? ` ${words.no_groups}` : ""));
  sheet.onclick = ({ target }) => {
    if (target.dataset.names === "hide") show(sheet, found, words, !sheet.classList.contains("named"));
    if (target.dataset.names === "forget") {
      kept.remove();
      forget(sheet);
      say(sheet, words.forgotten);
    }
  };
};

// names where numbers stand, or the numbers again
const show = (sheet, { names, notYet }, words, named) => {
  const called = (seat) => (named && names.get(seat)) || seat.slice(-2);
  for (const each of sheet.querySelectorAll("[data-seat]")) each.textContent = called(each.dataset.seat);
  sheet.classList.toggle("named", named);
  for (const button of sheet.querySelectorAll("[data-names='hide']")) button.textContent = named ? words.hide : words.show;
  for (const fold of sheet.querySelectorAll("[data-not-yet]")) lookUp(fold, notYet, called, words);
};

const forget = (sheet) => {
  sheet.onclick = null;
  show(sheet, { names: new Map(), notYet: new Map() }, { hide: "", show: "" }, false);
  undrawn(sheet);
  buttons(sheet, false);
};

const buttons = (sheet, opened) => {
  for (const button of sheet.querySelectorAll("[data-names]")) button.hidden = (button.dataset.names === "open") === opened;
};

// one student at a time: thirty lists of twenty names answer nobody
const lookUp = (fold, notYet, called, words) => {
  const [choice, answer] = [fold.querySelector("select"), fold.querySelector("[role=status]")];
  const chosen = choice.value;
  fold.hidden = notYet.size === 0;
  choice.replaceChildren(...[...notYet.keys()].sort().map((seat) => new Option(called(seat), seat, false, seat === chosen)));
  choice.onchange = () => {
    const others = notYet.get(choice.value).map(called).join(", ");
    answer.textContent = fill(others ? words.not_yet : words.everyone, { who: called(choice.value), others });
  };
  if (notYet.size) choice.onchange();
  else answer.textContent = "";
};

const say = (sheet, sentence) => {
  for (const line of sheet.querySelectorAll("[data-names-said]")) line.textContent = sentence;
};

const fill = (sentence, values) => sentence.replace(/\{(\w+)\}/g, (whole, name) => values[name] ?? whole);

const spoken = (day) => {
  const date = new Date(`${day}T12:00:00`);
  return Number.isNaN(date.valueOf()) ? day : date.toLocaleDateString(document.documentElement.lang, { month: "short", day: "numeric" });
};
