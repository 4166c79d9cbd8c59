// Measures what a first visit loads, how soon a start is usable, and how soon a tap is safe.
// Every number is a median of this one run; the floor page is measured in between, on the same machine.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { brotliCompressSync, gzipSync } from "node:zlib";
import { launchOptions, phone } from "../e2e/support/phone.mjs";
import { Server } from "../e2e/support/server.mjs";
import { measureHome, measureOpening, measureTaps, measureWrites, leveled, plantJobs, storeJobs } from "./steps.mjs";

const { chromium } = createRequire(new URL("../e2e/package.json", import.meta.url))("@playwright/test");

const ROUNDS = 15;
const SLOWER = 4;
const JOBS = 50;
const MANY_JOBS = Number(process.env.HUBSLATE_JOBS ?? 2_000);
const WRITES = 30;

/** Promised limits; a number above its limit makes the run fail. A tap is held against a strict
 * write on the empty page of the same run. */
const LIMITS = { load: 750_000, start: 1.8, startWithJobs: 2.0, tap: 2.0 };

const quantile = (values, part) => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(part * sorted.length) - 1)];
};
const median = (values) => quantile(values, 0.5);

let over = 0;
function say(what, value, unit, limit) {
  const verdict = limit === undefined ? "" : value <= limit ? ` (limit ${limit}: within)` : ` (limit ${limit}: OVER)`;
  if (limit !== undefined && limit < value) over += 1;
  console.log(`${what}: ${Number(value.toFixed(2))} ${unit}${verdict}`);
}

/** The files that the service worker of a build fetches, and the worker itself. */
function firstVisit(dist) {
  const worker = readFileSync(join(dist, "sw.js"), "utf8");
  const list = JSON.parse(worker.match(/^const PRECACHE = (.*);$/m)[1].replace(/,\]$/, "]"));
  if (list.length === 0) throw new Error(`${dist} was not built: its worker lists nothing.`);
  return ["sw.js", ...list.map(([url]) => (url === "./" ? "index.html" : url))];
}

const packed = (dist, pack) => firstVisit(dist)
  .reduce((sum, file) => sum + pack(readFileSync(join(dist, file))).length, 0);

/** Visits a build once and waits until it starts from the phone. */
async function settle(context, host) {
  const page = await context.newPage();
  await page.goto(host.url);
  await page.locator("html[data-ready]").waitFor({ state: "attached" });
  // What a new phone asks is put off; the floor page asks nothing.
  const later = page.getByRole("button", { name: "Not now" });
  if (await later.count()) await later.tap();
  await page.evaluate(async () => { await navigator.serviceWorker.ready; });
  await page.reload();
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  return page;
}

/** Milliseconds from navigation to the frame after `data-ready`, the processor slowed down. */
async function start(context, host) {
  const page = await context.newPage();
  const client = await context.newCDPSession(page);
  await client.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
  await page.addInitScript(() => {
    window.usable = new Promise((resolve) => {
      const look = () => {
        if (!document.documentElement?.hasAttribute("data-ready")) return false;
        // Two frames: the second begins when the first has been painted.
        requestAnimationFrame(() => requestAnimationFrame(() => resolve(performance.now())));
        return true;
      };
      const watch = new MutationObserver(() => { if (look()) watch.disconnect(); });
      watch.observe(document, { attributes: true, childList: true, subtree: true });
    });
  });
  await page.goto(host.url);
  const elapsed = await page.evaluate(() => window.usable);
  const fromWorker = await page.evaluate(() => performance.getEntriesByType("navigation")[0].workerStart > 0);
  if (!fromWorker) throw new Error("This start did not come from the service worker.");
  await page.close();
  return elapsed;
}

/** Starts of both builds in turn; the first round fills the browser's own caches of compiled code. */
async function starts(context, hosts, jobs, limit) {
  const times = [[], []];
  for (let round = 0; round <= ROUNDS; round += 1) {
    for (const which of [0, 1]) {
      const time = await start(context, hosts[which]);
      if (round > 0) times[which].push(time);
    }
  }
  console.log(`start from the service worker, ${SLOWER} times slower, ${jobs} jobs stored, ${ROUNDS} rounds:`);
  say("  app", median(times[0]), "ms");
  say("  empty page", median(times[1]), "ms");
  say("  app / empty page", median(times[0]) / median(times[1]), "times", limit);
}

async function main() {
  const [app, empty] = [process.env.HUBSLATE_DIST_1, process.env.HUBSLATE_OTHER];
  say("first visit, gzip", packed(app, gzipSync), "bytes", LIMITS.load);
  say("first visit, brotli", packed(app, brotliCompressSync), "bytes");
  say("first visit of the empty page, gzip", packed(empty, gzipSync), "bytes");

  const hosts = [await new Server(app).start(), await new Server(empty).start()];
  const browser = await chromium.launch(launchOptions);
  try {
    const context = await browser.newContext(phone);
    const page = await settle(context, hosts[0]);
    await (await settle(context, hosts[1])).close();
    await starts(context, hosts, 0, LIMITS.start);
    const stored = await storeJobs(page, JOBS);
    await starts(context, hosts, stored, LIMITS.startWithJobs);

    const writes = await measureWrites(context, hosts[1], SLOWER, WRITES);
    const taps = await measureTaps(context, hosts[0], SLOWER);
    if (taps.length === 0) throw new Error("No tap was measured.");
    console.log(`tap to safe and painted, ${SLOWER} times slower, ${taps.length} taps, ${WRITES} writes:`);
    say("  median", median(taps), "ms");
    say("  95th percentile", quantile(taps, 0.95), "ms");
    say("  a strict write on the empty page, painted", median(writes), "ms");
    say("  tap / write", median(taps) / median(writes), "times", LIMITS.tap);

    const opening = await measureOpening(context, hosts[0], SLOWER);
    say(`opening a job of ${opening.entries} entries, ${SLOWER} times slower`, median(opening.times), "ms");
    const lines = JSON.parse(readFileSync(join(app, "../lines.json"), "utf8"));
    await plantJobs(page, MANY_JOBS, lines);
    await page.reload();
    await leveled(page, MANY_JOBS);
    const home = await measureHome(context, hosts[0], SLOWER);
    say(`start at home with ${MANY_JOBS} jobs, ${SLOWER} times slower`, median(home), "ms");
  } finally {
    await browser.close();
    await Promise.all(hosts.map((host) => host.stop()));
  }
  process.exitCode = over === 0 ? 0 : 1;
}

await main();
