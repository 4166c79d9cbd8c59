// An answer that came by message while the page was locked for the customer.
import { test, expect } from "./support/fixtures.mjs";
import { Quick } from "./pages/quick.mjs";

test("a yes by message names where it came from", async ({ app }) => {
  test.setTimeout(90_000);
  const quick = new Quick(app);
  await quick.practice();
  await quick.walk("Check-in: Inspection approval");
  // The page is locked for the customer: the technician holds the key until its ring is full.
  await quick.key(/^Back to technician/).hover();
  await app.mouse.down();
  await expect(app.getByLabel("Message from")).toBeVisible();
  await app.mouse.up();
  await app.getByLabel("Message from").fill("dana@example.org");
  await quick.goOn(() => quick.key("By message: Customer approves").tap());
  const report = await quick.report();
  await expect(report).toContainText("By message, Pat Example (dana@example.org)");
});
