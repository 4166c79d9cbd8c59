// While a file comes in, nothing of it is taken for an orphan; refused, nothing of it stays.
import { readFileSync } from "node:fs";
import { test, expect, open, ready } from "./support/fixtures.mjs";
import { journal, pictures, plantPicture } from "./support/journal.mjs";
import { before, fileOf, sampleEntries } from "./support/jobs.mjs";
import { phone } from "./support/phone.mjs";
import { Quick, file } from "./pages/quick.mjs";

const ORPHAN = "c".repeat(64);

/** A practice job with a picture, out of the phone as one zip. */
async function zipOf(quick) {
  const { page } = quick;
  await quick.practice();
  await quick.goTo("Photo: jack stand");
  const buffer = await page.screenshot({ type: "jpeg" });
  await quick.goOn(() => page.getByLabel("Take a photo").setInputFiles({ name: "camera.jpg", mimeType: "image/jpeg", buffer }));
  await quick.report();
  const [download] = await Promise.all([page.waitForEvent("download"), quick.key("Export with photos").tap()]);
  return { name: "job.zip", mimeType: "application/zip", buffer: readFileSync(await download.path()) };
}

/** Another phone with the app on it. */
async function fresh({ browser, host, faults }, use) {
  const other = await browser.newContext(phone);
  try {
    const page = faults.watch(await other.newPage());
    await open(page, host.url);
    await use(new Quick(page));
  } finally {
    await other.close();
  }
}

/** Lets the time of the sweep pass until the pictures are these. */
async function sweeps(page, left) {
  await expect.poll(async () => {
    await page.clock.runFor(5_000);
    return pictures(page);
  }).toEqual(left);
}

test("the sweep waits for a start at which no other tab takes a file", async ({ app, context, host, faults }) => {
  // The tab without our app asks for an icon that nobody gives it.
  faults.allow(/favicon\.ico/);
  await plantPicture(app, ORPHAN);
  // A tab of the same origin without our app: what it has is the lock alone.
  const other = await context.newPage();
  await other.goto(new URL("backup.js", host.url).href);
  await other.evaluate(() => new Promise((held) => {
    navigator.locks.request("hubslate:files", { mode: "shared" }, () => new Promise((release) => {
      globalThis.release = release;
      held();
    }));
  }));
  await app.clock.install();
  await app.reload();
  await ready(app);
  for (let passed = 0; passed < 12; passed += 1) {
    await app.clock.runFor(5_000);
    expect(await pictures(app)).toEqual([ORPHAN]);
  }
  await other.evaluate(() => globalThis.release());
  await app.reload();
  await ready(app);
  await sweeps(app, []);
});

test("without locks between tabs the sweep still comes", async ({ page, host, faults: _ }) => {
  await page.addInitScript(() => {
    Object.defineProperty(Navigator.prototype, "locks", { value: undefined });
  });
  await open(page, host.url);
  await plantPicture(page, ORPHAN);
  await page.clock.install();
  await page.reload();
  await ready(page);
  await sweeps(page, []);
});

test("the pictures of a file are written under the lock, which is given back", async ({ app, host, browser, faults }) => {
  const zip = await zipOf(new Quick(app));
  await fresh({ browser, host, faults }, async (there) => {
    await there.page.evaluate(() => {
      globalThis.locks = [];
      const { put } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.put = function (...given) {
        if (this.name === "photos") globalThis.locks.push(navigator.locks.query());
        return put.apply(this, given);
      };
    });
    await there.take([zip]);
    const ours = ({ held }) => held.filter(({ name }) => name === "hubslate:files").map(({ mode }) => mode);
    const then = await there.page.evaluate(() => Promise.all(globalThis.locks));
    expect(then.map(ours)).toEqual([["shared"]]);
    await expect.poll(async () => ours(await there.page.evaluate(() => navigator.locks.query()))).toEqual([]);
  });
});

test("where the entries of a zip find no room, none of its pictures stays", async ({ app, host, browser, faults }) => {
  const zip = await zipOf(new Quick(app));
  await fresh({ browser, host, faults }, async (there) => {
    const { page } = there;
    const before = await journal(page);
    await page.evaluate(() => {
      const { add } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.add = function (...given) {
        if (this.name === "entries" && !globalThis.room) throw new DOMException("full", "QuotaExceededError");
        return add.apply(this, given);
      };
    });
    const refused = await there.take([zip]);
    await expect(refused).toContainText("The file could not be saved: no room. Nothing was changed.");
    expect(await pictures(page)).toEqual([]);
    expect(await journal(page)).toEqual(before);

    await page.evaluate(() => { globalThis.room = true; });
    const taken = await there.take([zip]);
    await expect(taken).toContainText("1 photo or voice note came with it.");
    expect(await pictures(page)).toHaveLength(1);
  });
});

test("where the journal is denied a file is refused and nothing of it is on the screen", async ({ app, host, browser, faults }) => {
  const zip = await zipOf(new Quick(app));
  const other = await browser.newContext(phone);
  try {
    const page = faults.watch(await other.newPage());
    await page.addInitScript(() => {
      Object.defineProperty(window, "indexedDB", { get: () => { throw new DOMException("denied", "SecurityError"); } });
    });
    await open(page, host.url);
    const there = new Quick(page);
    const refused = await there.take([zip]);
    await expect(refused).toContainText("The file cannot be saved in this browser. Nothing was changed.");
    await page.evaluate(() => { location.hash = "#/"; });
    await expect(there.main).toContainText("No job yet.");
  } finally {
    await other.close();
  }
});

test("a file that makes a job of this phone read safer asks before it is taken", async ({ app }) => {
  test.setTimeout(60_000);
  const quick = new Quick(app);
  const opened = before(sampleEntries("replaced-hub"), (what) => what.answered?.step.startsWith("caliper_up"));
  await quick.open(fileOf(opened));
  await quick.isAt("Measure: Caliper up");
  await quick.step();
  const hash = await app.evaluate(() => location.hash);
  const entries = (await journal(app)).map(({ text }) => JSON.parse(text)).filter(({ log }) => hash.includes(log));
  const last = entries.at(-1);
  const { moved } = entries.find(({ what }) => what.moved).what;
  // An id of its own: the last digits are the place within a tap.
  const id = `${last.id.slice(0, 24)}${last.id[24] === "0" ? "1" : "0"}${last.id.slice(25)}`;
  const tight = { ...last, id, device: "dddd0001", n: 1, after: [last.id], what: { moved: { ...moved, to: "done" } } };
  const row = await quick.take([file("job.json", fileOf([...entries, tight]))]);
  await expect(row).toContainText("Nothing was changed yet. Look at the car first.");
  await expect(row).toContainText(/KLM 4821: \d+ loose here, \d+ with this file\./);
  expect((await journal(app)).filter(({ id: kept }) => kept === id)).toEqual([]);
  await row.getByRole("button", { name: "I checked: import it" }).tap();
  await expect.poll(async () => (await journal(app)).some(({ id: kept }) => kept === id)).toBe(true);
});
