// Prep: open the week whose lessons come next, or the one that the address names. Without this script all weeks stand open.
const prep = document.querySelector(".prep");
const weeks = [...prep.querySelectorAll(".pw[data-last]")];
const turn = prep.querySelector(".turn");

const two = (number) => String(number).padStart(2, "0");
const now = new Date();
const today = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;

const named = () => weeks.findIndex((week) => `#${week.id}` === location.hash);
const coming = weeks.findIndex((week) => week.dataset.last >= today);
let shown = named() >= 0 ? named() : coming >= 0 ? coming : weeks.length - 1;

const draw = () => {
  weeks.forEach((week, index) => week.classList.toggle("open", index === shown));
  turn.querySelector("[data-turn='-1']").disabled = shown === 0;
  turn.querySelector("[data-turn='1']").disabled = shown === weeks.length - 1;
};

if (weeks.length) {
  prep.classList.add("live");
  turn.hidden = false;
  turn.addEventListener("click", ({ target }) => {
    const button = target.closest("[data-turn]");
    if (!button) return;
    shown = Math.min(weeks.length - 1, Math.max(0, shown + Number(button.dataset.turn)));
    draw();
  });
  addEventListener("hashchange", () => {
    if (named() < 0) return;
    shown = named();
    draw();
  });
  draw();
}
