// No answer is without its consequence: what a no holds, what is said then, and how it is lifted.
import { test, expect } from "./support/fixtures.mjs";
import { sampleText } from "./support/jobs.mjs";
import { Quick } from "./pages/quick.mjs";
import { moreBelow } from "./pages/unfold.mjs";

/** A practice job, as far as the site. */
async function begin(app) {
  app.setDefaultTimeout(15_000);
  const quick = new Quick(app);
  await quick.practice();
  return quick;
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

test("a slope keeps the site open until it is put right", async ({ app }) => {
  const quick = await begin(app);
  const [row, said] = [/^Slope/, "Move the car to level ground first."];
  await quick.goOn(async () => {
    await quick.key(row).tap();
    await quick.key("Yes to the other 2").tap();
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
