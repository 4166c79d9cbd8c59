// A new phone asks who works here and with which wrenches, and judges no wrench that nobody entered.
import { test, expect, open, started } from "./support/fixtures.mjs";
import { before, fileOf, sampleEntries } from "./support/jobs.mjs";
import { First, VAN } from "./pages/first.mjs";
import { settings } from "./pages/settings.mjs";
import { Quick } from "./pages/quick.mjs";

/** The sample of a replaced hub up to the bolts of a step, with other wrenches on board. */
function atTheBolts(step, wrenches) {
  const cut = before(sampleEntries("replaced-hub"), ({ moved }) => moved?.step.startsWith(step));
  return fileOf(cut.map((entry) => {
    const { carried } = entry.what;
    return carried ? { ...entry, what: { carried: { ...carried, wrenches: wrenches(carried.wrenches) } } } : entry;
  }));
}

async function toSettings(quick) {
  await settings(quick.page, "Torque wrenches");
}

test("the first start asks technician, shop and wrenches once, and assumes no wrench", async ({ page, host, faults: _ }) => {
  await page.goto(host.url);
  await started(page);
  const first = new First(page);
  await expect(first.title).toBeVisible();
  await expect(first.main).toContainText("No wrench is assumed.");
  // What this is, in a sentence, and a car to try it on.
  await expect(first.main).toContainText("Hubslate takes you through checking and replacing a wheel bearing");
  await expect(first.key("Try a practice car")).toBeVisible();
  await expect(first.key("Save and start")).toBeDisabled();
  await first.names(VAN);
  // A wrench that is none is said so, and nothing goes on; a half typed one is taken by the start.
  await first.wrench(["Short", "80", "10"]);
  await first.key("Save and start").tap();
  await expect(first.main.getByRole("alert").filter({ hasText: /\w/ })).toBeVisible();
  await expect(first.title).toBeVisible();
  await first.wrench(VAN.wrenches[0]);
  await first.key("Save and start").tap();
  await expect(first.title).toHaveCount(0);
  await expect(page.getByRole("link", { name: "New job" })).toBeVisible();
  await page.reload();
  await started(page);
  await expect(first.title).toHaveCount(0);

  const quick = new Quick(page);
  await toSettings(quick);
  await expect(page.getByLabel("Technician's name")).toHaveValue(VAN.technician);
  await expect(page.getByLabel("Shop's name")).toHaveValue(VAN.shop);
  const wrenches = quick.main.getByRole("listitem").filter({ hasText: "lb-ft" });
  await expect(wrenches).toHaveCount(1);
  await expect(wrenches).toContainText("Short");
  // The report names both.
  await page.evaluate(() => { location.hash = "#/"; });
  await quick.practice();
  await expect(await quick.report()).toContainText(`${VAN.technician}, ${VAN.shop}`);
});

test("where no wrench is known a fastener says so, and takes those that are entered then", async ({ app }) => {
  const quick = new Quick(app);
  await quick.open(atTheBolts("turn_hub_bolts", () => []));
  await quick.isAt("Torque: Hub bolts");
  await expect(quick.main).toContainText("No wrench is known.");
  await expect(quick.main).not.toContainText("No van wrench fits");
  const job = app.url();
  await quick.way("Van kit").tap();
  const first = new First(app);
  await quick.main.getByText("Add a wrench", { exact: true }).tap();
  await first.wrench(["Long", "20", "250"], "N·m");
  await quick.main.locator(".van").getByRole("button", { name: "Save", exact: true }).first().tap();
  await expect(quick.main.getByRole("listitem").filter({ hasText: "Long" })).toBeVisible();
  await app.goto(job);
  await quick.isAt("Torque: Hub bolts");
  await quick.key("Use the van's wrenches now").tap();
  await expect(quick.main).toContainText("Long");
  await expect(quick.main).not.toContainText("No wrench is known.");
});

test("a wrench past its check is said at the nut and on paper", async ({ app }) => {
  const quick = new Quick(app);
  const past = (all) => all.map((wrench) => ({ ...wrench, checked: "2020-01-15" }));
  await quick.open(atTheBolts("turn_bracket_bolts", past));
  await quick.isAt("Torque: Bracket bolts");
  await expect(quick.alert("wrench overdue: Check due since")).toBeVisible();
  await quick.goOn(() => quick.key(/^Bracket bolt 1 clicked$/).tap());
  const table = (await quick.report()).getByRole("row").filter({ hasText: "Bracket bolt 1" });
  await expect(table.filter({ hasText: "wrench overdue" }).first()).toBeVisible();
});

test("practice counts no click on a wrench of the van, whatever its name", async ({ page, host, faults: _ }) => {
  test.slow();
  const wrenches = ["A", "B", "C"].map((letter) => [`Practice wrench ${letter}`, "10", "400"]);
  await open(page, host.url, { ...VAN, wrenches });
  const quick = new Quick(page);
  await quick.practice();
  await quick.walk("Torque: Bracket bolts", { "Measure: Push, pull, read": (it) => it.round("6") });
  const clicked = await quick.report();
  await expect(clicked.getByRole("cell", { name: /^Practice wrench/ }).first()).toBeVisible();
  await toSettings(quick);
  const own = quick.main.getByRole("listitem").filter({ hasText: "Practice wrench" });
  await expect(own).toHaveCount(3);
  for (const row of await own.all()) await expect(row).toContainText("0 clicks counted");
});
