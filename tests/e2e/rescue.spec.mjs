// What the crash panel saves comes into a fresh app as what it was, and what is broken is named.
import { test, expect, open } from "./support/fixtures.mjs";
import { asides, journal } from "./support/journal.mjs";
import { sampleEntries, verified } from "./support/jobs.mjs";
import { phone } from "./support/phone.mjs";
import { Quick, file } from "./pages/quick.mjs";

const NO_NEWS = "Everything in this file was here already.";
const RESCUE = "From a rescue file. Photos, settings and unfinished input do not come with it.";

/** A browser in which our program does not start, wherever it comes from. */
function breakProgram() {
  const broken = () => Promise.reject(new Error("the program is broken"));
  WebAssembly.instantiate = broken;
  WebAssembly.instantiateStreaming = broken;
}

/** The app stops at its next start; gives what its panel saves, looked at by the command. */
async function rescued(page, faults) {
  faults.allow(/the program is broken/);
  await page.addInitScript(breakProgram);
  await page.reload();
  const panel = page.getByRole("alertdialog", { name: "Hubslate has stopped" });
  await expect(panel).toBeVisible();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    panel.getByRole("button", { name: "Save all my data to a file" }).tap(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^hubslate-rescue-\d{4}-\d\d-\d\d\.json$/);
  return verified(await download.path());
}

test("a job of a stopped app goes on at the same step in a fresh one", async ({ app, host, browser, faults }) => {
  const here = new Quick(app);
  await here.practice();
  await here.walk("Road test: Pre-drive check");
  const records = await journal(app);
  const saved = await rescued(app, faults);
  expect(JSON.parse(saved).entries).toEqual(records);
  expect(JSON.parse(saved).problems).toEqual([]);

  const other = await browser.newContext(phone);
  try {
    const page = faults.watch(await other.newPage());
    await open(page, host.url);
    const there = new Quick(page);
    const first = await there.take([file("rescue.json", saved)]);
    await expect(first).toContainText(RESCUE);
    const came = await journal(page);
    expect(came).toEqual(expect.arrayContaining(records));

    const second = await there.take([file("rescue.json", saved)]);
    await expect(second).toContainText(NO_NEWS);
    expect(await journal(page)).toEqual(came);

    await second.getByRole("link", { name: "Open the job" }).tap();
    await there.way("Resume").tap();
    await there.isAt("Road test: Pre-drive check");
    await there.walk("Road test: Rises with speed");
  } finally {
    await other.close();
  }
});

test("the second copy alone brings an open job back", async ({ app, host, browser, faults }) => {
  const here = new Quick(app);
  await here.practice();
  await here.walk("Check-in: Odometer");
  const saved = JSON.parse(await rescued(app, faults));
  // Only jobs have names without a colon.
  const { log } = saved.entries.find((record) => !record.log.includes(":"));
  const records = saved.entries.filter((record) => record.log === log);
  expect(records.length).toBeGreaterThan(1);

  const other = await browser.newContext(phone);
  try {
    const page = faults.watch(await other.newPage());
    await open(page, host.url);
    const there = new Quick(page);
    await there.take([file("rescue.json", JSON.stringify({ ...saved, entries: null }))]);
    expect((await journal(page)).filter((record) => record.log === log)).toEqual(records);
  } finally {
    await other.close();
  }
});

test("what cannot be read in a rescue file is named, set aside once, and the rest comes in", async ({ app }) => {
  const quick = new Quick(app);
  const records = sampleEntries("nothing-wrong").map((entry) => ({ log: entry.log, id: entry.id, text: JSON.stringify(entry) }));
  const broken = { ...records[0], id: "019c0000-0000-7000-8000-00000000dead", text: '{"v":1,"id":"cut' };
  const rescue = {
    format: "hubslate-rescue", version: 1, saved_at: "2026-02-15T10:00:00.000Z",
    entries: [...records, broken], aside: [], local: {}, backup: [], problems: ["second copy: SecurityError"],
  };
  for (const _ of [1, 2]) {
    const outcome = await quick.take([file("rescue.json", JSON.stringify(rescue))]);
    await expect(outcome).toContainText(RESCUE);
    await expect(outcome).toContainText(`entries ${records.length + 1} cannot be read`);
    await expect(outcome).toContainText("second copy: SecurityError");
    await expect(outcome).toContainText("1 record could not be read: set aside, nothing deleted");
  }
  expect((await asides(app)).map(({ text }) => text)).toEqual([broken.text]);
  const here = (await journal(app)).filter(({ log }) => log === records[0].log);
  expect(here).toEqual([...records].sort((a, b) => (a.id < b.id ? -1 : 1)));
});
