// What the phone refuses to keep is said on every screen, and no tap reads as kept that is not.
import { readFileSync } from "node:fs";
import { test, expect, open, ready } from "./support/fixtures.mjs";
import { asides, journal, localKeys, pictures, plant, plantPicture } from "./support/journal.mjs";
import { before, fileOf, sampleEntries, sampleText } from "./support/jobs.mjs";
import { allow, fillJournal } from "./support/quota.mjs";
import { Quick, file } from "./pages/quick.mjs";

const NOTHING_KEPT = "This browser saves nothing. Export before you close it.";
const KEPT_LATE = "This browser saves taps late: a crash can lose the last minute. Export often.";
const ONLY_BACKUP = "The browser's database cannot be used: taps are in the backup file alone";
const FULL = "The phone's storage is full.";

function denyJournal() {
  Object.defineProperty(window, "indexedDB", { get: () => { throw new DOMException("denied", "SecurityError"); } });
}

function loseJournal() {
  Object.defineProperty(window, "indexedDB", { value: undefined });
}

function denyLocal() {
  Object.defineProperty(window, "localStorage", { get: () => { throw new DOMException("denied", "SecurityError"); } });
}

/** The backup journal is written by a worker. */
function denyBackup() {
  Object.defineProperty(window, "Worker", { value: undefined });
}

/** What the strip says of the last tap. */
const kept = (quick) => quick.main.getByRole("status").filter({ hasText: /^(Saved|Saving|Not saved)/ });

