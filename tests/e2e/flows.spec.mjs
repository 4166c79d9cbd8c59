// A day goes out to a van and comes back: order, settings, what is new, the receipt, and an owner
// who is let go of.
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { test, expect, open } from "./support/fixtures.mjs";
import { journal } from "./support/journal.mjs";
import { verified } from "./support/jobs.mjs";
import { phone } from "./support/phone.mjs";
import { Pack } from "./pages/pack.mjs";
import { symbolsRead } from "./support/rendered.mjs";
import { Quick, file } from "./pages/quick.mjs";

// Invented people and plates.
const LATE = { name: "Ada Nobody", plate: "PRC 001", said: "It hums at speed, front left." };
const EARLY = { name: "Ben Nowhere", plate: "PRC 002", said: "A knock over bumps." };

class Desk extends Quick {
  async go(hash) {
    await this.page.evaluate((to) => { location.hash = to; }, hash);
  }

  /** Begins a job at home with what the owner wrote. */
  async book({ name, plate, said }) {
    await this.go("#/");
    const pack = new Pack(this.page);
    await pack.begin();
    await pack.paste(`Name: ${name}\nPlate: ${plate}\n${said}`);
  }

  /** Taps what makes a file; gives its name and text. */
  async made(tap) {
    const [download] = await Promise.all([this.page.waitForEvent("download"), tap()]);
    const path = await download.path();
    return { name: download.suggestedFilename(), text: readFileSync(path, "utf8"), path };
  }

  async closeDay() {
    await this.go("#/out");
    await expect(this.key("End-of-day file")).toBeEnabled();
    return this.made(() => this.key("End-of-day file").tap());
  }

  /** The rows of a list on home, from above. */
  rows(title) {
    const list = this.main.locator("section").filter({ has: this.page.getByRole("heading", { name: title }) });
    return list.getByRole("listitem");
  }
}

/** The entries of a file by id, of its jobs alone. */
const jobsOf = (text) => JSON.parse(text).logs.filter(({ kind }) => kind === "job");
const ids = (text) => jobsOf(text).flatMap(({ entries }) => entries.map(({ id }) => id));

async function aVan(browser, host, faults, work) {
  const context = await browser.newContext(phone);
  try {
    const page = faults.watch(await context.newPage());
    await open(page, host.url);
    await work(new Desk(page));
  } finally {
    await context.close();
  }
}

/** The yard books two jobs, sets what the shop wants, and packs the day of van N. */
async function packed(yard) {
  await yard.book(LATE);
  await yard.book(EARLY);
  await yard.go("#/settings");
  await yard.page.locator("#tax_percent").fill("8.25");
  await yard.go("#/shop");
  await yard.page.getByLabel(/^An hour of labor/).fill("95");
  await yard.page.getByLabel("Days before customer data is removed").fill("30");
  await yard.key("Save the shop's settings").tap();
  await yard.go("#/yard");
  await yard.way("Day file").tap();
  await expect(yard.key("Make the day file")).toBeDisabled();
  await expect(yard.main.getByText("Choose a job first.")).toBeVisible();
  await yard.page.getByLabel(/^Van/).fill("n");
  await yard.page.getByLabel(`Time: ${LATE.plate} · ${LATE.name}`).fill("14:00");
  await yard.page.getByLabel(`Time: ${EARLY.plate} · ${EARLY.name}`).fill("09:30");
  return yard.made(() => yard.key("Make the day file").tap());
}

/** Ends the open job where it stands: the place is not safe. */
async function notSafe(van) {
  await van.goTo("The ground");
  await van.goOn(() => van.key("Not safe here").tap());
  await van.endHere();
  await van.key(/^(Export and end|End the job here): Not safe here$/).tap();
  await expect(van.main).toContainText("The job has ended.");
}

