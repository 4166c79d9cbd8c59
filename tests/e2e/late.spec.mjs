// Hands are not always free: what was done a while ago is noted now, and the report says both.
import { expect, test } from "./support/test.mjs";
import { Quick } from "./pages/quick.mjs";

test("what was done an hour ago is noted as that, for one tap", async ({ page, host }) => {
  await page.clock.setFixedTime(new Date("2026-03-04T15:30:00"));
  await page.goto(host.url);
  const quick = new Quick(page);
  await quick.practice();
  await quick.walk("Site: The place");
  const says = quick.main.getByText("The next tap is noted as done an hour ago.");
  await expect(says).toBeHidden();
  await quick.key("More").tap();
  await quick.key("Done earlier").tap();
  await quick.key("An hour ago").tap();
  await expect(says).toBeVisible();
  await quick.step();
  await expect(says).toBeHidden();
  await quick.step();
  const report = await quick.report();
  await expect(report.getByText("noted later at")).toHaveCount(1);
  await expect(report.getByText("Done 2026-03-04 14:30, noted later at 2026-03-04 15:30")).toHaveCount(1);
});
