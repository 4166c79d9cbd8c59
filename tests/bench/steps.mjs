// What the benchmarks do inside the app: store jobs, and tap through steps.
import { createRequire } from "node:module";
import { Quick, file } from "../e2e/pages/quick.mjs";
import { another, before, fileOf, sampleEntries } from "../e2e/support/jobs.mjs";

const { expect } = createRequire(new URL("../e2e/package.json", import.meta.url))("@playwright/test");

const SAMPLES = ["replaced-hub", "declined-stop", "nothing-wrong"];

/** How many jobs are tapped through, from Lift to Gauge. */
const WALKS = 3;

/** Stores `count` jobs through the app on `page`; gives how many are stored. */
export async function storeJobs(page, count) {
  const files = Array.from({ length: count }, (_, place) => {
    const entries = sampleEntries(SAMPLES[place % SAMPLES.length]);
    return file(`job-${place}.json`, fileOf(another(entries, place + 1)));
  });
  const quick = new Quick(page);
  await quick.take(files);
  await page.evaluate(() => { location.hash = "#/"; });
  // A job that is overdue stands in two lists.
  const stored = () => quick.main.getByRole("listitem").getByRole("link")
    .evaluateAll((links) => new Set(links.map(({ hash }) => hash)).size);
  await expect.poll(stored).toBe(count);
  return stored();
}

/**
 * Opens jobs on a page of `context` at `host.url`, slows the processor `slower` times, and taps
 * through steps; gives for each tap the milliseconds until its entry was safe and painted.
 *
 * The clock runs in the page: from the click that the finger makes to the second frame after the
 * next thing to do stood there and the strip read "Saved".
 */
export async function measureTaps(context, host, slower) {
  const page = await context.newPage();
  await page.addInitScript(watchTaps);
  await page.goto(host.url);
  await page.locator("html[data-ready]").waitFor({ state: "attached" });
  const client = await context.newCDPSession(page);
  const quick = new Quick(page);
  const entries = before(sampleEntries("replaced-hub"), ({ answered }) => answered?.step.startsWith("lift_hold"));
  for (let walk = 1; walk <= WALKS; walk += 1) {
    await client.send("Emulation.setCPUThrottlingRate", { rate: 1 });
    await quick.open(fileOf(another(entries, 1000 + walk)));
    await client.send("Emulation.setCPUThrottlingRate", { rate: slower });
    await quick.walk("Measure: Push, pull, read");
  }
  const taps = await page.evaluate(() => window.taps);
  await page.close();
  return taps;
}

/** Runs in the page, which has the same clock as its events. */
function watchTaps() {
  window.taps = [];
  const thing = () => document.querySelector("main")?.getAttribute("aria-label");
  const kept = () => document.querySelector("main header [role=status]")?.textContent === "Saved";
  let watch = null;
  addEventListener("click", ({ timeStamp }) => {
    // Of two taps that belong together, such as "not done" and its reason, the second writes.
    watch?.disconnect();
    const was = thing();
    if (!was?.includes(": ")) return;
    watch = new MutationObserver(() => {
      if (thing() === was || !kept()) return;
      watch.disconnect();
      requestAnimationFrame(() => requestAnimationFrame(() => window.taps.push(performance.now() - timeStamp)));
    });
    watch.observe(document.body, { attributes: true, childList: true, characterData: true, subtree: true });
  }, { capture: true });
}
