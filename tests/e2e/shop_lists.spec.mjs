// What a shop follows over the jobs of many phones: due, declined, unpaid, and what came back.
import { test, expect } from "./support/fixtures.mjs";
import { serious } from "./support/audit.mjs";
import { another, fileOf, sampleEntries, sampleText } from "./support/jobs.mjs";
import { settings } from "./pages/settings.mjs";
import { Quick, file } from "./pages/quick.mjs";

/** What the sample says of a person. */
const person = (name, field) => sampleEntries(name)
  .map(({ what }) => what.person).find((it) => it?.field === field).text;

class Shop extends Quick {
  async show() {
    await this.page.evaluate(() => { location.hash = "#/shop-lists"; });
    await expect(this.main.getByRole("heading", { name: "Shop" })).toBeVisible();
  }

  async counts() {
    await this.page.evaluate(() => { location.hash = "#/shop-lists/counts"; });
    await expect(this.main.getByRole("heading", { name: "Counts of the shop" })).toBeVisible();
  }

  /** Lets go of files over the place for them. */
  async drop(files) {
    const dragged = await this.page.evaluateHandle((all) => {
      const data = new DataTransfer();
      for (const [name, text] of all) data.items.add(new File([text], name, { type: "application/json" }));
      return data;
    }, files);
    await this.main.getByText("Drop the files of the vans here").dispatchEvent("drop", { dataTransfer: dragged });
  }

  list(title) {
    return this.main.locator("section").filter({ has: this.page.getByRole("heading", { name: title }) });
  }
}

