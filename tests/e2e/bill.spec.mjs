// The price in lines with the shop's tax, numbers that only this van gives, and what came in.
import { test, expect, ready } from "./support/fixtures.mjs";
import { settings } from "./pages/settings.mjs";
import { Quick } from "./pages/quick.mjs";
import { another, before, fileOf, sampleEntries } from "./support/jobs.mjs";

class Bill extends Quick {
  /** A job that is begun at the car, with nothing told yet, and its bill. */
  async begin() {
    await this.page.evaluate(() => { location.hash = "#/new"; });
    await this.key("Start at the car").tap();
    await expect(this.main.getByRole("heading").first()).toBeVisible();
    await this.show();
  }

  async show() {
    await this.page.waitForFunction(() => location.hash.startsWith("#/job/"));
    await this.page.evaluate(() => { location.hash = location.hash.replace(/^(#\/job\/[^/]+).*$/, "$1/where"); });
    await this.way("Price and payment").tap();
    await expect(this.main.getByRole("heading", { name: "Price and payment" })).toBeVisible();
  }

  async line(kind, words, quantity, each) {
    await this.main.getByRole("group", { name: "Next line" }).getByRole("button", { name: kind }).tap();
    await this.page.getByLabel("For", { exact: true }).fill(words);
    await this.page.getByLabel("Quantity", { exact: true }).fill(quantity);
    await this.page.getByLabel("Price of one, USD").fill(each);
    await this.key("Save the line").tap();
  }

  sum(label) {
    return this.main.locator("dt", { hasText: label }).locator("xpath=following-sibling::dd[1]");
  }
}

test("a price in lines is added up at each rate, and is neither numbered nor owed before the end", async ({ app }) => {
  await settings(app, "Prices and invoices");
  await app.getByLabel("Currency").fill("USD");
  await app.getByLabel("Tax, percent").fill("8.25");
  await app.getByLabel("Letters of this van").fill("n");
  const bill = new Bill(app);
  await bill.begin();
  await bill.line("Part", "Hub with bearing", "1", "210");
  await expect(bill.sum("The full repair")).toHaveText("227.33 USD");
  await bill.line("Labor", "", "2,5", "92.001");
  await expect(bill.main.getByRole("alert").filter({ hasText: "2" })).toBeVisible();
  await bill.line("Labor", "", "2,5", "92");
  // 210.00 and 2.5 times 92.00 are 440.00; 8.25 % of it are 36.30.
  await expect(bill.sum("Before tax")).toHaveText("440.00 USD");
  await expect(bill.sum("Tax, 8.25 %")).toHaveText("36.30 USD");
  await expect(bill.sum("The full repair")).toHaveText("476.30 USD");
  // 10.00 at another rate of 5 %: 0.50.
  await bill.main.getByText("Another tax rate, percent").first().tap();
  await app.locator("#line_rate").fill("5");
  await bill.line("Travel", "", "1", "10");
  await expect(bill.sum("Tax, 5 %")).toHaveText("0.50 USD");
  await expect(bill.sum("The full repair")).toHaveText("486.80 USD");

  await expect(bill.main).toContainText("The invoice gets its number when the job has ended.");
  await expect(bill.key("Number the invoice")).toHaveCount(0);
  await expect(bill.sum("Still to pay")).toHaveCount(0);
  await app.getByLabel("Paid, USD").fill("100");
  await bill.key("Card").tap();
  await expect(bill.sum("Paid in advance")).toHaveText("100.00 USD");
  await app.reload();
  await ready(app);
  await expect(bill.sum("The full repair")).toHaveText("486.80 USD");
  await bill.key("Remove: Hub with bearing").tap();
  await expect(bill.sum("Before tax")).toHaveText("240.00 USD");

  await bill.begin();
  await bill.key("The lines of the last job").tap();
  await expect(bill.sum("Before tax")).toHaveText("240.00 USD");
});

/** The bill of a job that came as a file. */
async function billOf(app, entries) {
  const bill = new Bill(app);
  await bill.open(fileOf(entries));
  await bill.show();
  return bill;
}

test("a phone that knows no number of its van asks for the last one, and counts on from it", async ({ app }) => {
  await settings(app, "Prices and invoices");
  await app.getByLabel("Letters of this van").fill("N");
  const first = sampleEntries("replaced-hub");
  const bill = await billOf(app, first);
  await expect(bill.main).toContainText("This phone knows no number with these letters.");
  await app.getByLabel("Last number given").fill("K0041");
  await bill.key("Number the invoice").tap();
  await expect(bill.alert("That is no number with this van's letters.")).toBeVisible();
  await app.getByLabel("Last number given").fill("n0041");
  await bill.key("Number the invoice").tap();
  await expect(bill.sum("Invoice number")).toHaveText("N0042");
  await expect(bill.main).toContainText("Everything that is to pay is on an invoice.");
  await billOf(app, another(first, 1));
  await expect(app.getByLabel("Last number given")).toHaveCount(0);
  await bill.key("Number the invoice").tap();
  await expect(bill.sum("Invoice number")).toHaveText("N0043");
});

test("further work is agreed, billed, paid in part, paid in full, and stands on the invoice", async ({ app }) => {
  test.slow();
  await settings(app, "Prices and invoices");
  await app.getByLabel("Letters of this van").fill("N");
  const bill = new Bill(app);
  const cut = before(sampleEntries("replaced-hub"), (what) => what.moved?.step === "turn_lug_nuts@front_left");
  await bill.open(fileOf(cut));
  await bill.isAt("Torque: Lug nuts");
  await bill.key("Something is wrong").tap();
  await bill.key("Stud or bolt broke").tap();
  await bill.key("Record it").tap();
  await bill.isAt("Torque: Photo: what went wrong");
  await bill.notDone("No light, no sight");
  await bill.isAt("Torque: Lug nuts");
  await bill.main.getByLabel("Costs more, in the currency of the price").fill("120");
  await bill.key("Show the customer").tap();
  await expect(bill.main.getByText("This work: 120.00 USD more, 606.00 USD in all")).toBeVisible();
  await bill.sign("Yes, for 120.00 USD");
  await bill.walk("Torque: New stud", { "Raise it again": /^(It stands firm|Loosened, on the stand)$/ });
  await bill.goOn(() => bill.key(/^In by hand/).tap());
  await bill.finish("Finished");

  // From the last step to the payment.
  await bill.way("Price and payment").tap();
  await expect(bill.sum("Total to pay")).toHaveText("606.00 USD");
  await expect(bill.main.getByRole("listitem").filter({ hasText: "Further work" })).toContainText("120.00 USD");
  await bill.key("Number the invoice").tap();
  await expect(bill.sum("Invoice number")).toHaveText("N0001");
  await app.getByLabel("Paid, USD").fill("200");
  await bill.key("Card").tap();
  await expect(bill.sum("Still to pay")).toHaveText("406.00 USD");
  await expect(app.getByLabel("Paid, USD")).toHaveValue("406");
  await bill.key("Cash").tap();
  await expect(bill.main.getByRole("status").filter({ hasText: "Paid in full." })).toBeVisible();
  await expect(app.getByLabel("Paid, USD")).toHaveCount(0);

  // A discount afterwards: a credit note with a number of its own, and the money goes back.
  await bill.main.getByText("Discount, refund…").tap();
  await app.getByLabel("Discount, USD").fill("6");
  await app.getByLabel("Reason for the discount").fill("waited an hour");
  await bill.key("Take it off").tap();
  await expect(bill.sum("Overpaid, to give back")).toHaveText("6.00 USD");
  await bill.key("Number the credit note").tap();
  await expect(bill.sum("Credit note number")).toHaveText("N0002");
  await expect(bill.sum("Invoice number")).toHaveText("N0001");
  await expect(app.getByLabel("Give back, USD")).toHaveValue("6");
  await bill.key("Cash").tap();
  await expect(bill.sum("Overpaid, to give back")).toHaveCount(0);
  await expect(bill.main.getByRole("status").filter({ hasText: "Paid in full." })).toBeVisible();

  const report = await bill.report();
  const pages = report.getByRole("region", { name: "Invoice" });
  await expect(pages).toHaveCount(2);
  const invoice = pages.first();
  await expect(invoice.getByRole("heading")).toHaveText("Invoice N0001");
  for (const words of ["Hub with bearing", "Further work", "Tax, 8.25 % of 440.00 USD", "606.00 USD"]) {
    await expect(invoice).toContainText(words);
  }
  await expect(invoice.getByRole("row").filter({ hasText: "Balance of this job" })).toContainText("0.00 USD");
  await expect(pages.last().getByRole("heading")).toHaveText("Credit note N0002");
  await expect(pages.last()).toContainText("−6.00 USD");
});

test("the keys of the price screen are large, and nothing is wider than a small phone", async ({ app }) => {
  for (const [width, height] of [[390, 844], [320, 568]]) {
    await app.setViewportSize({ width, height });
    const bill = await billOf(app, another(sampleEntries("replaced-hub"), width));
    await expect(bill.sum("Still to pay")).toHaveText("486.00 USD");
    const wide = await app.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wide).toBeLessThanOrEqual(0);
    for (const name of ["Cash", "Card"]) {
      const { height: tall } = await bill.key(name).boundingBox();
      expect(tall).toBeGreaterThanOrEqual(48);
    }
  }
});

test("a practice job takes no invoice number", async ({ app }) => {
  await settings(app, "Prices and invoices");
  await app.getByLabel("Letters of this van").fill("N");
  const bill = new Bill(app);
  await app.evaluate(() => { location.hash = "#/"; });
  await bill.practice();
  await bill.show();
  await expect(bill.sum("The full repair")).toBeVisible();
  await expect(bill.main).not.toContainText("The invoice gets its number");
  await expect(bill.key("Number the invoice")).toHaveCount(0);
});