test("a day goes out, is worked, comes back, and the receipt says what is in the yard", async ({ app, host, browser, faults }) => {
  test.slow();
  const yard = new Desk(app);
  const day = await packed(yard);
  expect(day.name).toMatch(/^hubslate-day-\d{4}-\d\d-\d\d-N\.json$/);
  verified(day.path);
  expect(JSON.parse(day.text).logs.map(({ kind }) => kind)).toEqual(["job", "job", "shop"]);

  await aVan(browser, host, faults, async (van) => {
    await van.take([file(day.name, day.text)]);
    const offer = van.main.locator("section.notice").filter({ hasText: "The shop's settings are other than those here:" });
    await expect(offer).toContainText("8.25");
    await expect(offer).toContainText("An hour of labor: not set → 95.00 USD");
    await van.key("Use the shop's settings").tap();
    await expect(van.main).toContainText("The shop's settings are in use.");
    await van.go("#/settings");
    await expect(van.page.locator("#tax_percent")).toHaveValue("8.25");

    await van.go("#/");
    const open = van.rows("Open jobs");
    await expect(open.first()).toContainText(EARLY.plate);
    await expect(open.first()).toContainText(/\d{4}-\d\d-\d\d · 09:30 · van N/);
    await expect(open.last()).toContainText(LATE.plate);
    await expect(van.main).not.toContainText("At the shop");

    // Pack shows what the yard wrote: the message is answered, the vehicle comes next.
    await open.first().getByRole("link").tap();
    await van.isAt("Prep: Vehicle");
    await expect(van.page.getByLabel("Plate", { exact: true })).toHaveValue(EARLY.plate);
    await notSafe(van);

    const first = await van.closeDay();
    verified(first.path);
    const outcome = await yard.take([file(first.name, first.text)]);
    await expect(outcome).not.toContainText("0 of them new");
    const receipt = await yard.made(() => yard.key("At the shop: send confirmation").tap());
    expect(receipt.name).toMatch(/^hubslate-confirmation-/);

    await van.take([file(receipt.name, receipt.text)]);
    await expect(van.main).toContainText("Shop confirmation imported.");
    await van.go("#/");
    for (const { plate } of [EARLY, LATE]) {
      const row = van.main.getByRole("listitem").filter({ hasText: plate });
      await expect(row).toContainText("At the shop: yes");
    }
    await van.go("#/out");
    await expect(van.main).toContainText("Everything here is at the shop.");
    await expect(van.key("End-of-day file")).toBeDisabled();

    // One more tap on the other job: only that is new.
    await van.go("#/");
    await van.rows("Open jobs").first().getByRole("link").tap();
    await van.isAt("Prep: Vehicle");
    await van.page.getByLabel("Vehicle and years").fill("2016 compact (invented)");
    await van.goOn(() => van.key("Facts are right").tap());
    await van.go("#/");
    await expect(van.rows("Open jobs").first()).toContainText("At the shop: no");
    const second = await van.closeDay();
    expect(jobsOf(second.text)).toHaveLength(1);
    const known = new Set([...ids(first.text), ...ids(day.text)]);
    expect(ids(second.text).length).toBeGreaterThan(0);
    expect(ids(second.text).filter((id) => known.has(id))).toEqual([]);

    // The yard misses numbers of a file that it did not get, and names their holder.
    await van.go("#/");
    await van.rows("Open jobs").first().getByRole("link").tap();
    await van.isAt("Prep: Corners");
    await van.page.getByRole("button", { name: "Front left" }).tap();
    await van.goOn(() => van.key("These corners").tap());
    const third = await van.closeDay();
    const late = JSON.parse(third.text);
    for (const log of late.logs) log.entries = log.entries.filter(({ id }) => !ids(second.text).includes(id));
    expect(ids(JSON.stringify(late))).toHaveLength(1);
    await yard.take([file("late.json", sealed(late))]);
    await yard.go("#/yard");
    await expect(yard.rows("Entries not received").first()).toContainText(/entries \d+–\d+ missing/);
    await yard.take([file(second.name, second.text)]);

    // The answer goes from glass to glass, where no file can be sent.
    await yard.key("Show confirmation as codes").tap();
    const figures = yard.main.getByRole("figure");
    await expect(figures).not.toHaveCount(0);
    const codes = await symbolsRead(yard.page, figures);
    await van.go("#/import");
    const takes = async (text) => {
      await van.main.getByRole("textbox").fill(text);
      await van.key("Read the text").tap();
    };
    await takes(codes[0].replace(/"count":\d/, '"count":0'));
    await expect(van.main).toContainText(codes.length > 1 ? "2 of" : "its check differs");
    for (const code of codes) await takes(code);
    await expect(van.main).toContainText("Shop confirmation imported.");
    await van.go("#/");
    await expect(van.rows("Open jobs").first()).toContainText("At the shop: yes");

    await yard.go("#/yard");
    await expect(yard.main.getByRole("heading", { name: "Entries not received" })).toHaveCount(0);

    // Forty days later the owner of the ended job has left the van, and no file takes that along.
    await van.page.clock.setFixedTime(Date.now() + 40 * 86_400_000);
    await van.take([file(receipt.name, receipt.text)]);
    await van.go("#/");
    const left = van.main.getByRole("listitem").filter({ hasText: "Customer data removed here; the shop has the job" });
    await expect(left).toContainText("owner-");
    const kept = JSON.stringify(await journal(van.page));
    for (const word of [EARLY.name, EARLY.plate, EARLY.said]) expect(kept, word).not.toContain(word);
    expect(kept).toContain(LATE.name);
    await van.go("#/out");
    await van.key(/^owner-/).tap();
    const again = await van.made(() => van.key("Export the chosen jobs").tap());
    expect(again.text).not.toContain(EARLY.name);
    verified(again.path);
    await expect(await yard.take([file(again.name, again.text)])).toContainText("0 of them new");
    await yard.go("#/");
    await expect(yard.main).toContainText(EARLY.name);
  });
});

