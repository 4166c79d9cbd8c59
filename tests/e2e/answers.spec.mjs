// No answer is without its consequence: what a no holds, what is said then, and how it is lifted.
import { test, expect } from "./support/fixtures.mjs";
import { sampleText } from "./support/jobs.mjs";
import { Quick } from "./pages/quick.mjs";
import { moreBelow } from "./pages/unfold.mjs";

/** Answers a list: no to the row of this text, yes to the others. */
const noTo = (row, others) => async (quick) => {
  await quick.key(row).tap();
  await quick.key(others === 1 ? "Yes to the other one" : `Yes to the other ${others}`).tap();
};

/** A practice job, as far as the site. */
async function begin(app) {
  app.setDefaultTimeout(15_000);
  const quick = new Quick(app);
  await quick.practice();
  return quick;
}

/** The step on the screen stays, says what to do, and goes on once it is answered as it should be. */
async function stays(quick, label, said) {
  await quick.isAt(label);
  await expect(quick.alert(said)).toBeVisible();
  await quick.step();
  await expect(quick.main).not.toHaveAttribute("aria-label", label);
}

/** The step on the screen is held: what is to be done is said, and its own key is not there. */
async function held(quick, label, said, key) {
  await quick.isAt(label);
  await expect(quick.alert(said)).toBeVisible();
  await expect(quick.key(key)).toHaveCount(0);
}

test("a list has no answer before it is touched, and its key says for how many it answers", async ({ app }) => {
  const quick = await begin(app);
  const rows = app.locator(".checks__row");
  await expect(rows).toHaveCount(3);
  for (const row of await rows.all()) await expect(row).toHaveAttribute("data-answer", "open");
  await expect(quick.key("Yes to all 3")).toBeEnabled();
  await quick.key(/^Slope/).tap();
  await expect(quick.key("Yes to the other 2")).toBeVisible();
  await expect(app.getByText("Move the car to level ground first.")).toBeVisible();
  // A touch that is not told yet is there when the page comes again.
  await app.reload();
  await expect(quick.key(/^Slope/)).toHaveAttribute("data-answer", "no");
  await expect(quick.key("Yes to the other 2")).toBeVisible();
});

for (const [what, row, said] of [
  ["a slope", /^Slope/, "Move the car to level ground first."],
  ["soft ground", /^Firm ground/, "Put a plate under the jack stand, or find firm ground first."],
  ["traffic", /^Clear of traffic/, "Shield the place first, or do not work here."],
]) {
  test(`${what} keeps the site open until it is put right`, async ({ app }) => {
    const quick = await begin(app);
    await quick.goOn(async () => {
      await noTo(row, 2)(quick);
      await expect(quick.alert(said)).toBeVisible();
      // The row stands as it was answered, and no key lifts it but its own.
      await expect(quick.key(row)).toHaveAttribute("data-answer", "no");
      await expect(quick.key("Save the answers")).toBeDisabled();
      await app.reload();
      await expect(quick.key(row)).toHaveAttribute("data-answer", "no");
      await quick.key(row).tap();
      await expect(quick.key(row)).toHaveAttribute("data-answer", "yes");
      await quick.key("Save the answers").tap();
    });
    await expect(quick.main).not.toHaveAttribute("aria-label", "Site: The ground");
  });
}

test("a jack stand that does not carry the car keeps everybody out from under it", async ({ app }) => {
  const quick = await begin(app);
  await quick.walk("Lift: Jack and jack stand");
  await quick.unfold();
  await quick.key(/^Jack stand under/).tap();
  await quick.notDone("No time");
  await stays(quick, "Lift: Jack and jack stand", "Put the jack stand under a rated point; keep clear until it carries the car.");
});

