// Live preview: ask the preview server when the site was rebuilt, and load the page again then.
const ask = async (epoch) => {
  const answer = await fetch(`/livereload/${epoch}/0`, { cache: "no-store" });
  return answer.ok ? Number(await answer.text()) : Number.NaN;
};
const wait = (seconds) => new Promise((done) => setTimeout(done, seconds * 1000));
let seen = 0;
for (;;) {
  try {
    const epoch = await ask(seen);
    if (Number.isNaN(epoch)) break; // not a preview server
    if (seen && epoch > seen) {
      location.reload();
      break;
    }
    seen = Math.max(seen, epoch);
  } catch {
    await wait(3);
  }
  if (document.visibilityState === "hidden") await wait(3);
}
