// The shop of several vans: a short home, the job list, the day board, the customer with all visits,
// and what the vans are warned of and told.
import { readFileSync } from "node:fs";
import { test, expect, open } from "./support/fixtures.mjs";
import { serious } from "./support/audit.mjs";
import { sampleEntries, sampleText } from "./support/jobs.mjs";
import { journal } from "./support/journal.mjs";
import { phone } from "./support/phone.mjs";
import { Pack } from "./pages/pack.mjs";
import { settings } from "./pages/settings.mjs";
import { Quick, file } from "./pages/quick.mjs";

// Invented people and plates.
const ADA = { name: "Ada Nobody", plate: "PRC 001", said: "It hums at speed, says Nobody." };
const ADA_AGAIN = { name: "Ada Nobody", plate: "PRC 009", said: "A knock over bumps." };
const BEN = { name: "Ben Nowhere", plate: "PRC 002", said: "A knock over bumps." };

const SAMPLES = ["replaced-hub", "declined-stop", "nothing-wrong"];

class Shop extends Quick {
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
    return { name: download.suggestedFilename(), text: readFileSync(await download.path(), "utf8") };
  }

  /** A list by its heading. */
  list(title) {
    return this.main.locator("section").filter({ has: this.page.getByRole("heading", { name: title }) });
  }

  /** From a job's place to another place of the same job. */
  async place(name) {
    await this.page.evaluate((to) => { location.hash = location.hash.replace(/^(#\/job\/[^/]+).*$/, `$1/${to}`); }, name);
  }

  /** The day file of a van with one job at a time. */
  async dayFile(van, { plate, name }, time) {
    await this.go("#/day");
    await this.page.getByLabel(/^Van/).fill(van);
    await this.page.getByLabel(`Time: ${plate} · ${name}`).fill(time);
    return this.made(() => this.key("Make the day file").tap());
  }
}

/** Puts so many jobs into the database, each with the line of one of the samples and one entry. */
async function plant(page, count) {
  await page.evaluate(async (most) => {
    const answered = (request) => new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const database = await answered(indexedDB.open("hubslate"));
    const known = await answered(database.transaction("summaries").objectStore("summaries").getAll());
    const entries = await Promise.all(known.map(async ({ log }) => {
      const range = IDBKeyRange.bound([log], [log, []]);
      return (await answered(database.transaction("entries").objectStore("entries").getAll(range, 1)))[0];
    }));
    const writing = database.transaction(["entries", "summaries"], "readwrite");
    for (let number = 1; number <= most; number += 1) {
      const at = number % known.length;
      const job = known[at].log.replace(/-7[0-9a-f]{3}-/, `-7${number.toString(16).padStart(3, "0")}-`);
      const renewed = (text) => text.replaceAll(known[at].log, job);
      const text = renewed(known[at].text).replace(/"ending":"[^"]*"/, number % 3 === 0 ? '"ending":""' : "$&");
      writing.objectStore("summaries").put({ log: job, text });
      writing.objectStore("entries").put({ log: job, id: entries[at].id, text: renewed(entries[at].text) });
    }
    await new Promise((resolve, reject) => {
      writing.oncomplete = resolve;
      writing.onabort = () => reject(writing.error);
    });
    database.close();
  }, count);
}

test("home with 2,000 jobs draws a bounded number of rows, and the way to the shop stands above them", async ({ app }) => {
  test.slow();
  const shop = new Shop(app);
  await shop.take(SAMPLES.map((name) => file(`${name}.json`, sampleText(name))));
  await plant(app, 2_000);
  await shop.go("#/");
  await app.reload();
  const rows = shop.main.locator("section.jobs li");
  const more = shop.main.getByRole("button", { name: /^and \d+ more$/ });
  await expect(more.first()).toBeVisible();
  await expect(shop.main.locator(".loading")).toHaveCount(0);
  // Seven lists of ten at most.
  expect(await rows.count()).toBeLessThanOrEqual(70);
  const way = shop.way("Shop");
  await expect(way).toBeVisible();
  const [wayBox, rowBox] = [await way.boundingBox(), await rows.first().boundingBox()];
  expect(wayBox.y).toBeLessThan(rowBox.y);
  expect(await app.evaluate(() => document.documentElement.scrollHeight)).toBeLessThan(12_000);
  const shown = await rows.count();
  await more.first().tap();
  await expect(rows).toHaveCount(shown + 10);
  await shop.ended();
  expect(await rows.count()).toBeLessThanOrEqual(80);
});

test("the job list keeps to its days, adds up, and is saved as a table", async ({ app }) => {
  const shop = new Shop(app);
  await shop.take(SAMPLES.map((name) => file(`${name}.json`, sampleText(name))));
  await shop.go("#/shop-lists");
  await shop.way("Job list").tap();
  await expect(shop.main).toContainText("No job matches these choices.");
  await app.getByLabel("From day").fill("2020-01-01");
  const jobs = shop.main.locator("table.job-list__table tbody tr");
  await expect(jobs).toHaveCount(3);
  // 486.00 of the repair, 110.00 and 95.00 of two inspections, as the records were signed.
  await expect(shop.main.locator("table.job-list__sums tbody tr")).toContainText("691.00 USD");
  await shop.key("Declined").tap();
  await expect(jobs).toHaveCount(1);
  const plate = (name) => sampleEntries(name).map(({ what }) => what.person).find((it) => it?.field === "plate").text;
  await expect(jobs).toContainText(plate("declined-stop"));
  await shop.main.getByRole("group", { name: "Show" }).getByRole("button", { name: "All" }).tap();
  const table = await shop.made(() => shop.key("Save as table (CSV)").tap());
  expect(table.name).toMatch(/^hubslate-jobs-\d{4}-\d\d-\d\d\.csv$/);
  const lines = table.text.replace(/^\ufeff/, "").trimEnd().split("\r\n");
  expect(lines).toHaveLength(4);
  expect(lines[0].startsWith("day,time,van,plate,customer,")).toBe(true);
  expect(lines.some((line) => line.includes(plate("replaced-hub")) && line.includes(",486.00,"))).toBe(true);
  const books = await shop.made(() => shop.key("Accountant's table (CSV)").tap());
  expect(books.text).toContain("kind,number,corrects,date,seller");
  expect(await serious(app)).toEqual([]);
  await app.emulateMedia({ media: "print" });
  for (const name of ["Print", "Save as table (CSV)"]) await expect(shop.key(name)).toBeHidden();
  await expect(jobs.first()).toBeVisible();
});

test("a day board has the vans by the hour, and a job moves to another van", async ({ app }) => {
  const shop = new Shop(app);
  await shop.book(ADA);
  await shop.book(BEN);
  await shop.dayFile("n", ADA, "14:00");
  // What became of the file is said once, and the choice is cleared.
  await expect(shop.main).toContainText(/Saved as hubslate-day-\d{4}-\d\d-\d\d-N\.json\. Now send it\./);
  await expect(shop.key("Make the day file")).toBeDisabled();
  await shop.go("#/shop-lists");
  await expect(shop.main).not.toContainText("Now send it");
  await shop.way("Day board").tap();
  const row = shop.list("Van N (1)").getByRole("listitem");
  await expect(row).toContainText(ADA.plate);
  await expect(row).toContainText("14:00");
  await row.getByText("Move", { exact: true }).tap();
  await row.getByLabel("Time, empty for any").fill("23:59");
  await row.getByLabel(/^Van: /).fill("s");
  await row.getByRole("button", { name: "Move the job" }).tap();
  const moved = shop.list("Van S (1)").getByRole("listitem");
  await expect(moved).toContainText("23:59");
  await expect(shop.list("Van N (1)")).toHaveCount(0);
  // The day file of the van that had it says so before it is made.
  await shop.go("#/day");
  await app.getByLabel(/^Van/).fill("N");
  await app.getByRole("button", { name: new RegExp(ADA.plate) }).tap();
  await expect(shop.alert("Planned for another van until now")).toContainText(`${ADA.plate} · ${ADA.name}: van S`);
  await app.getByLabel(/^Van/).fill("S");
  await expect(shop.alert("Planned for another van until now")).toHaveCount(0);
});

async function aVan(browser, host, faults, work) {
  const context = await browser.newContext(phone);
  try {
    const page = faults.watch(await context.newPage());
    await open(page, host.url);
    await work(new Shop(page));
  } finally {
    await context.close();
  }
}

test("a van is warned of another van's file and takes name and contact of the shop along", async ({ app, host, browser, faults }) => {
  const shop = new Shop(app);
  await shop.book(ADA);
  await settings(app, "Name and report");
  await app.locator("#shop_name").fill("Driveway Hubs (invented)");
  await app.locator("#contact").fill("555 0100");
  const day = await shop.dayFile("n", ADA, "09:00");
  await aVan(browser, host, faults, async (van) => {
    await settings(van.page, "Prices and invoices");
    await van.page.locator("#van").fill("S");
    await van.take([file(day.name, day.text)]);
    await expect(van.alert("This file is for van N, and this phone is van S.")).toBeVisible();
    await van.key("Use the shop's settings").tap();
    await settings(van.page, "Name and report");
    await expect(van.page.locator("#shop_name")).toHaveValue("Driveway Hubs (invented)");
    await expect(van.page.locator("#contact")).toHaveValue("555 0100");
    await settings(van.page, "Prices and invoices");
    await van.page.locator("#van").fill("N");
    await van.take([file(day.name, day.text)]);
    await expect(van.alert("This file is for van")).toHaveCount(0);
  });
});

test("the customer has fields, a call, a map and an e-mail one tap away, and all visits", async ({ app }) => {
  const shop = new Shop(app);
  await shop.book(ADA);
  await shop.book(ADA_AGAIN);
  await shop.place("where");
  await expect(shop.way("Call")).toHaveCount(0);
  await shop.way("Customer").tap();
  await app.getByLabel("Phone").fill("+1 555 010 0199");
  await app.getByLabel("Address of the work").fill("12 Oak St, Unit #3");
  await app.getByLabel("E-mail").fill("ada@example.org");
  await shop.key("Save the customer").tap();
  await expect(shop.way("Call")).toHaveAttribute("href", "tel:+15550100199");
  await expect(shop.way("Map")).toHaveAttribute("href", "geo:0,0?q=12%20Oak%20St%2C%20Unit%20%233");
  await expect(shop.way("E-mail")).toHaveAttribute("href", "mailto:ada@example.org");
  const visits = shop.list("All visits (2)").getByRole("listitem");
  await expect(visits).toHaveCount(2);
  for (const { plate } of [ADA, ADA_AGAIN]) await expect(visits.filter({ hasText: plate })).toHaveCount(1);
  expect(await serious(app)).toEqual([]);
  await shop.place("where");
  await expect(shop.way("Call")).toBeVisible();
  // The number finds the job in the shop.
  await shop.go("#/shop-lists");
  await app.getByRole("searchbox").fill("555 010 0199");
  await expect(shop.main.getByRole("status").getByRole("link").filter({ hasText: ADA_AGAIN.plate })).toHaveCount(1);
});

test("erasing a customer takes all their jobs, and a text that names them is proposed", async ({ app, host, browser, faults }) => {
  test.slow();
  const shop = new Shop(app);
  for (const job of [ADA, ADA_AGAIN, BEN]) await shop.book(job);
  const day = await shop.dayFile("n", ADA, "09:00");
  await shop.go("#/");
  await shop.main.getByRole("listitem").filter({ hasText: ADA.plate }).getByRole("link").tap();
  await shop.isAt("Prep: Vehicle");
  await shop.place("erase");
  const other = shop.key(new RegExp(ADA_AGAIN.plate));
  await expect(other).toContainText("goes");
  await expect(shop.key(new RegExp(BEN.plate))).toHaveCount(0);
  const complaint = shop.key(/^Complaint \(names them\): /);
  await expect(complaint).toContainText("goes");
  const key = shop.key(/^Erase for good/);
  await key.scrollIntoViewIfNeeded();
  const box = await key.boundingBox();
  await app.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await app.mouse.down();
  await expect(shop.main).toContainText("Erased. ");
  await app.mouse.up();
  const kept = JSON.stringify(await journal(app));
  for (const word of [ADA.name, ADA.plate, ADA_AGAIN.plate, ADA.said]) expect(kept, word).not.toContain(word);
  expect(kept).toContain(BEN.name);
  // A phone that has the job learns of it with the next file, and one that has not begins none.
  const next = await shop.dayFile("n", BEN, "10:00");
  await aVan(browser, host, faults, async (van) => {
    await van.take([file(day.name, day.text)]);
    expect(JSON.stringify(await journal(van.page))).toContain(ADA.name);
    await van.take([file(next.name, next.text)]);
    const there = JSON.stringify(await journal(van.page));
    for (const word of [ADA.name, ADA.plate, ADA.said]) expect(there, word).not.toContain(word);
    expect(there).toContain(BEN.name);
    await van.go("#/");
    await expect(van.main.locator("section.jobs li")).toHaveCount(2);
  });
});
