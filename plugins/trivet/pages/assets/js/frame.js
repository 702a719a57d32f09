// The frame: light or dark paper before the first paint, and the theme's search once somebody reaches for it.
// The theme's own script costs more time than all else on a page and fetches the whole search index: a page that nobody searches does without.
document.documentElement.classList.replace("no-js", "js");

// paper: one button for each choice, of which the one in force is shown; pressing it goes on to the next
const papers = [...document.querySelectorAll(".paper button")];
const light = matchMedia("(prefers-color-scheme: light)");
const DEVICE = "(prefers-color-scheme)";
const asked = () => Math.max(0, papers.findIndex(({ dataset }) => matchMedia(dataset.mdColorMedia).matches));
const kept = () => {
  try {
    return __md_get("__palette")?.index ?? asked();
  } catch {
    return asked(); // a device that keeps nothing
  }
};
const keep = (choice) => {
  try {
    __md_set("__palette", choice);
  } catch {
    // the choice stands until the page is left
  }
};
const colors = ({ dataset }) => ({ media: dataset.mdColorMedia, scheme: dataset.mdColorScheme, primary: dataset.mdColorPrimary, accent: dataset.mdColorAccent });
let paper = Math.min(kept(), papers.length - 1);

const draw = () => {
  const chosen = papers[paper];
  const like = `(prefers-color-scheme: ${light.matches ? "light" : "dark"})`;
  const shown = chosen.dataset.mdColorMedia === DEVICE ? papers.find(({ dataset }) => dataset.mdColorMedia === like) ?? chosen : chosen;
  for (const [name, value] of Object.entries(colors(shown))) document.body.setAttribute(`data-md-color-${name}`, value);
  papers.forEach((button, index) => (button.hidden = index !== paper));
};
if (papers.length) {
  draw();
  light.addEventListener("change", draw);
  for (const button of papers) {
    button.addEventListener("click", () => {
      paper = (paper + 1) % papers.length;
      draw();
      papers[paper].focus();
      keep({ index: paper, color: colors(papers[paper]) });
    });
  }
}

// search: the theme's script is loaded at the first sign that somebody will search, and takes over from there
const query = document.querySelector(".md-search__input");
const open = document.getElementById("__search");
const theirs = document.querySelector("script[data-src]");
let coming;
const fetched = () =>
  (coming ??= new Promise((done) => {
    const script = document.createElement("script");
    script.addEventListener("load", () => setTimeout(done, 200)); // it closes the search once, where the address names a place on the page
    script.src = theirs.dataset.src;
    document.body.append(script);
  }));
const search = async () => {
  if (coming) return;
  await fetched();
  if (document.activeElement === query && !open.checked) open.click();
};

if (query && theirs) {
  query.addEventListener("focus", search);
  document.querySelector(".top [for='__search']").addEventListener("click", () => query.focus());
  addEventListener("keydown", (event) => {
    const writing = event.target.closest?.("input, textarea, select, [contenteditable]");
    if (coming || writing || event.ctrlKey || event.metaKey || event.altKey || !["f", "s", "/"].includes(event.key)) return;
    event.preventDefault();
    query.focus();
  });
}

// a frame of code that scrolls can be reached by key (WCAG 2.2, 2.1.1)
for (const code of document.querySelectorAll("pre > code")) if (code.scrollWidth > code.clientWidth) code.tabIndex = 0;
