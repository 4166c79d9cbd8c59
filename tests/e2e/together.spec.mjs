// One screen that tells several steps: its rows can be turned, and no question is answered by one.
import { test, expect } from "./support/fixtures.mjs";
import { before, fileOf, sampleEntries } from "./support/jobs.mjs";
import { Quick } from "./pages/quick.mjs";

/** A finished job up to a step, opened at it. */
async function at(app, step) {
  const quick = new Quick(app);
  await quick.open(fileOf(before(sampleEntries("replaced-hub"), (what) => what.answered?.step.startsWith(step))));
  return quick;
}

test("a row that was turned stays open and comes next alone", async ({ app }) => {
  const quick = await at(app, "gauge_clean");
  await quick.isAt("Measure: Clean for the dial");
  const clean = quick.key(/^Rotor flat/);
  await expect(clean).toContainText("–");
  await clean.tap();
  await expect(clean).toContainText("Not yet");
  await quick.key("Set up as shown").tap();
  await quick.isAt("Measure: Clean for the dial");
  await quick.key("Clean and dry").tap();
  // What rests on it was not answered with it.
  await quick.isAt("Measure: Dial setup");
  await quick.key("Set up as shown").tap();
  await quick.isAt("Measure: Base on the knuckle");
});

test("after the nuts were cracked no wheel comes off before the car was shoved", async ({ app }) => {
  const quick = await at(app, "loosen_lug_nuts");
  await quick.isAt("Measure: Loosen lug nuts");
  await quick.unfold();
  await quick.key("It moved").tap();
  // The nuts are cracked; only the shove is asked again.
  await quick.isAt("Measure: Shove again");
  await quick.goTo("Wheel off");
  await expect(quick.main.getByRole("alert")).toBeVisible();
  await expect(quick.key("Wheel is off")).toHaveCount(0);
  await quick.way("Go to that step").tap();
  await quick.unfold();
  await quick.key("It stands firm").tap();
  await quick.isAt("Measure: Wheel off");
  await expect(quick.key("Wheel is off")).toBeEnabled();
});

test("a sign of the road has no answer before it is tapped or said no to", async ({ app }) => {
  const quick = await at(app, "sign_speed");
  await quick.isAt("Road test: Rises with speed");
  const [speed, swerve] = [quick.key(/rise with road speed/), quick.key(/gentle swerve/)];
  await expect(speed).toContainText("–");
  await expect(quick.key("No to all 5")).toBeEnabled();
  await speed.tap();
  await expect(speed).toContainText("Yes");
  await swerve.tap();
  await swerve.tap();
  await expect(swerve).toContainText("Steering left");
  await speed.tap();
  await expect(speed).toContainText("Not done");
  await quick.goOn(() => quick.key("No to the other 3").tap());
  const report = await quick.report();
  await expect(report).toContainText("Steering left");
});

test("nothing is read before the needle was set, or was said to stand still", async ({ app }) => {
  const quick = new Quick(app);
  await quick.open(fileOf(before(sampleEntries("replaced-hub"), (what) => what.reading)));
  await quick.isAt("Measure: Push, pull, read");
  for (const round of [1, 2]) {
    await expect(app.getByText(`Cycle ${round} of 3`)).toBeVisible();
    await expect(quick.key(/^(Save|Same:)/)).toHaveCount(0);
    await quick.key("Needle still at 0").tap();
    await expect(quick.key("Save 0")).toBeEnabled();
    await quick.goOn(() => quick.key("Save 0").tap());
  }
});
