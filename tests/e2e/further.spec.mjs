// Further work: the customer reads what it is and what it comes to, signs, and a car that waited for
// the answer is shoved before anybody reaches under it.
import { expect, test } from "./support/fixtures.mjs";
import { before, fileOf, sampleEntries } from "./support/jobs.mjs";
import { Quick } from "./pages/quick.mjs";

/** A sheared stud at the lug nuts, on the record, with its picture refused. */
async function broken(app) {
  const quick = new Quick(app);
  const entries = before(sampleEntries("replaced-hub"), (what) => what.moved?.step === "turn_lug_nuts@front_left");
  await quick.open(fileOf(entries));
  await quick.isAt("Torque: Lug nuts");
  await quick.key("Something is wrong").tap();
  await quick.key("Stud or bolt broke").tap();
  await quick.key("Record it").tap();
  await quick.isAt("Torque: Photo: what went wrong");
  await quick.notDone("No light, no sight");
  await quick.isAt("Torque: Lug nuts");
  return quick;
}

test("the customer signs for further work after the car waited, and it is shoved first", async ({ app }) => {
  const quick = await broken(app);
  await quick.key("No answer yet").tap();
  await expect(quick.alert("the car waits as it is")).toBeVisible();
  await quick.main.getByLabel("Costs more, in the currency of the price").fill("45");
  await quick.key("Show the customer").tap();
  await expect(quick.main.getByText("This work: 45.00 USD more, 531.00 USD in all")).toBeVisible();
  await expect(quick.key("Yes, for 45.00 USD")).toBeDisabled();
  await quick.sign("Yes, for 45.00 USD");
  await expect(quick.alert("shove it hard")).toBeVisible();
  await expect(quick.key(/^In by hand/)).toHaveCount(0);
  await quick.key("It stands firm").tap();
  // It stands on that wheel: raised, shoved and the wheel off before the stud is replaced.
  await quick.isAt("Torque: Raise it again");
  await expect(quick.key(/^In by hand/)).toHaveCount(0);
  await quick.walk("Torque: New stud", { "Raise it again": /^(It stands firm|Loosened, on the stand)$/ });
  await quick.goOn(() => quick.key(/^In by hand/).tap());
  await quick.walk("Torque: Lug nuts");
  await expect(quick.key(/^In by hand/)).toHaveCount(0);
  await expect(quick.key("Lug nut 1 clicked")).toBeVisible();
  const report = await quick.report();
  await expect(report.getByText("new total 531.00 USD")).not.toHaveCount(0);
});

test("who says no to further work and will not sign is witnessed", async ({ app }) => {
  const quick = await broken(app);
  await quick.main.getByLabel("Costs more, in the currency of the price").fill("45");
  await quick.key("Show the customer").tap();
  await quick.key("No").tap();
  await expect(quick.alert("cannot be closed to spec")).toBeVisible();
  await quick.main.getByLabel("Who else saw it").fill("N. Bystander");
  await quick.key("Refused to sign").tap();
  await expect(quick.way("End the job here")).toBeVisible();
});
