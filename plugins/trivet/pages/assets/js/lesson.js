// The lesson sheet: today's day first, one part at a time on the phone, ticks that survive a reload. Without this script all days stand open.
const sheet = document.querySelector(".lesson");
const days = [...sheet.querySelectorAll(".sheet-day")];
const OF_THE_RUN = new Set(["ask", "kit"]); // the same on every day
const tabs = [...sheet.querySelectorAll("[data-tab]")];

// the base path keeps two departments on one host apart
const base = location.pathname.replace(new RegExp(`${sheet.dataset.page.replace(/[-]/g, "\\$&")}(index\\.html)?$`), "");
const key = `trivet:${base}:ticks:${sheet.dataset.run}:${days[0].dataset.day}`;

const today = () => {
  const now = new Date();
  const two = (number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

const open = (day, part) => {
  for (const each of days) each.classList.toggle("open", each === day);
  for (const link of sheet.querySelectorAll(".pick a")) mark(link, link.dataset.day === day.dataset.day);
  for (const panel of sheet.querySelectorAll(".panel")) panel.classList.toggle("open", panel.dataset.panel === part);
  for (const tab of tabs) {
    const part_ = tab.dataset.tab;
    if (!OF_THE_RUN.has(part_)) {
      const target = part_ === "day" ? day.id : `${day.id}-${part_}`;
      tab.hash = target;
      tab.hidden = !document.getElementById(target);
    }
    mark(tab, part_ === part);
  }
};

const mark = (link, here) => (here ? link.setAttribute("aria-current", "true") : link.removeAttribute("aria-current"));

const chosen = () => {
  const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  const panel = target?.closest(".panel");
  const day = target?.closest(".sheet-day");
  return { day, part: panel?.dataset.panel ?? (day ? "day" : null) };
};

const show = (fallback) => {
  const { day, part } = chosen();
  open(day ?? sheet.querySelector(".sheet-day.open") ?? fallback, part ?? "day");
};

const read = () => {
  try {
    return new Set(JSON.parse(localStorage.getItem(key) ?? "[]"));
  } catch {
    return new Set();
  }
};
const keep = (ticks) => {
  try {
    localStorage.setItem(key, JSON.stringify([...ticks]));
  } catch {
    // a device that keeps nothing: the ticks stand until the page is left
  }
};

const ticks = read();
const boxes = [...sheet.querySelectorAll("[data-tick]")];
const draw = () => {
  for (const box of boxes) {
    box.checked = ticks.has(box.dataset.tick);
    box.closest(".ck").classList.toggle("done", box.checked);
  }
  for (const list of sheet.querySelectorAll(".checks")) {
    const next = [...list.querySelectorAll(".ck")].find((line) => line.querySelector("[data-tick]:not(:checked)"));
    for (const line of list.querySelectorAll(".ck")) line.classList.toggle("now", line === next);
  }
};
sheet.addEventListener("change", ({ target }) => {
  if (!target.dataset.tick) return;
  if (target.checked) ticks.add(target.dataset.tick);
  else ticks.delete(target.dataset.tick);
  keep(ticks);
  draw();
});

sheet.classList.add("live");
show(days.find((day) => day.dataset.day >= today()) ?? days.at(-1));
addEventListener("hashchange", () => show(days[0]));
draw();
