// A day goes out to a van and comes back: order, settings, what is new, the confirmation, and a customer
// who is let go of.
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { test, expect, open } from "./support/fixtures.mjs";
import { journal } from "./support/journal.mjs";
import { verified } from "./support/jobs.mjs";
import { phone } from "./support/phone.mjs";
import { Pack } from "./pages/pack.mjs";
import { symbolsRead } from "./support/rendered.mjs";
import { settings } from "./pages/settings.mjs";
import { Quick, file } from "./pages/quick.mjs";

// Invented people and plates.
const LATE = { name: "Ada Nobody", plate: "PRC 001", said: "It hums at speed, front left." };
const EARLY = { name: "Ben Nowhere", plate: "PRC 002", said: "A knock over bumps." };

class Desk extends Quick {
  async go(hash) {
    await this.page.evaluate((to) => { location.hash = to; }, hash);
  }

  /** Begins a job at home with what the customer wrote. */
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

/** The shop books two jobs, sets what the shop wants, and packs the day of van N. */
async function packed(shop) {
  await shop.book(LATE);
  await shop.book(EARLY);
  await settings(shop.page, "Prices and invoices");
  await shop.page.locator("#tax_percent").fill("8.25");
  await shop.go("#/shop");
  await shop.page.getByLabel(/^An hour of labor/).fill("95");
  await shop.page.getByLabel("Days before customer data is removed").fill("30");
  await shop.key("Save the shop's settings").tap();
  await shop.go("#/shop-lists");
  await shop.way("Day file").tap();
  await expect(shop.key("Make the day file")).toBeDisabled();
  await expect(shop.main.getByText("Choose a job first.")).toBeVisible();
  await shop.page.getByLabel(/^Van/).fill("n");
  await shop.page.getByLabel(`Time: ${LATE.plate} · ${LATE.name}`).fill("14:00");
  await shop.page.getByLabel(`Time: ${EARLY.plate} · ${EARLY.name}`).fill("09:30");
  return shop.made(() => shop.key("Make the day file").tap());
}

/** Ends the open job where it stands: the place is not safe. */
async function notSafe(van) {
  await van.goTo("The ground");
  await van.goOn(() => van.key("Not safe here").tap());
  await van.endHere();
  await van.key(/^(Export and end|End the job here): Not safe here$/).tap();
  await expect(van.main).toContainText("The job has ended.");
}

test("a day goes out, is worked, comes back, and the confirmation says what is in the shop", async ({ app, host, browser, faults }) => {
  test.slow();
  const shop = new Desk(app);
  const day = await packed(shop);
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
    const open = van.rows("Prepare");
    await expect(open.first()).toContainText(EARLY.plate);
    await expect(open.first()).toContainText(/\d{4}-\d\d-\d\d · 09:30 · van N/);
    await expect(open.last()).toContainText(LATE.plate);
    await expect(van.main).not.toContainText("At the shop");

    // Pack shows what the shop wrote: the message is answered, the vehicle comes next.
    await open.first().getByRole("link").tap();
    await van.isAt("Prep: Vehicle");
    await expect(van.page.getByLabel("Plate", { exact: true })).toHaveValue(EARLY.plate);
    await notSafe(van);

    const first = await van.closeDay();
    verified(first.path);
    const outcome = await shop.take([file(first.name, first.text)]);
    await expect(outcome).not.toContainText("0 of them new");
    const confirmation = await shop.made(() => shop.key("At the shop: send confirmation").tap());
    expect(confirmation.name).toMatch(/^hubslate-confirmation-/);

    await van.take([file(confirmation.name, confirmation.text)]);
    await expect(van.main).toContainText("Shop confirmation imported.");
    await van.go("#/");
    await van.ended();
    for (const { plate } of [EARLY, LATE]) {
      const row = van.main.getByRole("listitem").filter({ hasText: plate });
      await expect(row).toContainText("At the shop: yes");
    }
    await van.go("#/out");
    await expect(van.main).toContainText("Everything here is at the shop.");
    await expect(van.key("End-of-day file")).toBeDisabled();

    // One more tap on the other job: only that is new.
    await van.go("#/");
    await van.rows("Prepare").first().getByRole("link").tap();
    await van.isAt("Prep: Vehicle");
    await van.page.getByLabel("Vehicle and years").fill("2016 compact (invented)");
    await van.goOn(() => van.key("Facts are right").tap());
    await van.go("#/");
    await expect(van.rows("Prepare").first()).toContainText("At the shop: no");
    const second = await van.closeDay();
    expect(jobsOf(second.text)).toHaveLength(1);
    const known = new Set([...ids(first.text), ...ids(day.text)]);
    expect(ids(second.text).length).toBeGreaterThan(0);
    expect(ids(second.text).filter((id) => known.has(id))).toEqual([]);

    // The shop misses numbers of a file that it did not get, and names their holder.
    await van.go("#/");
    await van.rows("Prepare").first().getByRole("link").tap();
    await van.isAt("Prep: Corners");
    await van.page.getByRole("button", { name: "Front left" }).tap();
    await van.goOn(() => van.key("These corners").tap());
    const third = await van.closeDay();
    const late = JSON.parse(third.text);
    for (const log of late.logs) log.entries = log.entries.filter(({ id }) => !ids(second.text).includes(id));
    expect(ids(JSON.stringify(late))).toHaveLength(1);
    await shop.take([file("late.json", sealed(late))]);
    await shop.go("#/shop-lists");
    await expect(shop.rows("Entries not received").first()).toContainText(/entries \d+–\d+ missing/);
    await shop.take([file(second.name, second.text)]);

    // The answer goes from screen to screen, where no file can be sent.
    await shop.key("Show confirmation as codes").tap();
    const figures = shop.main.getByRole("figure");
    await expect(figures).not.toHaveCount(0);
    const codes = await symbolsRead(shop.page, figures);
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
    await expect(van.rows("Prepare").first()).toContainText("At the shop: yes");

    await shop.go("#/shop-lists");
    await expect(shop.main.getByRole("heading", { name: "Entries not received" })).toHaveCount(0);

    // Forty days later the customer of the ended job has left the van, and no file takes that along.
    await van.page.clock.setFixedTime(Date.now() + 40 * 86_400_000);
    await van.take([file(confirmation.name, confirmation.text)]);
    await van.go("#/");
    await van.ended();
    const left = van.main.getByRole("listitem").filter({ hasText: "Customer data removed here; the shop has the job" });
    await expect(left).toContainText("customer-");
    const kept = JSON.stringify(await journal(van.page));
    for (const word of [EARLY.name, EARLY.plate, EARLY.said]) expect(kept, word).not.toContain(word);
    expect(kept).toContain(LATE.name);
    await van.go("#/out");
    await van.key(/^customer-/).tap();
    const again = await van.made(() => van.key("Export the chosen jobs").tap());
    expect(again.text).not.toContain(EARLY.name);
    verified(again.path);
    await expect(await shop.take([file(again.name, again.text)])).toContainText("0 of them new");
    await shop.go("#/");
    await shop.ended();
    await expect(shop.main).toContainText(EARLY.name);
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

test("a customer is erased with what names them, and an old file does not bring them back", async ({ app }) => {
  const shop = new Desk(app);
  await shop.book(LATE);
  await shop.go("#/out");
  const old = await shop.closeDay();
  expect(old.text).toContain(LATE.name);
  await shop.go("#/");
  await shop.rows("Prepare").first().getByRole("link").tap();
  await shop.isAt("Prep: Vehicle");
  await shop.key("More").tap();
  await shop.way("All steps").tap();
  await shop.way("Erase the customer").tap();
  await expect(shop.main).toContainText(LATE.name);
  const complaint = shop.key(/^Complaint: /);
  await expect(complaint).toContainText("stays");
  await complaint.tap();
  await expect(complaint).toContainText("goes");
  await hold(shop, "Erase for good");
  await expect(shop.main).toContainText("Erased. The job is saved under another name:");
  const gone = async () => {
    const kept = JSON.stringify(await journal(app)) + await app.evaluate(() => JSON.stringify(localStorage));
    for (const word of [LATE.name, LATE.plate, LATE.said]) expect(kept, word).not.toContain(word);
  };
  await gone();
  const outcome = await shop.take([file("old.json", old.text)]);
  await expect(outcome).toContainText("0 of them new");
  await gone();
  await shop.go("#/");
  await expect(shop.rows("Prepare").first()).toContainText("customer-");
  await expect(shop.main).not.toContainText(LATE.name);
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
  const shop = new Desk(app);
  const bill = () => app.evaluate(() => { location.hash = location.hash.replace(/^(#\/job\/[^/]+).*$/, "$1/bill"); });
  await shop.book(LATE);
  await bill();
  await shop.main.getByRole("group", { name: "Next line" }).getByRole("button", { name: "Labor" }).tap();
  await app.getByLabel("For", { exact: true }).fill("Hub bearing, one corner");
  await app.getByLabel(/^Price of one/).fill("180");
  await shop.key("Save the line").tap();
  await shop.key("Save these lines for the next estimates").tap();
  await expect(shop.key("Save these lines for the next estimates")).toHaveCount(0);
  await shop.book(EARLY);
  await bill();
  await shop.key("Begin with the shop's lines").tap();
  await expect(shop.main.getByRole("listitem").filter({ hasText: "Hub bearing, one corner" })).toContainText("180.00");
});
