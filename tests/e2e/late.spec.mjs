// Hands are not always free: what was done a while ago is noted now, and the report says both.
import { expect, test } from "./support/fixtures.mjs";
import { Quick } from "./pages/quick.mjs";

test("what was done an hour ago is noted as that, for one tap", async ({ app }) => {
  const quick = new Quick(app);
  await quick.practice();
  const says = quick.main.getByText("The next tap is recorded as done an hour ago.");
  await expect(says).toBeHidden();
  await quick.key("More").tap();
  await quick.key("Done earlier").tap();
  await quick.key("An hour ago").tap();
  await expect(says).toBeVisible();
  await quick.step();
  await expect(says).toBeHidden();
  await quick.step();
  const report = await quick.report();
  const later = report.getByText("noted later at");
  await expect(later).not.toHaveCount(0);
  // One tap, wherever the report tells of it.
  const told = new Set((await later.allTextContents()).map((text) => text.match(/Done.*later at [-\d]+ [:\d]+/)[0]));
  expect(told.size).toBe(1);
  const [done, noted] = [...told][0].match(/\d{4}-\d\d-\d\d \d\d:\d\d/g);
  expect(new Date(noted) - new Date(done)).toBe(60 * 60 * 1000);
});
