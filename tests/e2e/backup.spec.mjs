// What the browser loses is found again in the backup journal, or is said to be lost: nothing is
// shown safer than it is.
import { setTimeout as pause } from "node:timers/promises";
import { test, expect, open, ready } from "./support/fixtures.mjs";
import { journal } from "./support/journal.mjs";
import { sampleText } from "./support/jobs.mjs";
import { again, exported, phone } from "./support/revived.mjs";
import { allow, fillJournal } from "./support/quota.mjs";
import { Quick, file } from "./pages/quick.mjs";

const BACK = "What the backup file had is back.";
const MISSING = "Entries of this job are missing";
const WRITTEN_BACK = "Open jobs were saved again";

/** The kills of the short form; `HUBSLATE_KILLS` asks for more. */
const KILLS = Number(process.env.HUBSLATE_KILLS ?? 30);
/** The same of power cuts, `HUBSLATE_CUTS`. */
const CUTS = Number(process.env.HUBSLATE_CUTS ?? 3);

/** The loose list's number, as the strip says it. */
const loose = (page) => page.getByRole("link", { name: /loose$/ });

/** The text of the backup file that counts. */
function backup(page) {
  return page.evaluate(async () => {
    const root = await navigator.storage.getDirectory();
    const texts = [];
    for (const name of ["backup-1", "backup-2"]) texts.push(await (await (await root.getFileHandle(name)).getFile()).text());
    return texts.sort().at(-1);
  });
}

const deleteDatabase = (page) => page.evaluate(() => new Promise((done, failed) => {
  const deleting = indexedDB.deleteDatabase("hubslate");
  deleting.onsuccess = done;
  deleting.onerror = failed;
}));

test("a database that the browser lost comes back whole from the backup journal, and that is said", async ({ host }) => {
  test.setTimeout(120_000);
  await phone(host, async ({ profile, page }) => {
    let quick = new Quick(page);
    await quick.practice();
    await quick.walk("Measure: Clean for the dial");
    await expect(loose(page)).toHaveText(/^[1-9]/);
    const count = await loose(page).textContent();
    const before = await exported(page, quick);
    await profile.kill();
    await profile.loseDatabases();

    const revived = await again(profile, host);
    quick = new Quick(revived);
    await expect(quick.alert(BACK)).toBeVisible();
    await expect(quick.main.locator(".job__loose")).toContainText(count.match(/\d+/)[0]);
    await revived.getByRole("listitem").getByRole("link").first().tap();
    await quick.isAt("Measure: Clean for the dial");
    await expect(loose(revived)).toHaveText(count);
    expect(await exported(revived, quick)).toEqual(before);
    // It is in the database again: at the next start there is nothing to bring back.
    await profile.kill();
    const third = await again(profile, host);
    await expect(new Quick(third).main.locator(".job__loose")).toBeVisible();
    await expect(new Quick(third).alert(BACK)).toHaveCount(0);
  });
});

test("a tap that only the database has is in the backup journal before it is shown again", async ({ host }) => {
  await phone(host, async ({ profile, page }) => {
    const quick = new Quick(page);
    await quick.practice();
    await quick.walk("Check-in: The right car");
    await profile.kill();
    await profile.shortenBackup();

    const revived = await again(profile, host);
    await expect(revived.getByRole("listitem")).toHaveCount(1);
    await profile.kill();
    await profile.loseDatabases();

    const third = await again(profile, host);
    await third.getByRole("listitem").getByRole("link").first().tap();
    await new Quick(third).isAt("Check-in: The right car");
    await expect(new Quick(third).alert(MISSING)).toHaveCount(0);
  });
});

