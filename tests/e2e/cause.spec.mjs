// From a complaint to the cause: what the road said ranks, and the cheapest test settles it.
import { test, expect } from "./support/fixtures.mjs";
import { Quick } from "./pages/quick.mjs";

test("a tire that sounds like a bearing is settled by the tests that say most", async ({ app }) => {
  const quick = new Quick(app);
  await quick.practice();
  // The road: it rises with speed, no swerve changes it, the same in neutral.
  await quick.walk("Lift: Hold the car", {
    "Rises with speed": (quick) => quick.signs("rise with road speed", "coasting in neutral"),
  });
  await quick.key("More").tap();
  await app.getByRole("link", { name: "Find the cause" }).tap();
  await quick.key("Hum or growl with speed").tap();
  const said = quick.main.getByRole("status");
  await expect(said).toContainText(/Cannot be separated yet|Tire: \d/);
  // Each offered test says where its answers would lead, and none is offered that was done.
  const offered = quick.main.locator(".cause__test");
  await expect(offered.first()).toContainText(/Tire \d+/);
  await expect(app.locator("main.cause > .cause__tests")).not.toContainText("coast in neutral");
  const before = await said.textContent();
  const bars = quick.main.locator(".cause__bars title");
  const drawn = await bars.textContent();

  await quick.key("All other tests").tap();
  const tread = quick.main.getByRole("group", { name: /palm over the tread/ }).last();
  await tread.getByRole("button", { name: "Yes" }).tap();
  await expect(said).toContainText(/^Tire: \d+/);
  await expect(bars).toHaveText(/^Tire/);

  // Taken back, it is as it was.
  await tread.getByRole("button", { name: "Not done" }).tap();
  await expect(said).toHaveText(before);
  await expect(bars).toHaveText(drawn);

  // It stands beside the decision's own reasons later, and the record has it.
  await tread.getByRole("button", { name: "Yes" }).tap();
  await expect(said).toContainText(/^Tire: \d+/);
  const hash = await app.evaluate(() => location.hash.replace(/cause$/, "report"));
  await app.evaluate((to) => (location.hash = to), hash);
  await expect(app.locator("body")).toContainText(/Tire: \d+/);
});
