// What it takes to bring in the files of many phones, and to find one job among them.
// The reckoning stands beside `JSON.parse` of the same bytes in the same page; then the app itself
// takes files with its storage, and searches ten thousand jobs.
import { createHash } from "node:crypto";
import { createWriteStream, mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { once } from "node:events";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createRequire } from "node:module";
import { launchOptions, phone } from "../e2e/support/phone.mjs";
import { Server } from "../e2e/support/server.mjs";
import { sampleEntries } from "../e2e/support/jobs.mjs";

const { chromium } = createRequire(new URL("../e2e/package.json", import.meta.url))("@playwright/test");

const JOBS = Number(process.env.HUBSLATE_JOBS ?? 10_000);
const ENTRIES = 300;
const THROUGH_THE_APP = 200;
const LISTED = 10_000;
const BATCH = 50;

/** What is promised; a number above it is said to be over, and the run fails. */
const LIMITS = { ratio: 4, find: 50, memory: 400 };

let over = 0;
function say(what, value, unit, limit) {
  const verdict = limit === undefined ? "" : value <= limit ? ` (goal ${limit}: met)` : ` (goal ${limit}: NOT MET)`;
  if (limit !== undefined && limit < value) over += 1;
  console.log(`${what}: ${Number(value.toFixed(2))} ${unit}${verdict}`);
}

const sha256 = (text) => createHash("sha256").update(text).digest("hex");
const digest = (texts) => sha256([...new Set(texts.map(sha256))].sort().join("\n"));

/** RFC 8785 for what stands in an entry: names sorted, numbers as this language writes them. */
function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (value === null || typeof value !== "object") return JSON.stringify(value);
  return `{${Object.keys(value).sort().map((name) => `${JSON.stringify(name)}:${canonical(value[name])}`).join(",")}}`;
}

/** The replaced hub with as many notes after it as make up the entries. */
function template() {
  const entries = sampleEntries("replaced-hub").slice(0, ENTRIES);
  for (let place = entries.length; place < ENTRIES; place += 1) {
    const last = entries.at(-1);
    entries.push({
      ...last,
      id: `ffffffff-0000-7000-8000-${place.toString(16).padStart(12, "0")}`,
      n: last.n + 1,
      after: [last.id],
      what: { note: { text: `What a technician says of this corner, note ${place}.` } },
    });
  }
  return entries.map((entry) => JSON.stringify(entry));
}

const texts = template();
const renew = (text, number) => text.replace(/[0-9a-f]{8}(?=(-[0-9a-f]{4}){3}-[0-9a-f]{12})/g,
  (begin) => (begin[0] === "f" ? `f${number.toString(16).padStart(7, "0")}` : number.toString(16).padStart(8, "0")));

const HEAD = `{"format":"hubslate","version":1,"made_by":"a bench","logs":[`;

/** The file of one job, as an export gives it. */
const fileOf = (number) => `${HEAD}${logOf(number)}]}\n`;

function logOf(number) {
  const entries = texts.map((text) => renew(text, number));
  const log = JSON.parse(entries[0]).log;
  const whole = canonicalDigest(entries);
  return `{"kind":"job","id":"${log}","digest":"${digest(entries)}","canonical":"${whole}",`
    + `"entries":[\n${entries.join(",\n")}\n]}`;
}

const canonicalDigest = (entries) => digest(entries.map((text) => canonical(JSON.parse(text))));

