// Home: open this week, mark today, and put the lesson that is on, or comes next, first. Without this script the whole year stands open.
const home = document.querySelector(".home");
const weeks = [...home.querySelectorAll(".wk")];
const turn = home.querySelector(".turn");

const two = (number) => String(number).padStart(2, "0");
const now = new Date();
const today = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
const clock = `${two(now.getHours())}:${two(now.getMinutes())}`;
const spoken = (time) => `${((Number(time.slice(0, 2)) + 11) % 12) + 1}${time.slice(2)}`;

const lessons = [...home.querySelectorAll("i[data-start]")].sort((a, b) =>
  `${a.dataset.date} ${a.dataset.start}`.localeCompare(`${b.dataset.date} ${b.dataset.start}`),
);
const coming = lessons.find(({ dataset }) => dataset.date > today || (dataset.date === today && dataset.end > clock));

for (const cell of home.querySelectorAll("[data-date]")) {
  cell.classList.toggle("today", cell.dataset.date === today);
  cell.classList.toggle("done", cell.matches("i") && cell.dataset.date < today);
}

const first = () => {
  const card = home.querySelector("template[data-first]").content.cloneNode(true);
  const { date, start, title, where } = coming.dataset;
  const row = coming.closest(".cls");
  const over = card.querySelector(".soon");
  const on = date === today && start <= clock;
  const minutes = Math.ceil((new Date(`${date}T${start}`) - now) / 60000);
  const soon = !on && minutes < 60 ? over.dataset.in.replace("…", minutes) : "";
  const day = date === today ? "" : `${new Date(`${date}T12:00`).toLocaleDateString(document.documentElement.lang, { weekday: "short", month: "short", day: "numeric" })}, `;
  over.textContent = [soon || `${on ? over.dataset.now : over.dataset.next}: ${day}${spoken(start)}`, row.dataset.room].filter(Boolean).join(", ");
  card.querySelector("h2").textContent = `${row.dataset.class} ${row.querySelector(".u").textContent}`;
  card.querySelector(".what").textContent = title;
  const places = card.querySelector(".where");
  const letters = new Map((where || "").split(" ").filter(Boolean).map((part) => part.split(":").reverse()));
  if (!letters.size) places.remove();
  for (const station of places.querySelectorAll("[data-station]")) {
    const letter = letters.get(station.dataset.station);
    if (letter) station.querySelector("b").textContent = letter;
    else station.remove();
  }
  card.querySelector(".go").href = `${row.getAttribute("href")}#${date}`;
  return card;
};

let shown = Math.max(0, weeks.findIndex((week) => week.contains(coming ?? null)));
if (!coming) shown = weeks.length - 1;
const draw = () => {
  weeks.forEach((week, index) => week.classList.toggle("open", index === shown));
  turn.querySelector("[data-turn='-1']").disabled = shown === 0;
  turn.querySelector("[data-turn='1']").disabled = shown === weeks.length - 1;
};

if (weeks.length) {
  home.classList.add("live");
  turn.hidden = false;
  turn.addEventListener("click", ({ target }) => {
    const button = target.closest("[data-turn]");
    if (!button) return;
    shown = Math.min(weeks.length - 1, Math.max(0, shown + Number(button.dataset.turn)));
    draw();
  });
  draw();
  if (coming) home.querySelector(".home-main").prepend(first());
}
