// Lighthouse over one page of every kind of the built site, on a phone: 100 in all four categories, or the check fails.
// The time a page takes wobbles with the machine's load, so it is tried a few times and one full score will do; the other three never wobble.
import { createServer } from "node:http";
import { readFile, readdir, stat } from "node:fs/promises";
import { gzipSync } from "node:zlib";
import { extname, join, resolve } from "node:path";
import { launch } from "chrome-launcher";
import lighthouse from "lighthouse";

const ROOT = resolve(process.argv[2] ?? "site");
const CATEGORIES = ["performance", "accessibility", "best-practices", "seo"];
const TRIES = 5;
const TIMES = { FCP: "first-contentful-paint", LCP: "largest-contentful-paint", TBT: "total-blocking-time" };
const TYPES = { ".html": "text/html; charset=utf-8", ".css": "text/css", ".js": "text/javascript", ".json": "application/json", ".svg": "image/svg+xml", ".png": "image/png" };
const FLAGS = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

const server = createServer(async (request, response) => {
  const path = decodeURIComponent(new URL(request.url, "http://localhost").pathname);
  const file = join(ROOT, path.endsWith("/") ? path + "index.html" : path);
  try {
    if (!file.startsWith(ROOT)) throw new Error("outside the site");
    const body = gzipSync(await readFile(file));
    response.writeHead(200, { "content-type": TYPES[extname(file)] ?? "application/octet-stream", "content-encoding": "gzip", "cache-control": "max-age=600" });
    response.end(body);
  } catch {
    response.writeHead(404, { "content-type": "text/plain" });
    response.end("not found");
  }
});

const weight = async (folder) => (await stat(join(ROOT, folder, "index.html"))).size;
const below = async (folder) =>
  (await readdir(join(ROOT, folder), { withFileTypes: true })).filter((entry) => entry.isDirectory()).map((entry) => join(folder, entry.name)).sort();

async function heaviest(folders) {
  const sizes = await Promise.all(folders.map(weight));
  return folders[sizes.indexOf(Math.max(...sizes))];
}

// the heaviest lesson sheet of each way of teaching, with groups and without
async function lessons() {
  const kinds = new Map();
  for (const folder of (await Promise.all((await below("lesson")).map(below))).flat()) {
    const plan = JSON.parse(await readFile(join(ROOT, `${folder.replace("lesson", "data")}.json`)));
    const kind = `${plan.way} ${plan.groups ? "drawn" : "open"}`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), folder]);
  }
  return Promise.all([...kinds.values()].map(heaviest));
}

async function pages() {
  const unit = "units/float-or-sink";
  const guides = await below("guide");
  const found = ["units", unit, `${unit}/student`, `${unit}/student/es`, ...(await lessons()), "prep", "year", await heaviest(await below("whom")), "guide", await heaviest(guides)];
  return ["/", ...found.map((folder) => `/${folder}/`), "/404.html"];
}

async function scores(url, port) {
  const { lhr } = await lighthouse(url, { port, onlyCategories: CATEGORIES, logLevel: "error" });
  const missed = Object.values(lhr.audits).filter((audit) => audit.score !== null && audit.score < 1 && ["binary"].includes(audit.scoreDisplayMode)).map((audit) => audit.id);
  const times = Object.entries(TIMES).map(([name, audit]) => `${name} ${Math.round(lhr.audits[audit].numericValue)} ms`);
  const shift = `CLS ${lhr.audits["cumulative-layout-shift"].numericValue.toFixed(3)}`;
  return { got: CATEGORIES.map((name) => Math.round(lhr.categories[name].score * 100)), missed, times: [...times, shift].join(", ") };
}

await new Promise((done) => server.listen(0, "127.0.0.1", done));
const base = `http://127.0.0.1:${server.address().port}`;
const chrome = await launch({ chromePath: process.env.CHROME_PATH, chromeFlags: FLAGS });
let failed = 0;
try {
  for (const path of await pages()) {
    let result;
    let tried = 0;
    do {
      const measured = await scores(base + path, chrome.port);
      result = result && result.got[0] > measured.got[0] ? result : measured;
      tried += 1;
    } while (tried < TRIES && result.got[0] < 100 && result.got.slice(1).every((score) => score === 100));
    const good = result.got.every((score) => score === 100);
    failed += good ? 0 : 1;
    const all = CATEGORIES.map((name, at) => `${name} ${result.got[at]}`).join("  ");
    console.log(`${good ? "ok  " : "MISS"} ${path}  ${all}  (${result.times}${tried > 1 ? `, try ${tried}` : ""})${good ? "" : `  ${result.missed.join(", ")}`}`);
  }
} finally {
  chrome.kill();
  server.close();
}
process.exit(failed ? 1 : 0);