test("the shop lists what is due, what was declined and what is not paid", async ({ app }) => {
  const shop = new Shop(app);
  await shop.show();
  await expect(shop.main).toContainText("Nothing is due, nothing waits.");
  const samples = ["replaced-hub", "declined-stop", "nothing-wrong"];
  await shop.take(samples.map((name) => file(`${name}.json`, sampleText(name))));
  await shop.show();

  const overdue = shop.list(/^Lug torque overdue/);
  const plate = person("replaced-hub", "plate");
  const row = overdue.getByRole("listitem").filter({ hasText: plate });
  await expect(row).toBeVisible();
  const digits = person("replaced-hub", "phone").replace(/\D/g, "");
  await expect(row.getByRole("link", { name: "Call" })).toHaveAttribute("href", `tel:${digits}`);
  const message = await row.getByRole("link", { name: "Write" }).getAttribute("href");
  expect(message.startsWith(`sms:${digits}?body=`)).toBe(true);
  expect(decodeURIComponent(message)).toContain(`A wheel was off your car ${plate}. The lug torque must be checked by`);
  await expect(shop.list(/^STOP declined \(1\)$/)).toContainText(person("declined-stop", "plate"));

  const unpaid = shop.list(/^Not paid/).getByRole("listitem").filter({ hasText: plate });
  await expect(unpaid).toContainText("486.00 USD");
  await unpaid.getByRole("link").first().tap();
  await app.waitForFunction(() => location.hash.startsWith("#/job/"));
  await app.evaluate(() => { location.hash = location.hash.replace(/^(#\/job\/[^/]+).*$/, "$1/bill"); });
  await app.getByLabel("Part number, front left").fill("MX-4410-H");
  await app.getByLabel("Lot or date code, front left").fill("2608");
  await shop.key("Save the part").tap();
  await shop.key("Cash").tap();
  await expect(app.getByText("Still to pay")).toHaveCount(0);

  await shop.show();
  await expect(shop.list(/^Not paid/).getByRole("listitem").filter({ hasText: plate })).toHaveCount(0);
  await shop.counts();
  await expect(shop.main.getByRole("row").filter({ hasText: "MX-4410-H 2608" })).toContainText("0 of 0");
  await app.evaluate(() => { location.hash = "#/"; });
  await app.getByRole("searchbox").fill("2608");
  await expect(shop.main.getByText(plate)).toHaveCount(1);
  await expect(shop.main.getByText(person("declined-stop", "plate"))).toHaveCount(0);
});

test("practice enters no list of the shop", async ({ app }) => {
  const shop = new Shop(app);
  await shop.practice();
  await shop.show();
  await expect(shop.main).toContainText("Nothing is due, nothing waits.");
  await shop.counts();
  await expect(shop.main).toContainText("Nothing to count yet.");
});

/** An entry after the last one of a job, noted on the same phone. */
function then(entries, what, id) {
  const last = entries.at(-1);
  return [...entries, { ...last, id, n: last.n + 1, after: [last.id], what }];
}

const SEEN = "019c6c21-0e76-762b-b33a-0000000000aa";

test("files are dropped, each says what became of it, and a gap is named", async ({ app }) => {
  const shop = new Shop(app);
  await shop.show();
  const entries = sampleEntries("replaced-hub");
  const { device, n } = entries[60];
  const cut = fileOf(entries.filter((entry) => entry.n < n || n + 2 < entry.n));
  await shop.drop([["a.json", cut], ["b.json", cut], ["c.json", `${cut.slice(0, 400)}`], ["d.txt", "not ours"]]);
  await expect(shop.main).toContainText("4 of 4 files");
  await expect(shop.main).toContainText("1 came in, 1 nothing new, 2 refused");
  const rows = shop.main.getByRole("status").getByRole("listitem");
  await expect(rows.filter({ hasText: "a.json: came in" })).toBeVisible();
  await expect(rows.filter({ hasText: "b.json: nothing new" })).toBeVisible();
  await expect(rows.filter({ hasText: "c.json: refused" })).toContainText("The file is cut off.");
  await expect(rows.filter({ hasText: "d.txt: refused" })).toContainText("This is not a Hubslate file.");
  const gaps = shop.list("Entries not received");
  await expect(gaps).toContainText(new RegExp(`\\(Van [^)]*\\): entries ${n}–${n + 2} missing`));
  await expect(gaps).not.toContainText(device);
  await shop.drop([["a-whole.json", fileOf(entries)]]);
  await expect(gaps).toHaveCount(0);
});

test("a job is found by plate, VIN and name on the large screen", async ({ app }) => {
  const shop = new Shop(app);
  await shop.take([file("a.json", sampleText("replaced-hub")), file("b.json", sampleText("declined-stop"))]);
  await app.setViewportSize({ width: 1280, height: 800 });
  await shop.show();
  const vin = sampleEntries("replaced-hub").map(({ what }) => what.vehicle).find((it) => it?.field === "vin").text;
  const plate = person("replaced-hub", "plate");
  for (const typed of [plate.toLowerCase(), vin.slice(-6), person("replaced-hub", "name")]) {
    await app.getByRole("searchbox").fill(typed);
    const found = shop.main.getByRole("status").getByRole("link");
    await expect(found).toHaveCount(1);
    await expect(found).toContainText(plate);
  }
  await app.getByRole("searchbox").fill("nobody has this");
  await expect(shop.main).toContainText("No job matches that.");
});

test("causes of removed parts and what was proved are counted between their ends", async ({ app }) => {
  const shop = new Shop(app);
  const entries = sampleEntries("replaced-hub");
  const corner = entries.map(({ what }) => what.corners?.corners[0]).find(Boolean);
  const seen = (finding) => ({ removed_part: { corner, inspected: "closed", seen: [finding] } });
  const jobs = ["red_grease", "red_grease", "heat_colors"].map((word, place) =>
    file(`${place}.json`, fileOf(another(then(entries, seen(word), SEEN), place + 1))));
  await shop.take(jobs);
  await shop.counts();
  const causes = shop.list("Removed parts: likely causes");
  await expect(causes.getByRole("img")).toHaveAccessibleName(/Water past a seal 2 of 3/);
  await expect(causes.getByRole("row").filter({ hasText: "Water past a seal" })).toContainText("2 of 3");
  // 2 of 3 lies between 9.4 and 99.2 percent: scipy, binomtest(2, 3).proportion_ci(0.95, "exact").
  await expect(causes.getByRole("row").filter({ hasText: "Water past a seal" })).toContainText(/9\D.*to 99/);
  await expect(shop.list("Replaced, repair proved").getByRole("row").filter({ hasText: "All vans" })).toContainText("of 3");
  expect(await serious(app)).toEqual([]);
  await expect(app.getByText(entries[0].by)).toHaveCount(0);
});

test("a part that is fitted counts one down from what was counted on board", async ({ app }) => {
  const shop = new Shop(app);
  await settings(app, "Parts in the van");
  await shop.main.getByText("Count a part").tap();
  await app.getByLabel("Part", { exact: true }).fill("MX-4410-H");
  await app.getByLabel("In the van now").fill("1");
  await app.getByLabel("Order below").fill("1");
  await shop.main.locator("details.more").filter({ hasText: "Count a part" }).getByRole("button", { name: "Save", exact: true }).last().tap();
  await expect(shop.main).toContainText("MX-4410-H: 1 in the van, order below 1, 0 cores to send back");
  const device = await app.evaluate(() => JSON.parse(localStorage.getItem("hubslate:setting:device")));
  const entries = sampleEntries("replaced-hub").map((entry) => ({ ...entry, device, n: entry.n + 10_000 }));
  const corner = entries.map(({ what }) => what.corners?.corners[0]).find(Boolean);
  const part = then(entries, { part: { corner, number: "mx 4410 h", lot: "2608" } }, SEEN);
  await shop.take([file("a.json", fileOf(part))]);
  await shop.show();
  const row = shop.list("Parts in the van").getByRole("row").filter({ hasText: "MX-4410-H" });
  await expect(row).toContainText("0 Order");
  await expect(row.getByRole("cell").last()).toHaveText("1");
});