/** The banner stands on every screen that the open job and the app have. */
async function isSaidEverywhere(quick, sentence) {
  const { page } = quick;
  const job = await page.evaluate(() => location.hash.match(/^#\/job\/[^/]+/)[0]);
  const places = ["#/", "#/new", "#/import", "#/settings", "#/job/unknown", job,
    ...["where", "loose", "report", "notes", "teardown_yes", "end"].map((place) => `${job}/${place}`)];
  for (const place of places) {
    await page.evaluate((hash) => { location.hash = hash; }, place);
    await expect(page.getByRole("alert").filter({ hasText: sentence }), place).toBeVisible();
  }
  await page.evaluate((hash) => { location.hash = hash; }, job);
}

for (const [what, deny, sentence] of [
  ["without a database every tap is in the backup journal", [denyJournal], ONLY_BACKUP],
  ["without a database and a backup journal every tap is in localStorage", [denyJournal, denyBackup], KEPT_LATE],
]) {
  test(`${what}, reads as kept but not yet safe, and the job is there again`, async ({ page, host, faults: _ }) => {
    for (const denied of deny) await page.addInitScript(denied);
    await open(page, host.url);
    const quick = new Quick(page);
    await quick.practice();
    await expect(kept(quick)).toHaveText("Saved, not yet secure");
    await quick.walk("Check-in: Odometer");
    await expect(kept(quick)).toHaveText("Saved, not yet secure");
    await isSaidEverywhere(quick, sentence);
    await page.reload();
    await ready(page);
    await quick.isAt("Check-in: Odometer");
    await expect(quick.alert(sentence)).toBeVisible();
  });
}

test("a browser without a journal at all is told like one that denies it", async ({ page, host, faults: _ }) => {
  await page.addInitScript(loseJournal);
  await open(page, host.url);
  const quick = new Quick(page);
  await quick.practice();
  await expect(kept(quick)).toHaveText("Saved, not yet secure");
  await expect(quick.alert(ONLY_BACKUP)).toBeVisible();
});

test("without any storage the work goes on in memory, and no tap reads as kept", async ({ page, host, faults: _ }) => {
  await page.addInitScript(denyJournal);
  await page.addInitScript(denyLocal);
  await page.addInitScript(denyBackup);
  await open(page, host.url);
  const quick = new Quick(page);
  await expect(quick.alert(NOTHING_KEPT)).toBeVisible();
  await quick.practice();
  await expect(kept(quick)).toHaveText("Not saved");
  await quick.walk("Check-in: Odometer");
  await expect(kept(quick)).toHaveText("Not saved");
  await isSaidEverywhere(quick, NOTHING_KEPT);

  await quick.isAt("Check-in: Odometer");
  await quick.key("Undo").tap();
  await quick.isAt("Check-in: The right car");

  await quick.report();
  const [download] = await Promise.all([page.waitForEvent("download"), quick.key("Export the job").tap()]);
  const { logs } = JSON.parse(readFileSync(await download.path(), "utf8"));
  expect(JSON.stringify(logs[0].entries)).toContain('"right_car"');
});

/** Opens the app on a phone that has one megabyte for it, with a practice job. */
async function smallPhone(page, url) {
  await page.goto("about:blank");
  await allow(page, url, 1_000_000);
  await open(page, url);
  const quick = new Quick(page);
  await quick.practice();
  await expect(kept(quick)).toHaveText("Saved");
  return quick;
}

/** Fills the second copy's place to the last character. */
function fillLocal(page) {
  return page.evaluate(() => {
    for (let size = 1 << 20, n = 0; size > 0;) {
      try {
        localStorage.setItem(`neighbour:${n}`, "x".repeat(size));
        n += 1;
      } catch {
        size = Math.floor(size / 2);
      }
    }
  });
}

test("a full journal reads as not yet safe, and is caught up with once there is room", async ({ page, host, faults: _ }) => {
  const quick = await smallPhone(page, host.url);
  await fillJournal(page);
  await quick.walk("Check-in: The right car");
  await expect(kept(quick)).toHaveText("Saved, not yet secure");
  await isSaidEverywhere(quick, FULL);
  const before = await journal(page);
  await allow(page, host.url, 0);
  await quick.walk("Check-in: Odometer");
  await expect(kept(quick)).toHaveText("Saved");
  await expect(quick.alert(FULL)).toHaveCount(0);
  // The taps of both steps: the one that did not fit is there now too.
  const steps = (await journal(page)).map(({ text }) => JSON.parse(text).what.answered?.step).filter(Boolean);
  expect(before.map(({ text }) => text).join()).not.toContain("site_look");
  expect(steps).toEqual(expect.arrayContaining(["site_look", "right_car"]));
});

test("where nothing takes a tap it reads as not kept and the step stays, until there is room", async ({ page, host, faults: _ }) => {
  await page.addInitScript(denyBackup);
  const quick = await smallPhone(page, host.url);
  await fillJournal(page);
  await fillLocal(page);
  await quick.key(/^Yes to all/).tap();
  await expect(kept(quick)).toHaveText("Not saved");
  await expect(quick.alert(FULL)).toBeVisible();
  await quick.isAt("Site: The ground");
  await isSaidEverywhere(quick, FULL);
  await quick.isAt("Site: The ground");
  await page.reload();
  await ready(page);
  await quick.isAt("Site: The ground");

  await allow(page, host.url, 0);
  await page.evaluate(() => {
    for (const key of Object.keys(localStorage)) if (key.startsWith("neighbour:")) localStorage.removeItem(key);
  });
  await quick.key(/^Yes to all/).tap();
  await quick.isAt("Check-in: The right car");
  await expect(kept(quick)).toHaveText("Saved");
});

test("a record that cannot be read is set aside and named, and the rest opens", async ({ app, host }) => {
  const quick = new Quick(app);
  await quick.take([file("job.json", sampleText("nothing-wrong"))]);
  const entries = sampleEntries("nothing-wrong");
  const broken = { log: entries[0].log, id: "019c0000-0000-7000-8000-00000000dead", text: '{"v":1,"id":"cut' };
  await plant(app, broken);
  for (const _ of [1, 2]) {
    await open(app, `${host.url}#/job/${broken.log}/where`);
    await app.reload();
    await ready(app);
    await expect(quick.alert("Something could not be read. It was set aside, not thrown away.")).toContainText(broken.id);
    await expect(quick.main.getByRole("link", { name: /^End of the job/ })).toContainText("Done");
  }
  expect((await asides(app)).map(({ text }) => text)).toEqual([broken.text]);
  expect((await journal(app)).filter(({ id }) => id === broken.id)).toEqual([broken]);
  await expect(await quick.report()).toContainText("We found nothing that must be repaired today.");
});

test("a practice job is thrown away by holding a key for a second, and is gone for good", async ({ app }) => {
  const quick = new Quick(app);
  await quick.practice();
  await app.evaluate(() => { location.hash = "#/"; });
  const job = quick.main.getByRole("link", { name: /PRC 001/ });
  await expect(job).toHaveCount(1);
  const away = quick.key(/^Delete it/);
  // A tap is not enough: the finger must rest on the key until its ring is full.
  await away.tap();
  await expect(job).toHaveCount(1);
  await away.scrollIntoViewIfNeeded();
  const { x, y, width, height } = await away.boundingBox();
  await app.mouse.move(x + width / 2, y + height / 2);
  const begun = Date.now();
  await app.mouse.down();
  await expect(job).toHaveCount(0);
  expect(Date.now() - begun).toBeGreaterThan(950);
  await app.mouse.up();
  await app.reload();
  await ready(app);
  await expect(quick.main).toContainText("No job yet.");
  expect(await journal(app)).toEqual([]);
  expect(await localKeys(app, "hubslate:entry:")).toEqual([]);
});

test("the second copy leaves when a job has ended and the journal has all of it", async ({ app }) => {
  const quick = new Quick(app);
  await quick.practice();
  expect((await localKeys(app, "hubslate:entry:")).length).toBeGreaterThan(0);
  await quick.walk("Hand over: Report and file", { "The ground": "Not safe here" });
  await quick.finish("Not safe here");
  await expect.poll(() => localKeys(app, "hubslate:entry:")).toEqual([]);
  await app.reload();
  await ready(app);
  await expect(quick.main).toContainText("Not safe here");
});

test("a picture whose entry never came is let go of, one that an entry names stays", async ({ app }) => {
  const quick = new Quick(app);
  await quick.practice();
  await quick.goTo("Photo: jack stand");
  const buffer = await app.screenshot({ type: "jpeg" });
  await quick.goOn(() => app.getByLabel("Take a photo").setInputFiles({ name: "camera.jpg", mimeType: "image/jpeg", buffer }));
  const [named] = await pictures(app);
  const orphan = "c".repeat(64);
  await plantPicture(app, orphan);
  expect(await pictures(app)).toHaveLength(2);
  await app.clock.install();
  await app.reload();
  await ready(app);
  await expect.poll(async () => {
    await app.clock.runFor(5_000);
    return pictures(app);
  }).toEqual([named]);
});

test("with entries missing nothing reads as not loose, and the job cannot end as finished", async ({ app }) => {
  const quick = new Quick(app);
  const all = sampleEntries("replaced-hub");
  // What took the wheel off and what put it back is gone: the rest knows of nothing loose.
  const wheel = ({ moved }) => moved?.items.some((item) => /wheel/.test(item.group));
  const rest = before(all, (what) => what.ended).filter(({ what }) => !wheel(what));
  await quick.open(fileOf(rest));
  await expect(quick.main.getByRole("alert").filter({ hasText: "Entries of this job are missing" })).toBeVisible();
  await expect(app.getByRole("link", { name: /loose$/ })).toHaveText(/^(\?|\d+\+)/);
  await app.getByRole("link", { name: /loose$/ }).tap();
  await expect(quick.main).toContainText("Entries of this job are missing");
  await expect(quick.main).not.toContainText("Nothing is loose");
  const report = await quick.report();
  await expect(report).toContainText(/RECORD INCOMPLETE|DO NOT DRIVE/);
  await app.evaluate(() => { location.hash = "#/"; });
  await expect(quick.main.locator(".job__loose")).toHaveText(/Unknown what is loose|At least \d+ loose/);
});

test("a job that a newer version wrote in says so, and its keys do not answer", async ({ app }) => {
  const quick = new Quick(app);
  const entries = before(sampleEntries("replaced-hub"), (what) => what.reading);
  const last = entries.at(-1);
  const id = last.id.replace(/.$/, (sign) => (sign === "0" ? "1" : "0"));
  await quick.open(fileOf([...entries, { ...last, id, n: last.n + 1, after: [last.id], what: { hologram: { shown: true } } }]));
  await expect(quick.main.getByRole("alert").filter({ hasText: "A newer version wrote a part of this job" })).toBeVisible();
  await expect(quick.main.locator("fieldset.step__keys")).toHaveJSProperty("disabled", true);
});

test("a line of the list that was not kept with its tap is made again", async ({ app, host }) => {
  const quick = new Quick(app);
  await quick.practice();
  const line = (lines) => app.evaluate((given) => new Promise((told, refused) => {
    const opening = indexedDB.open("hubslate");
    opening.onsuccess = () => {
      const database = opening.result;
      const store = database.transaction("summaries", "readwrite").objectStore("summaries");
      const asked = given ? store.put(given[0]) : store.getAll();
      asked.onsuccess = () => { database.close(); told(asked.result); };
      asked.onerror = () => refused(asked.error);
    };
  }), lines);
  const before = await line();
  expect(before.length).toBe(1);
  await quick.walk("Check-in: Odometer");
  await expect.poll(line).not.toEqual(before);
  await line(before);
  await app.goto(host.url);
  await app.reload();
  await ready(app);
  await expect(app.getByRole("listitem")).toContainText("Odometer");
});