/** A file without digests of its own is not one; those of the first builds had the plain one only. */
function sealed(whole) {
  const sha = (text) => createHash("sha256").update(text).digest("hex");
  for (const log of whole.logs) {
    delete log.canonical;
    log.digest = sha(log.entries.map((entry) => sha(JSON.stringify(entry))).sort().join("\n"));
  }
  return JSON.stringify(whole);
}

test("an owner is erased with what names them, and an old file does not bring them back", async ({ app }) => {
  const yard = new Desk(app);
  await yard.book(LATE);
  await yard.go("#/out");
  const old = await yard.closeDay();
  expect(old.text).toContain(LATE.name);
  await yard.go("#/");
  await yard.rows("Open jobs").first().getByRole("link").tap();
  await yard.isAt("Prep: Vehicle");
  await yard.key("More").tap();
  await yard.way("All steps").tap();
  await yard.way("Erase the customer").tap();
  await expect(yard.main).toContainText(LATE.name);
  const complaint = yard.key(/^Complaint: /);
  await expect(complaint).toContainText("stays");
  await complaint.tap();
  await expect(complaint).toContainText("goes");
  await hold(yard, "Erase for good");
  await expect(yard.main).toContainText("Erased. The job is saved under another name:");
  const gone = async () => {
    const kept = JSON.stringify(await journal(app)) + await app.evaluate(() => JSON.stringify(localStorage));
    for (const word of [LATE.name, LATE.plate, LATE.said]) expect(kept, word).not.toContain(word);
  };
  await gone();
  const outcome = await yard.take([file("old.json", old.text)]);
  await expect(outcome).toContainText("0 of them new");
  await gone();
  await yard.go("#/");
  await expect(yard.rows("Open jobs").first()).toContainText("owner-");
  await expect(yard.main).not.toContainText(LATE.name);
});

async function hold(quick, name) {
  const key = quick.key(new RegExp(`^${name}`));
  await key.scrollIntoViewIfNeeded();
  const box = await key.boundingBox();
  const { mouse } = quick.page;
  await mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await mouse.down();
  await expect(quick.main).toContainText(/Erased\. |could not be erased/);
  await mouse.up();
}

test("the lines of an estimate are kept for the next one of that kind", async ({ app }) => {
  const yard = new Desk(app);
  const bill = () => app.evaluate(() => { location.hash = location.hash.replace(/^(#\/job\/[^/]+).*$/, "$1/bill"); });
  await yard.book(LATE);
  await bill();
  await yard.main.getByRole("group", { name: "Next line" }).getByRole("button", { name: "Labor" }).tap();
  await app.getByLabel("For", { exact: true }).fill("Hub bearing, one corner");
  await app.getByLabel(/^Price of one/).fill("180");
  await yard.key("Save the line").tap();
  await yard.key("Save these lines for the next estimates").tap();
  await expect(yard.key("Save these lines for the next estimates")).toHaveCount(0);
  await yard.book(EARLY);
  await bill();
  await yard.key("Begin with the shop's lines").tap();
  await expect(yard.main.getByRole("listitem").filter({ hasText: "Hub bearing, one corner" })).toContainText("180.00");
});