async function reckoning(browser) {
  const host = await new Server(process.env.HUBSLATE_OTHER).start();
  const page = await (await browser.newContext()).newPage();
  await page.route("**/job/*", async (route) => {
    const number = Number(route.request().url().split("/").pop());
    await route.fulfill({ body: fileOf(number), contentType: "application/json" });
  });
  await page.goto(host.url);
  await page.waitForFunction(() => window.wasmBindings?.intake);
  const sum = { bytes: 0, parse: 0, ours: 0, entries: 0, heap: 0, memory: 0 };
  for (let from = 1; from <= JOBS; from += BATCH) {
    const to = Math.min(from + BATCH - 1, JOBS);
    const got = await page.evaluate(async ([first, last]) => {
      const { intake, bytes_held } = window.wasmBindings;
      const all = { bytes: 0, parse: 0, ours: 0, entries: 0, heap: 0, memory: 0 };
      for (let number = first; number <= last; number += 1) {
        const bytes = new Uint8Array(await (await fetch(`job/${number}`)).arrayBuffer());
        const begin = performance.now();
        const parsed = JSON.parse(new TextDecoder().decode(bytes));
        const between = performance.now();
        const entries = intake(bytes);
        const end = performance.now();
        if (entries !== parsed.logs[0].entries.length) throw new Error(`Job ${number}: ${entries} entries came in.`);
        all.bytes += bytes.length;
        all.parse += between - begin;
        all.ours += end - between;
        all.entries += entries;
        all.heap = Math.max(all.heap, performance.memory?.usedJSHeapSize ?? 0);
        all.memory = bytes_held();
      }
      return all;
    }, [from, to]);
    for (const name of ["bytes", "parse", "ours", "entries"]) sum[name] += got[name];
    for (const name of ["heap", "memory"]) sum[name] = Math.max(sum[name], got[name]);
  }
  console.log(`read, digests, merge, fold and line of ${JOBS} files, ${sum.entries} entries, ${(sum.bytes / 1e6).toFixed(0)} MB, in Chromium:`);
  say("  JSON.parse alone", sum.parse / 1000, "s");
  say("  all of it", sum.ours / 1000, "s");
  say("  a file", sum.ours / JOBS, "ms");
  say("  all of it / JSON.parse", sum.ours / sum.parse, "times", LIMITS.ratio);
  say("  memory of the module, at most", sum.memory / 1e6, "MB");
  say("  heap of the page, at most", sum.heap / 1e6, "MB");
  await page.context().close();
  await host.stop();
}

