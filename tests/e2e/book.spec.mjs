// The card book of a shop: it leaves one phone as a file of its own, and another starts with it.
import { readFileSync } from "node:fs";
import { test, expect, open } from "./support/fixtures.mjs";
import { phone } from "./support/phone.mjs";
import { FAMILY, FIGURES, FIRST, SECOND } from "./pages/bookings.mjs";
import { CARDS, Pack } from "./pages/pack.mjs";
import { Quick, file } from "./pages/quick.mjs";

const DAYS = 40;

/** Packs a job up to its second card, so that two cards are in the book. */
async function twoCards(page) {
  const pack = new Pack(page);
  await pack.begin();
  await pack.paste(FIRST.message);
  await pack.keepVehicle(FAMILY);
  await pack.corners("Front left");
  for (const card of CARDS.slice(0, 2)) {
    await pack.at(card);
    const [value, unit, rest] = FIGURES[card];
    await pack.card(value, unit, rest);
  }
  await pack.at(CARDS[2]);
}

async function goToBook(quick) {
  await quick.page.evaluate(() => { location.hash = "#/book"; });
  await expect(quick.main.getByRole("heading", { name: "Spec library" })).toBeVisible();
}

/** The file of the whole book. */
async function exported(quick) {
  await goToBook(quick);
  const [download] = await Promise.all([
    quick.page.waitForEvent("download"),
    quick.key("Save it as a file").tap(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^hubslate-spec-library-\d{4}-\d\d-\d\d\.json$/);
  return readFileSync(await download.path(), "utf8");
}

test("a new phone of the shop starts with the shop's book, each card with its age", async ({ app, host, browser, faults }) => {
  test.slow();
  await twoCards(app);
  const here = new Quick(app);
  const text = await exported(here);
  expect(JSON.parse(text).logs.map(({ kind }) => kind)).toEqual(["spec_library"]);
  expect(text).not.toContain("Dana Quill");

  const other = await browser.newContext(phone);
  try {
    const page = faults.watch(await other.newPage());
    await page.clock.setFixedTime(Date.now() + DAYS * 24 * 60 * 60 * 1000);
    await open(page, host.url);
    const there = new Quick(page);
    await goToBook(there);
    await expect(there.main).toContainText("No spec is saved yet.");
    const outcome = await there.take([file("book.json", text)]);
    await expect(outcome).toContainText("Spec library: 2 specs of 1 family, 2 new");
    await outcome.getByRole("link", { name: "Spec library" }).tap();
    await expect(there.main.getByRole("heading", { name: FAMILY })).toBeVisible();
    const nut = there.main.getByRole("listitem", { name: "Axle nut" });
    await expect(nut).toContainText("180 lb-ft + 60°");
    await expect(nut).toContainText(`${DAYS} days ago`);
    await nut.getByRole("button", { name: "Looked up again today" }).tap();
    await expect(nut).toContainText("Looked up today");

    // Offered in a job, with its age.
    await page.evaluate(() => { location.hash = "#/"; });
    const pack = new Pack(page);
    await pack.begin();
    await pack.paste(SECOND.message);
    await pack.knownFamily(FAMILY);
    await pack.corners("Front left");
    await expect(there.main).toContainText("today");
    await pack.lookedUpAgain();
    await pack.at(CARDS[1]);
    await expect(there.main).toContainText(`${DAYS} days ago`);
    await pack.lookedUpAgain();
    await pack.at(CARDS[2]);

    // And back again: what was looked up later is said to be newer.
    const back = await here.take([file("book.json", await exported(there))]);
    await expect(back).toContainText("Spec library: 2 specs of 1 family, 0 new, 2 newer than yours");
  } finally {
    await other.close();
  }
});

test("a card of the book for another number of studs is doubted and kept with its reason", async ({ app }) => {
  test.slow();
  const pack = new Pack(app);
  await pack.begin();
  await pack.paste(FIRST.message);
  await pack.keepVehicle(FAMILY);
  await pack.corners("Front left");
  const quick = new Quick(app);
  await quick.goTo("Spec: lug nuts");
  const [value, unit] = FIGURES["Spec: lug nuts"];
  await pack.type("Value", value);
  await quick.key(unit).tap();
  await quick.main.getByText("More stages, thread, count…").tap();
  await pack.type("How many", "6");
  await pack.type("Document", "Marten service sheet 7");
  await pack.type("Looked up by", "R. Okafor");
  await quick.key("Save the spec").tap();
  await expect(quick.alert("The page lists 6 of them, this vehicle is recorded with 5.")).toBeVisible();
  await quick.key("Read twice, printed so").tap();
  await pack.at(CARDS[0]);

  await app.evaluate(() => { location.hash = "#/"; });
  await pack.begin();
  await pack.paste(SECOND.message);
  await pack.knownFamily(FAMILY);
  await pack.corners("Front left");
  await quick.goTo("Spec: lug nuts");
  await expect(quick.alert("The page lists 6 of them, this vehicle is recorded with 5.")).toBeVisible();
  await expect(quick.key("Looked up again today")).toHaveCount(0);
  await expect(quick.key("Asked manufacturer")).toBeVisible();
});
