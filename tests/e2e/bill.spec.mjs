// The price in lines with the shop's tax, a number that only this van gives, and what came in.
import { test, expect, ready } from "./support/fixtures.mjs";
import { settings } from "./pages/settings.mjs";
import { Quick } from "./pages/quick.mjs";

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

test("a price in lines is added up, numbered by the van and paid", async ({ app }) => {
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

  await bill.key("Number the invoice").tap();
  await expect(bill.sum("Invoice number")).toHaveText("N0001");
  await app.getByLabel("Paid, USD").fill("100");
  await bill.key("Card").tap();
  await expect(bill.sum("Still to pay")).toHaveText("376.30 USD");
  await expect(app.getByLabel("Paid, USD")).toHaveValue("376.30");
  await bill.key("Cash").tap();
  await expect(bill.sum("Still to pay")).toHaveCount(0);
  await app.reload();
  await ready(app);
  await expect(bill.sum("The full repair")).toHaveText("476.30 USD");
  await bill.key("Remove: Hub with bearing").tap();
  await expect(bill.sum("Before tax")).toHaveText("230.00 USD");

  await bill.begin();
  await bill.key("The lines of the last job").tap();
  await expect(bill.sum("Before tax")).toHaveText("230.00 USD");
  await bill.key("Number the invoice").tap();
  await expect(bill.sum("Invoice number")).toHaveText("N0002");
});

test("a practice job takes no invoice number", async ({ app }) => {
  await settings(app, "Prices and invoices");
  await app.getByLabel("Letters of this van").fill("N");
  const bill = new Bill(app);
  await app.evaluate(() => { location.hash = "#/"; });
  await bill.practice();
  await bill.show();
  await expect(bill.sum("The full repair")).toBeVisible();
  await expect(bill.key("Number the invoice")).toHaveCount(0);
});
