// A phone whose language writes a comma: the numbers have one on the dial, the card and the report.
import { test, expect } from "./support/fixtures.mjs";
import { before, fileOf, sampleEntries } from "./support/jobs.mjs";
import { Quick } from "./pages/quick.mjs";

test.use({ locale: "de-DE" });

test("with a comma locale 6,3 is typed and read on the dial, the card and the report", async ({ app }) => {
  const quick = new Quick(app);
  await quick.open(fileOf(before(sampleEntries("replaced-hub"), (what) => what.reading)));
  await quick.isAt("Measure: Push, pull, read");
  await quick.main.getByTitle("Number pad").tap();
  await quick.type("6,3");
  await expect(quick.main.getByRole("status")).toContainText(["6,3"]);
  await expect(quick.key("Save 6,3")).toBeEnabled();
  await quick.key("Dial").tap();
  await expect(quick.main.getByRole("img", { name: "Dial at 6,3" })).toBeVisible();
  await quick.goOn(() => quick.key("Save 6,3").tap());
  for (const _ of [2, 3]) await quick.goOn(() => quick.round("6,3"));
  await expect(quick.main).toContainText("0,160 mm");
  await expect(quick.main).not.toContainText(/\d\.\d/);

  // The card's 2.0 thousandths of an inch are 0.0508 mm.
  const report = await quick.report();
  await expect(report).toContainText("2,0 thou = 0,051 mm");
  await expect(report).toContainText("6,3");
  await expect(report).toContainText("0,160 mm");
  await expect(report).not.toContainText(/\d\.\d+ (mm|in|thou|N·m)/);
});

test("with a comma locale a card's value is typed with a comma, and cards are shown with one", async ({ app }) => {
  const quick = new Quick(app);
  const entries = sampleEntries("replaced-hub");
  await quick.open(fileOf(before(entries, (what) => what.spec?.item === "play_limit")));
  await quick.isAt("Prep: Spec: play limit");
  await app.getByLabel("Value", { exact: true }).fill("0,05");
  await quick.goOn(() => quick.key("Save the spec").tap());

  // 120 N·m are 88.5 pound-feet.
  await quick.open(fileOf(before(entries, (what) => what.pass?.step.startsWith("turn_lug_nuts"))));
  await quick.isAt("Torque: Lug nuts");
  await expect(quick.main).toContainText("88,5 lb-ft");
  await expect(quick.main).not.toContainText(/\d\.\d/);
});
