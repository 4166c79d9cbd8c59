// What the customer sees: the price before a yes, a name before a signature, and page one of the report.
import { test, expect } from "./support/fixtures.mjs";
import { before, fileOf, sampleEntries, sampleText } from "./support/jobs.mjs";
import { sheets } from "./support/paper.mjs";
import { Quick, file } from "./pages/quick.mjs";

/** The customer's part of the report. */
async function pageOne(quick) {
  return (await quick.report()).getByRole("region", { name: "For the customer" });
}

async function shown(quick, text) {
  const outcome = await quick.take([file("job.json", text)]);
  await outcome.getByRole("link", { name: "Open the job" }).tap();
  return pageOne(quick);
}

const NOT_GIVEN = "The price of the inspection was not given.";

test("an inspection is never asked for an amount that nobody typed", async ({ app }) => {
  const quick = new Quick(app);
  const cut = before(sampleEntries("replaced-hub"), ({ consent }) => consent?.scope === "teardown");
  const quickPrice = cut.map((entry) => {
    const { price } = entry.what;
    return price ? { ...entry, what: { price: { repair: price.repair } } } : entry;
  });
  await quick.open(fileOf(quickPrice));
  await quick.walk("Check-in: Inspection approval");
  await expect(quick.main).toContainText(NOT_GIVEN);
  await expect(quick.main).not.toContainText("0.00");
  await app.getByLabel(/^Inspection and reassembly/).fill("95");
  await quick.key("Save the price").tap();
  await expect(quick.key("Yes, for 95.00 USD")).toBeVisible();
  await expect(quick.main).toContainText("Inspection and reassembly: 95.00 USD");
});

test("a price in lines leaves the inspection to be asked, without a price or for one that is typed", async ({ app }) => {
  const quick = new Quick(app);
  await app.evaluate(() => { location.hash = "#/new"; });
  await quick.key("Start at the car").tap();
  await app.waitForFunction(() => location.hash.startsWith("#/job/"));
  await app.evaluate(() => { location.hash = location.hash.replace(/^(#\/job\/[^/]+).*$/, "$1/bill"); });
  await app.getByLabel("For", { exact: true }).fill("Hub");
  await app.getByLabel("Price of one, USD").fill("210");
  await quick.key("Save the line").tap();
  await expect(app.getByLabel(/^Inspection and reassembly/)).toBeVisible();
  await app.evaluate(() => { location.hash = location.hash.replace("/bill", "/teardown_yes"); });
  await expect(quick.main).toContainText(NOT_GIVEN);
  await quick.key("Ask without a price").tap();
  await expect(quick.key("Yes")).toBeVisible();
  await expect(quick.main).not.toContainText("0.00");
  // Zero is an amount where somebody typed it.
  await app.evaluate(() => { location.hash = location.hash.replace("/teardown_yes", "/bill"); });
  await app.getByLabel(/^Inspection and reassembly/).fill("0");
  await quick.key("Save the price").tap();
  await app.evaluate(() => { location.hash = location.hash.replace("/bill", "/teardown_yes"); });
  await expect(quick.key("Yes, for 0.00 USD")).toBeVisible();
});

test("a signature has a name before it", async ({ app }) => {
  const quick = new Quick(app);
  const cut = before(sampleEntries("replaced-hub"), ({ consent }) => consent?.scope === "repair");
  const nameless = cut.filter(({ what }) => what.person?.field !== "name");
  expect(nameless.length).toBe(cut.length - 1);
  const kept = new Set(nameless.map(({ id }) => id));
  await quick.open(fileOf(nameless.map((entry) => ({ ...entry, after: entry.after.filter((id) => kept.has(id)) }))));
  await quick.isAt("Approve: Customer's answer");
  const yes = quick.key(/^Yes, for/);
  await quick.draw();
  await expect(yes).toBeDisabled();
  await app.getByLabel("Customer's name").fill("Sam Ferry");
  await quick.goOn(() => yes.tap());
  const page = await pageOne(quick);
  await expect(page).toContainText("Signed here, Sam Ferry");
});

test("what was declined is not to pay, and a car at STOP has no re-torque", async ({ app }) => {
  const quick = new Quick(app);
  const page = await shown(quick, sampleText("declined-stop"));
  await expect(page.locator(".report__now")).toHaveText("DO NOT DRIVE");
  const row = (label) => page.getByRole("row").filter({ hasText: label });
  await expect(row("Total to pay")).toContainText("110.00 USD");
  await expect(row("Repair you declined, not charged")).toContainText("520.00 USD");
  const report = quick.page.getByRole("article");
  await expect(report.locator(".report__part--customer, .report__tear-off").filter({ hasText: "lug-nut torque" })).toHaveCount(0);
  await expect(quick.key("Add to the calendar")).toHaveCount(0);
  await app.evaluate(() => { location.hash = "#/"; });
  await quick.ended();
  await expect(quick.main).not.toContainText("Re-torque");
});

test("the report of a plain replaced hub takes six sheets at most, on A4 and Letter", async ({ app }) => {
  const quick = new Quick(app);
  await shown(quick, sampleText("replaced-hub"));
  for (const format of ["A4", "Letter"]) {
    const all = await sheets(app, { format });
    expect(all.length, format).toBeLessThanOrEqual(6);
    const [first, ...rest] = all.map(({ text }) => text.replace(/\s+/g, " "));
    expect(first, format).toContain("REPLACED, safe to drive");
    // Nothing is lost: every reading, fastener, answer and the digest stand on the pages after it.
    const after = rest.join(" ");
    for (const words of ["Lug nut 5, front left", "Axle nut, front left", "0.160 mm", "Every answer", "Digest", "Job"]) {
      expect(after, `${format}: ${words}`).toContain(words);
    }
  }
});