test("with database and settings lost a phone is the same device, and no number is used twice", async ({ host }) => {
  await phone(host, async ({ profile, page }) => {
    const quick = new Quick(page);
    await quick.practice();
    await quick.walk("Check-in: The right car");
    await profile.kill();
    await profile.loseDatabases();
    await profile.loseLocal();
    const revived = await again(profile, host);
    await revived.getByRole("listitem").getByRole("link").first().tap();
    await new Quick(revived).walk("Check-in: Odometer");
    const named = await revived.evaluate(() => localStorage.getItem("hubslate:setting:device"));
    expect(named, "it is set again").toBeTruthy();
    const kept = (await journal(revived)).map(({ text }) => JSON.parse(text));
    expect(new Set(kept.map(({ device }) => device)).size, "one device").toBe(1);
    expect(new Set(kept.map(({ n }) => n)).size, "each number once").toBe(kept.length);
  });
});

test("an ended job that the browser lost is said to be lost, until somebody knows", async ({ app }) => {
  const quick = new Quick(app);
  await quick.take([file("job.json", sampleText("nothing-wrong"))]);
  await expect.poll(() => backup(app), { timeout: 20_000 }).toMatch(/"held":\[\["/);
  await app.evaluate(() => { location.hash = "#/"; });
  await deleteDatabase(app);
  await app.reload();
  await ready(app);
  await expect(quick.alert("cannot be found: the browser lost the data")).toBeVisible();
  await quick.key("I know. Do not show it again").tap();
  await expect(quick.alert("cannot be found")).toHaveCount(0);
  await app.reload();
  await ready(app);
  await expect(quick.main).toContainText("No job yet.");
  await expect(quick.alert("cannot be found")).toHaveCount(0);
});

test("data that is thrown away under the open app is written back, and no tap is lost", async ({ app }) => {
  test.setTimeout(60_000);
  const quick = new Quick(app);
  await quick.practice();
  await quick.walk("Check-in: Odometer");
  const before = await journal(app);
  await deleteDatabase(app);
  await expect(quick.alert(WRITTEN_BACK)).toBeVisible();
  await expect(quick.main).not.toContainText("Load this one again");
  await expect.poll(() => journal(app)).toEqual(before);
  await quick.isAt("Check-in: Odometer");
  await quick.step();
  await quick.isAt("Check-in: Warning lights");
  await expect(quick.main.getByRole("status").filter({ hasText: /^Saved/ })).toHaveText("Saved");
  await app.reload();
  await ready(app);
  await quick.isAt("Check-in: Warning lights");
});

test("where neither place is whole, nothing reads as not loose", async ({ host }) => {
  test.setTimeout(120_000);
  await phone(host, async ({ profile, page }) => {
    const quick = new Quick(page);
    await quick.practice();
    // The last tap took the wheel off: of this line the disk gives other bytes.
    await quick.walk("Measure: Caliper up");
    await expect(loose(page)).toHaveText(/^6\s*loose/);
    await profile.kill();
    await profile.loseDatabases();
    await profile.loseLocal();
    await profile.hurtBackup("wheel_off@front_left", "wheel_on__front_left");

    for (const _ of [1, 2]) {
      const revived = await again(profile, host);
      const now = new Quick(revived);
      await expect(now.main.locator(".job__loose")).toHaveText(/Unknown what is loose|At least \d+ loose/);
      await revived.getByRole("listitem").getByRole("link").first().tap();
      await expect(now.main.getByRole("alert").filter({ hasText: MISSING })).toBeVisible();
      await expect(loose(revived)).toHaveText(/^(\?|\d+\+)/);
      await loose(revived).tap();
      await expect(now.main).not.toContainText("Nothing is loose");
      await profile.kill();
    }
  });
});

test("a backup file that found no room is whole again after the next start", async ({ page, host, faults: _ }) => {
  await page.goto("about:blank");
  await allow(page, host.url, 1_000_000);
  await open(page, host.url);
  const quick = new Quick(page);
  await quick.practice();
  await fillJournal(page);
  const before = await backup(page);
  await quick.walk("Check-in: The right car");
  // Neither the journal nor the backup file had room for it, and not for half of it either.
  expect(await backup(page)).toBe(before);
  expect(before).not.toContain("site_look");
  await expect(quick.main.getByText("Saved, not yet secure")).toBeVisible();

  await allow(page, host.url, 0);
  await page.clock.install();
  await page.reload();
  await ready(page);
  await quick.isAt("Check-in: The right car");
  await page.clock.runFor(5_000);
  await expect.poll(() => backup(page)).toContain("site_look");
});

/** Taps on its own as fast as taps are kept: an answer, and taken back; tells how many were kept. */
function tapper(page) {
  return page.evaluate(() => {
    const key = (name) => [...document.querySelectorAll("button.key")].find((it) => name.test(it.textContent.trim()));
    const label = () => document.querySelector("main").getAttribute("aria-label");
    const until = async (holds) => { while (!holds()) await new Promise((next) => setTimeout(next, 5)); };
    globalThis.tapping = (async () => {
      for (;;) {
        const there = label();
        const next = () => key(there.startsWith("Site") ? /^Yes to all/ : /^Undo$/);
        await until(() => next() && !next().disabled && !next().closest("fieldset")?.disabled);
        next().click();
        await until(() => label() !== there);
        // Only what reads as saved, and not "not yet secure", must be there after the end.
        const kept = () => document.querySelector(".strip__kept")?.textContent;
        await until(() => /^(Saved|Not saved)/.test(kept()));
        if (kept() === "Saved") await globalThis.acknowledged();
      }
    })();
  });
}

/** Ends the browser so many times at random moments; no tap is lost and no number used twice. */
async function ends(host, { profile, page: first }, times, end) {
  let page = first;
  let [must, all] = [(await journal(page)).length, 0];
  for (let time = 1; time <= times; time += 1) {
    let acknowledged = 0;
    await page.exposeFunction("acknowledged", () => { acknowledged += 1; });
    await tapper(page);
    await pause(300 + Math.random() * 900);
    await end();
    must += acknowledged;
    all += acknowledged;
    page = await again(profile, host);
    await page.getByRole("listitem").getByRole("link").first().tap();
    await expect(page.getByRole("main")).toHaveAttribute("aria-label", /^(Site|Check-in): /);
    await expect(new Quick(page).alert(MISSING)).toHaveCount(0);
    const kept = (await journal(page)).map(({ text }) => JSON.parse(text));
    expect(kept.length, `after end ${time}`).toBeGreaterThanOrEqual(must);
    const numbers = kept.map(({ device, n }) => `${device} ${n}`);
    expect(new Set(numbers).size, "each number once").toBe(numbers.length);
    expect(new Set(kept.map(({ device }) => device)).size, "one device").toBe(1);
    must = kept.length;
  }
  expect(all, "taps that read as saved").toBeGreaterThan(0);
  return page;
}

test(`killed ${KILLS} times on one phone at random moments, no tap that read as kept is lost and no number is used twice`, async ({ host }) => {
  test.setTimeout(60_000 + KILLS * 10_000);
  await phone(host, async ({ profile, page: first }) => {
    await new Quick(first).practice();
    await ends(host, { profile, page: first }, KILLS, () => profile.kill());
  });
});

test(`${CUTS} power cuts on one phone, of whose disk only what was flushed is left, lose no tap that read as kept`, async ({ host }) => {
  test.setTimeout(60_000 + CUTS * 15_000);
  await phone(host, async ({ profile, page: first }) => {
    await new Quick(first).practice();
    await profile.forgetting();
    const page = await again(profile, host);
    await page.getByRole("listitem").getByRole("link").first().tap();
    await expect(page.getByRole("main")).toHaveAttribute("aria-label", /^(Site|Check-in): /);
    let forgotten = 0;
    await ends(host, { profile, page }, CUTS, async () => { forgotten += await profile.cut(); });
    expect(forgotten, "the disk forgets").toBeGreaterThan(0);
  });
});
