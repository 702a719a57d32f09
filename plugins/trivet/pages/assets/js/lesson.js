// The lesson sheet: today's day first, one part at a time on the phone, ticks that survive a reload. Without this script all days stand open.
const sheet = document.querySelector(".lesson");
const days = [...sheet.querySelectorAll(".sheet-day")];
const MOST_BYTES = 2_000_000; // no class file is so large
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
const draw = () => {
  for (const box of sheet.querySelectorAll("[data-tick]")) {
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

// the class file that the teacher opens, for all sheets of its class in this tab; the code for it is loaded when there is one
const fileKey = `trivet:${base}:class-file:${sheet.dataset.run.split("/")[0]}`;
const kept = {
  get: () => {
    try {
      return sessionStorage.getItem(fileKey);
    } catch {
      return null;
    }
  },
  set: (text) => {
    try {
      sessionStorage.setItem(fileKey, text);
    } catch {
      // a tab that keeps nothing: the names stand until the page is left
    }
  },
  remove: () => sessionStorage.removeItem(fileKey),
};
const openFile = async (text) => {
  const { openOn } = await import("./names.js");
  openOn(sheet, text, kept);
  draw();
};
const picker = sheet.querySelector("[data-file]");
picker.addEventListener("change", async () => {
  const [file] = picker.files;
  if (file) await openFile(file.size > MOST_BYTES ? "" : await file.text());
  picker.value = "";
});
for (const button of sheet.querySelectorAll("[data-names='open']")) button.addEventListener("click", () => picker.click());

sheet.classList.add("live");
show(days.find((day) => day.dataset.day >= today()) ?? days.at(-1));
addEventListener("hashchange", () => show(days[0]));
draw();
const names = kept.get();
if (names) openFile(names);
