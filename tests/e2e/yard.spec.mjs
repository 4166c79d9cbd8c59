// What a shop follows over the jobs of many phones: due, declined, unpaid, and what came back.
import { test, expect } from "./support/fixtures.mjs";
import { sampleEntries, sampleText } from "./support/jobs.mjs";
import { Quick, file } from "./pages/quick.mjs";

/** What the sample says of a person. */
const person = (name, field) => sampleEntries(name)
  .map(({ what }) => what.person).find((it) => it?.field === field).text;

class Yard extends Quick {
  async show() {
    await this.page.evaluate(() => { location.hash = "#/yard"; });
    await expect(this.main.getByRole("heading", { name: "Yard" })).toBeVisible();
  }

  list(title) {
    return this.main.locator("section").filter({ has: this.page.getByRole("heading", { name: title }) });
  }
}

test("the yard lists what is due, what was declined and what is not paid", async ({ app }) => {
  const yard = new Yard(app);
  await yard.show();
  await expect(yard.main).toContainText("Nothing is due, nothing waits.");
  const samples = ["replaced-hub", "declined-stop", "nothing-wrong"];
  await yard.take(samples.map((name) => file(`${name}.json`, sampleText(name))));
  await yard.show();

  const overdue = yard.list(/^Wheel nuts overdue/);
  const plate = person("replaced-hub", "plate");
  const row = overdue.getByRole("listitem").filter({ hasText: plate });
  await expect(row).toBeVisible();
  const digits = person("replaced-hub", "phone").replace(/\D/g, "");
  await expect(row.getByRole("link", { name: "Call" })).toHaveAttribute("href", `tel:${digits}`);
  const message = await row.getByRole("link", { name: "Write" }).getAttribute("href");
  expect(message.startsWith(`sms:${digits}?body=`)).toBe(true);
  expect(decodeURIComponent(message)).toContain(`of your car ${plate} have to be tightened again`);
  await expect(yard.list(/^Said no to a STOP \(1\)$/)).toContainText(person("declined-stop", "plate"));

  const unpaid = yard.list(/^Not paid/).getByRole("listitem").filter({ hasText: plate });
  await expect(unpaid).toContainText("486.00 USD");
  await unpaid.getByRole("link").first().tap();
  await app.waitForFunction(() => location.hash.startsWith("#/job/"));
  await app.evaluate(() => { location.hash = location.hash.replace(/^(#\/job\/[^/]+).*$/, "$1/bill"); });
  await app.getByLabel("Part number, front left").fill("MX-4410-H");
  await app.getByLabel("Lot or date code, front left").fill("2608");
  await yard.key("Keep the part").tap();
  await yard.key("Cash").tap();
  await expect(app.getByText("Still to pay")).toHaveCount(0);

  await yard.show();
  await expect(yard.list(/^Not paid/).getByRole("listitem").filter({ hasText: plate })).toHaveCount(0);
  await expect(yard.main.getByRole("row").filter({ hasText: "MX-4410-H 2608" })).toContainText("0 of 0");
  await app.evaluate(() => { location.hash = "#/"; });
  await app.getByRole("searchbox").fill("2608");
  await expect(yard.main.getByText(plate)).toHaveCount(2);
  await expect(yard.main.getByText(person("declined-stop", "plate"))).toHaveCount(0);
});

test("practice enters no list of the yard", async ({ app }) => {
  const yard = new Yard(app);
  await yard.practice();
  await yard.show();
  await expect(yard.main).toContainText("Nothing is due, nothing waits.");
});
