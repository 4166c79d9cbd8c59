// A practice car behaves, is marked, and tells its truth at the end.
import { test, expect } from "./support/fixtures.mjs";
import { Quick } from "./pages/quick.mjs";

/** Holds a key with one finger while `look` looks at something else. */
async function hold(quick, name, look) {
  const key = quick.key(name);
  await key.scrollIntoViewIfNeeded();
  await key.hover();
  await quick.page.mouse.down();
  await look();
  await quick.page.mouse.up();
}

/** How far the needle of the practice car stands from zero. */
async function needle(quick) {
  const name = await quick.main.locator(".panel title").filter({ hasText: /^Dial at/ }).textContent();
  return Number(name.match(/Dial at (-?\d+)/)[1]);
}

const row = (quick, outcome) => quick.main.locator("section").filter({ has: quick.page.getByRole("heading", { name: outcome }) });

test("a practice car moves its needle while it is held and tells what it had at the end", async ({ app }) => {
  test.slow();
  const quick = new Quick(app);
  await quick.way("New job").tap();
  await quick.way("Which practice car?").tap();
  await expect(quick.main.getByRole("listitem")).toHaveCount(7);
  await quick.key("Practice: Stoat 1.6").tap();
  await quick.isAt("Site: The ground");
  await expect(app.locator(".strip")).toContainText("Practice");

  await quick.walk("Hand check: Spin by hand");
  await expect(quick.main).not.toContainText("It turns smooth and quiet.");
  await quick.key("Try it").tap();
  await expect(quick.main.getByRole("status").filter({ hasText: "It turns smooth and quiet." })).toBeVisible();
  await quick.key("Close").tap();

  await quick.walk("Measure: Base on the knuckle");
  await quick.key("Try it").tap();
  expect(await needle(quick)).toBe(0);
  await hold(quick, "Hold: push the knuckle", async () => {
    await expect.poll(() => needle(quick)).toBeGreaterThanOrEqual(2);
  });
  await expect.poll(() => needle(quick)).toBe(0);
  // A base that gives is set on another place, which does not.
  await quick.key("Close").tap();
  await quick.key("More than one").tap();
  await expect(app.locator(".panel")).toHaveCount(0);
  await quick.isAt("Measure: Base on the knuckle");
  await quick.key("Try it").tap();
  await hold(quick, "Hold: push the knuckle", async () => {
    await expect.poll(() => needle(quick)).toBeLessThanOrEqual(1);
  });
  await quick.key("Close").tap();
  await quick.goOn(() => quick.key("It does not move").tap());

  await quick.walk("Measure: Push, pull, read");
  await quick.key("Try it").tap();
  await hold(quick, "Hold: push", async () => {
    await expect.poll(() => needle(quick)).toBeLessThanOrEqual(1);
  });
  let read = 0;
  await hold(quick, "Hold: pull", async () => {
    await expect.poll(async () => (read = await needle(quick))).toBeGreaterThanOrEqual(1);
  });
  await quick.key("Close").tap();
  for (let round = 1; round <= 3; round += 1) await quick.goOn(() => quick.round(String(read)));
  await quick.step();

  await quick.endHere();
  await quick.key("Customer, on jack stands").tap();
  await quick.way("What this car had").tap();
  await expect(quick.main).toContainText("Practice");
  await expect(row(quick, "You found it")).toContainText("The first place of the base gave");
  await expect(row(quick, "You found it")).toContainText("The hub was sound and could stay.");
  await expect(row(quick, "You found it")).toContainText(/true play was (0\.030\smm|0\.0012\sin); you read \d/);
});

test("a real job has no practice car", async ({ app }) => {
  const quick = new Quick(app);
  await quick.way("New job").tap();
  await quick.key("Start at the car").tap();
  await expect(app.locator(".strip")).not.toContainText("Practice");
  await app.evaluate(() => { location.hash = location.hash.replace(/^(#\/job\/[^/]+).*$/, "$1/truth"); });
  await expect(app.getByRole("heading", { name: "What this car had" })).toHaveCount(0);
});
