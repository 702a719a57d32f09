// The year: mark this week, what is over and what is on. Without this script the whole year stands unmarked.
const now = new Date();
const two = (number) => String(number).padStart(2, "0");
const today = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;

for (const run of document.querySelectorAll(".strip-of-year .run")) {
  run.classList.toggle("done", run.dataset.last < today);
  run.classList.toggle("cur", run.dataset.first <= today && today <= run.dataset.last);
}
const weeks = [...document.querySelectorAll(".strip-of-year .wn")].filter(({ dataset }) => dataset.first <= today && today <= dataset.last);
for (const week of weeks) {
  const said = document.querySelector(".year-top .now");
  week.classList.add("cur");
  said.textContent = said.dataset.of.replace("…", week.textContent);
  said.hidden = false;
}
