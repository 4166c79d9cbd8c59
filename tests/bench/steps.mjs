// What the benchmarks do inside the app: store jobs, and tap through steps.
import { createRequire } from "node:module";
import { Quick, file } from "../e2e/pages/quick.mjs";
import { another, before, fileOf, sampleEntries } from "../e2e/support/jobs.mjs";

const { expect } = createRequire(new URL("../e2e/package.json", import.meta.url))("@playwright/test");

const SAMPLES = ["replaced-hub", "declined-stop", "nothing-wrong"];

/** How many jobs are tapped through, from Lift to Gauge. */
const WALKS = 3;

/** Jobs in one file. */
const A_FILE = 100;

/** How often opening and home are measured. */
const ROUNDS = 7;

/** Each job of `count` has an identity of its own, up to 4,000. */
const jobs = (count) => Array.from({ length: count }, (_, place) =>
  another(sampleEntries(SAMPLES[place % SAMPLES.length]), place + 1));

/** Stores `count` jobs through the app on `page`; gives how many are stored. */
export async function storeJobs(page, count) {
  const all = jobs(count);
  const quick = new Quick(page);
  for (let at = 0; at < count; at += A_FILE) {
    await quick.take([file(`jobs-${at}.json`, fileOf(...all.slice(at, at + A_FILE)))], 120_000);
  }
  await page.evaluate(() => { location.hash = "#/"; });
  const stored = () => page.evaluate(() => new Promise((resolve, reject) => {
    const opening = indexedDB.open("hubslate");
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const counting = opening.result.transaction("summaries").objectStore("summaries").count();
      counting.onerror = () => reject(counting.error);
      counting.onsuccess = () => { opening.result.close(); resolve(counting.result); };
    };
  }));
  await expect.poll(stored, { timeout: 600_000 }).toBe(count);
  return stored();
}

/**
 * Puts `count` jobs straight into the database of `page`, as the app keeps them: each entry, and the
 * line that its own code makes of the job (`lines`, by the name of the sample). Thousands of jobs
 * through the app would take a quarter of an hour.
 */
export async function plantJobs(page, count, lines) {
  const samples = SAMPLES.map((name) => {
    const entries = sampleEntries(name);
    const texts = entries.map((entry) => ({ id: entry.id, text: JSON.stringify(entry) }));
    return { log: entries[0].log, texts, line: lines[name] };
  });
  await page.evaluate(async ([known, most]) => {
    const opening = indexedDB.open("hubslate");
    const database = await new Promise((resolve, reject) => {
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const identity = /[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[0-9a-f]{4}-[0-9a-f]{12}/g;
    for (let number = 1; number <= most; number += 1) {
      const { log, texts, line } = known[(number - 1) % known.length];
      const own = new Set([log, ...texts.map(({ id }) => id)]);
      const mark = `-7${number.toString(16).padStart(3, "0")}-`;
      const renewed = (text) => text.replace(identity, (id) => (own.has(id) ? id.replace(/-7[0-9a-f]{3}-/, mark) : id));
      const job = renewed(log);
      const writing = database.transaction(["entries", "summaries"], "readwrite", { durability: "relaxed" });
      for (const { id, text } of texts) {
        writing.objectStore("entries").put({ log: job, id: renewed(id), text: renewed(text) });
      }
      writing.objectStore("summaries").put({ log: job, text: renewed(line) });
      await new Promise((resolve, reject) => {
        writing.oncomplete = resolve;
        writing.onabort = () => reject(writing.error);
      });
    }
    database.close();
  }, [samples, count]);
}

/** Waits until the backup files of the phone hold each of `count` planted jobs as closed. */
export async function leveled(page, count) {
  const closed = () => page.evaluate(async () => {
    const root = await navigator.storage.getDirectory();
    const files = ["backup-1", "backup-2"].map(async (name) => (await (await root.getFileHandle(name)).getFile()).text());
    const lines = (await Promise.all(files)).flatMap((text) => text.split("\n")).filter((line) => line.includes('"held"'));
    return new Set(lines.flatMap((line) => line.match(/[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[0-9a-f]{4}-[0-9a-f]{12}/g) ?? [])).size;
  });
  await expect.poll(closed, { intervals: [5_000], timeout: 600_000 }).toBeGreaterThanOrEqual(count);
}

/** Milliseconds of strict writes of one record of an entry's size on the page at `host.url`, each
 * from the call to the second frame after the transaction was complete. */
export async function measureWrites(context, host, slower, count) {
  const page = await context.newPage();
  const client = await context.newCDPSession(page);
  await page.goto(host.url);
  await client.send("Emulation.setCPUThrottlingRate", { rate: slower });
  const times = await page.evaluate(async (writes) => {
    const opening = indexedDB.open("bench", 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore("records", { autoIncrement: true });
    const database = await new Promise((resolve, reject) => {
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const taken = [];
    for (let write = 0; write < writes; write += 1) {
      const begun = performance.now();
      await new Promise((resolve, reject) => {
        const transaction = database.transaction("records", "readwrite", { durability: "strict" });
        transaction.oncomplete = resolve;
        transaction.onabort = () => reject(transaction.error);
        transaction.objectStore("records").add("x".repeat(600));
      });
      await new Promise((next) => requestAnimationFrame(() => requestAnimationFrame(next)));
      taken.push(performance.now() - begun);
    }
    database.close();
    return taken;
  }, count);
  await page.close();
  return times;
}

/** Milliseconds from a link of the list to the painted job, of a job that is done. */
export async function measureOpening(context, host, slower) {
  const entries = another(sampleEntries("replaced-hub"), 4_001);
  const page = await context.newPage();
  await page.goto(host.url);
  await page.locator("html[data-ready]").waitFor({ state: "attached" });
  await new Quick(page).take([file("job.json", fileOf(entries))]);
  const client = await context.newCDPSession(page);
  await client.send("Emulation.setCPUThrottlingRate", { rate: slower });
  const times = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    await page.evaluate(() => { location.hash = "#/"; });
    await page.locator("main.desk").waitFor();
    times.push(await page.evaluate((log) => new Promise((resolve) => {
      const begun = performance.now();
      const there = () => document.querySelector("main")?.getAttribute("aria-label")?.includes(": ");
      const watch = new MutationObserver(() => {
        if (!there()) return;
        watch.disconnect();
        requestAnimationFrame(() => requestAnimationFrame(() => resolve(performance.now() - begun)));
      });
      watch.observe(document.body, { childList: true, subtree: true, attributes: true });
      location.hash = `#/job/${log}`;
    }), entries[0].log));
  }
  await page.close();
  return { entries: entries.length, times };
}

/** Milliseconds from the navigation to the frame after a job stood in the list. */
export async function measureHome(context, host, slower) {
  const times = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const page = await context.newPage();
    const client = await context.newCDPSession(page);
    await client.send("Emulation.setCPUThrottlingRate", { rate: slower });
    await page.addInitScript(() => {
      window.listed = new Promise((resolve) => {
        const watch = new MutationObserver(() => {
          if (!document.querySelector("main li a")) return;
          watch.disconnect();
          requestAnimationFrame(() => requestAnimationFrame(() => resolve(performance.now())));
        });
        watch.observe(document, { childList: true, subtree: true });
      });
    });
    await page.goto(host.url);
    times.push(await page.evaluate(() => window.listed));
    await page.close();
  }
  return times;
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