/** The app takes files from its picker, onto its disk. */
async function throughTheApp(browser) {
  const host = await new Server(process.env.HUBSLATE_DIST_1).start();
  const context = await browser.newContext({ ...phone, viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  await page.goto(host.url);
  await page.locator("html[data-ready]").waitFor({ state: "attached" });
  await page.evaluate(() => { location.hash = "#/import"; });
  const files = Array.from({ length: THROUGH_THE_APP }, (_, place) => ({
    name: `job-${place + 1}.json`, mimeType: "application/json", buffer: Buffer.from(fileOf(place + 1)),
  }));
  const size = files.reduce((all, { buffer }) => all + buffer.length, 0);
  const begin = Date.now();
  await page.getByLabel("Import a file").setInputFiles(files);
  await page.getByText(`${THROUGH_THE_APP} of ${THROUGH_THE_APP} files`).last().waitFor({ timeout: 300_000 });
  const took = Date.now() - begin;
  console.log(`the app takes ${THROUGH_THE_APP} files (${(size / 1e6).toFixed(0)} MB) from its picker onto its disk:`);
  say("  a file", took / THROUGH_THE_APP, "ms");
  await find(page);
  await context.close();
  await host.stop();
}

/** What the processes that draw pages took in memory since they began, at most, in MB. */
async function peak(browser) {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send("SystemInfo.getProcessInfo");
  await session.detach();
  const most = processInfo.filter(({ type }) => type === "renderer").map(({ id }) => {
    const status = readFileSync(`/proc/${id}/status`, "utf8");
    return Number(/VmHWM:\s+(\d+) kB/.exec(status)[1]) / 1000;
  });
  return Math.max(...most);
}

/** The app takes all jobs in one file, which it never holds whole. */
async function oneFile(browser) {
  const folder = mkdtempSync(join(tmpdir(), "hubslate-intake-"));
  const path = join(folder, "all.json");
  const out = createWriteStream(path);
  for (let number = 1; number <= JOBS; number += 1) {
    const text = `${number === 1 ? HEAD : ",\n"}${logOf(number)}`;
    if (!out.write(text)) await once(out, "drain");
  }
  out.end("]}\n");
  await once(out, "finish");
  const host = await new Server(process.env.HUBSLATE_DIST_1).start();
  const context = await browser.newContext({ ...phone, viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  await page.goto(host.url);
  await page.locator("html[data-ready]").waitFor({ state: "attached" });
  // The same bytes through `JSON.parse`, a few jobs for all of them.
  const parse = await page.evaluate((texts) => {
    const begin = performance.now();
    for (let time = 0; time < 20; time += 1) texts.forEach((text) => JSON.parse(text));
    return (performance.now() - begin) / 20 / texts.length;
  }, Array.from({ length: 10 }, (_, place) => logOf(place + 1)));
  await page.evaluate(() => { location.hash = "#/import"; });
  const begin = Date.now();
  await page.getByLabel("Import a file").setInputFiles(path);
  await page.getByText(`${JOBS * ENTRIES} of them new`).waitFor({ timeout: 0 });
  const took = Date.now() - begin;
  console.log(`the app takes ${JOBS} jobs in one file (${(statSync(path).size / 1e6).toFixed(0)} MB) from its picker onto its disk:`);
  say("  a job", took / JOBS, "ms");
  say("  all of it / JSON.parse", took / JOBS / parse, "times");
  say("  memory of the page's process, at most", await peak(browser), "MB", LIMITS.memory);
  rmSync(folder, { recursive: true });
  await context.close();
  await host.stop();
}

/** From a letter typed to the rows on the screen, over ten thousand lines of jobs. */
async function find(page) {
  await page.evaluate(async (count) => {
    const database = await new Promise((resolve, reject) => {
      const request = indexedDB.open("hubslate");
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const transaction = database.transaction("summaries", "readwrite");
    const store = transaction.objectStore("summaries");
    const [one] = await new Promise((resolve) => {
      const request = store.getAll(null, 1);
      request.onsuccess = () => resolve(request.result);
    });
    for (let number = 0; number < count; number += 1) {
      const line = JSON.parse(one.text);
      line.log = `listed-${number}`;
      line.plate = `PLT ${String(number).padStart(5, "0")}`;
      line.vin = `1M8GDM9AXKP${String(number).padStart(6, "0")}`;
      store.put({ log: line.log, text: JSON.stringify(line) });
    }
    await new Promise((resolve) => { transaction.oncomplete = resolve; });
    database.close();
  }, LISTED);
  await page.evaluate(() => { location.hash = "#/shop-lists"; });
  await page.reload();
  await page.locator("html[data-ready]").waitFor({ state: "attached" });
  const box = page.getByRole("searchbox");
  await box.fill("PLT 09999");
  await page.getByRole("status").getByRole("link").first().waitFor();
  const times = [];
  for (const typed of ["P", "PL", "PLT", "PLT 0", "AXKP004217", "04217", "PLT 04217", "nowhere", "mx"]) {
    await box.fill("");
    times.push(await page.evaluate((text) => new Promise((resolve) => {
      const input = document.querySelector(".shop-lists__find input");
      const begin = performance.now();
      input.value = text;
      input.dispatchEvent(new Event("input", { bubbles: true }));
      // The rows are drawn before the second frame begins.
      requestAnimationFrame(() => requestAnimationFrame(() => resolve(performance.now() - begin)));
    }), typed));
  }
  console.log(`finding by plate, VIN, name, part or lot over ${LISTED} jobs, ${times.length} searches, from a letter to the screen:`);
  say("  the slowest", Math.max(...times), "ms", LIMITS.find);
}

const browser = await chromium.launch({ ...launchOptions, args: [...launchOptions.args, "--enable-precise-memory-info"] });
try {
  // First, while no other page has left anything in its process.
  await oneFile(browser);
  await reckoning(browser);
  await throughTheApp(browser);
} finally {
  await browser.close();
}
process.exitCode = over === 0 ? 0 : 1;
