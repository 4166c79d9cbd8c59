// What every screen says of where one is, and what small keys leave behind.
import { test, expect } from "./support/fixtures.mjs";
import { sampleText } from "./support/jobs.mjs";
import { settings } from "./pages/settings.mjs";
import { Quick } from "./pages/quick.mjs";

const status = (quick, text) => quick.main.getByRole("status").filter({ hasText: text });

test("undo says what it took back, until the next tap", async ({ app }) => {
  const quick = new Quick(app);
  await quick.practice();
  await quick.walk("Check-in: Odometer");
  await quick.key("Undo").tap();
  await quick.isAt("Check-in: The right car");
  await expect(status(quick, "Undone: The right car")).toBeVisible();
  await quick.goOn(() => quick.key("Same car").tap());
  await expect(status(quick, "Undone")).toHaveCount(0);
});

test("the line under the strip says how far the job is and never moves the screen", async ({ app }) => {
  const quick = new Quick(app);
  const line = () => app.locator(".strip__far").getByRole("img");
  const height = () => app.locator(".strip__far").evaluate((it) => it.getBoundingClientRect().height);
  await quick.practice();
  await expect(line()).toHaveAccessibleName(/^Site: step 1 of 1, part \d+ of \d+ of the job$/);
  const [first, part] = [await height(), Number((await line().textContent()).match(/part (\d+)/)[1])];
  await quick.walk("Check-in: Odometer");
  await expect(line()).toHaveAccessibleName(new RegExp(`^Check-in: step 2 of \\d+, part ${part + 1} of `));
  expect(await height()).toBe(first);
});

test("a job stands on home under what must happen next, and an ended one behind a key", async ({ app }) => {
  const quick = new Quick(app);
  const under = (name) => app.locator("section.jobs").filter({ has: app.getByRole("heading", { name, exact: true }) });
  await expect(quick.main).toContainText("Hubslate takes you through checking and replacing a wheel bearing");
  await quick.key("Try a practice car").tap();
  await quick.isAt("Site: The ground");
  await app.evaluate(() => { location.hash = "#/"; });
  await expect(under("At the car").getByRole("link")).toHaveCount(1);

  await quick.take([{ name: "a.json", mimeType: "application/json", buffer: Buffer.from(sampleText("declined-stop")) }]);
  await app.evaluate(() => { location.hash = "#/"; });
  await expect(under("Ended jobs")).toHaveCount(0);
  await quick.ended();
  await expect(under("Ended jobs").getByRole("link")).toHaveCount(1);
  await expect(under("Ended jobs")).toContainText("STOP");
  for (const way of ["Settings", "Send to shop", "Import a file", "Shop", "Spec library"]) await expect(quick.way(way)).toBeVisible();
});

test("a note can be written where the notes are", async ({ app }) => {
  const quick = new Quick(app);
  await quick.practice();
  await quick.key("More").tap();
  await quick.way("All steps").tap();
  await quick.way("Notes").tap();
  await expect(quick.main).toContainText("No note yet.");
  await app.getByLabel("Note", { exact: true }).fill("Gravel drive, boards under the jack.");
  await quick.key("Save the note").tap();
  await expect(quick.main.getByRole("listitem").filter({ hasText: "boards under the jack" })).toContainText("The ground");
  await expect(quick.main).not.toContainText("No note yet.");
  await expect(app.getByLabel("Note", { exact: true })).toHaveValue("");
});

test("the settings are sections, short and with the wrenches first", async ({ app }) => {
  await settings(app, "Torque wrenches");
  await expect(app.locator("details.settings__part > summary")).toHaveCount(8);
  await expect(app.getByRole("heading", { level: 2 }).first()).toHaveText("Torque wrenches");
  // Not two screens of it before a section is chosen.
  expect(await app.evaluate(() => document.scrollingElement.scrollHeight / innerHeight)).toBeLessThan(2);
  await settings(app, "Screen, sound, units");
  await app.getByRole("button", { name: "Dark screen" }).tap();
  await expect(app.locator("html")).toHaveAttribute("data-theme", "night");
});