test("with a soft pedal or a damaged tire the car is not driven, and both come again before it moves", async ({ app }) => {
  test.setTimeout(90_000);
  const quick = await begin(app);
  await quick.walk("Road test: Test drive", {
    "Pre-drive check": async (q) => {
      await q.key(/brake pedal/).tap();
      await q.key(/^Tires/).tap();
      await q.key("Yes to the other 2").tap();
    },
  });
  await held(quick, "Road test: Test drive", "Do not drive: find and fix the brake fault first.", "Back and parked");
  await quick.goOn(() => quick.notDone("Not safe"));
  await quick.walk("Verify: Before it moves");
  await expect(quick.key(/brake pedal/)).toBeVisible();
  await expect(quick.key(/^Tires/)).toBeVisible();
  await quick.unfold();
  await noTo(/brake pedal/, 3)(quick);
  // It is not handed over as it stands: the end says why.
  await quick.endHere();
  await expect(quick.alert("Do not drive: find and fix the brake fault first.")).toBeVisible();
  await expect(quick.main).toContainText("STOP");
});

test("a car that stood on its wheel for the axle nut is shoved before the wheel comes off", async ({ app }) => {
  test.setTimeout(120_000);
  const quick = await begin(app);
  const label = "Remove: Loosen axle nut";
  await quick.walk(label, { "Spin by hand": "Rough and noisy" });
  await quick.unfold();
  await expect(quick.key("It stands firm")).toBeEnabled();
  await quick.key("It moved").tap();
  await quick.isAt("Remove: Shove again");
  await expect(quick.alert("Keep clear. Back on the jack")).toBeVisible();
  await quick.goTo("Axle nut off");
  await held(quick, "Remove: Axle nut off", "Jack stand and shove first", /(Nut|Brake) is off|Take the photo/);
  await quick.way("Go to that step").tap();
  await quick.isAt("Remove: Shove again");
  await quick.step();
  await quick.isAt("Remove: Axle nut off");
  await expect(quick.alert("Jack stand and shove first")).toHaveCount(0);
});

test("by its address nothing is loosened on a car that was lowered, and what is loosened opens the job again", async ({ app }) => {
  test.setTimeout(60_000);
  app.setDefaultTimeout(15_000);
  const quick = new Quick(app);
  await quick.open(sampleText("replaced-hub"));
  const to = async (step) => {
    await app.evaluate((step) => {
      location.hash = location.hash.replace(/^(#\/job\/[^/]+).*$/, `$1/${step}`);
    }, step);
  };
  await to("wheel_off@front_left");
  await held(quick, "Measure: Wheel off", "Jack stand and shove first", "Wheel is off");
  await to("strip_hub@front_left");
  await held(quick, "Remove: Hub out", "Jack stand and shove first", "Hub is out");
  await to("loosen_lug_nuts@front_left");
  await quick.unfold();
  await quick.key("Loosened, on the stand").tap();
  await expect(quick.alert("it is open again: do not drive the car.")).toBeVisible();
  await quick.isAt("Torque: Lug nuts");
  await app.evaluate(() => { location.hash = "#/"; });
  const open = app.locator("section.jobs").filter({ has: app.getByRole("heading", { name: "At the car" }) });
  await expect(open).toContainText("5 loose");
});

test("a car that was left unfinished stands first, at STOP and with what is loose", async ({ app }) => {
  test.setTimeout(90_000);
  const quick = await begin(app);
  await quick.walk("Measure: Caliper up");
  await quick.endHere();
  await quick.key("We come back to finish").tap();
  await expect(quick.main).toContainText("The job has ended.");
  await expect(quick.main).toContainText(/\d+ loose/);
  await app.evaluate(() => { location.hash = "#/"; });
  const open = app.locator("section.jobs").filter({ has: app.getByRole("heading", { name: "Make safe first" }) });
  await expect(open).toContainText(/STOP · \d+ loose/);
});

test("no key answers what lies below the edge of a low screen", async ({ app }) => {
  await app.removeLocatorHandler(moreBelow(app));
  await app.setViewportSize({ width: 320, height: 568 });
  const quick = await begin(app);
  const yes = quick.key("Yes to all 3");
  await expect(quick.key("More below ↓")).toBeVisible();
  await expect(yes).toBeDisabled();
  await quick.unfold();
  await expect(yes).toBeEnabled();
  await expect(quick.key("More below ↓")).toBeHidden();
});
