// Every ending but "finished", each reached once on the screen, and what its report then says.
import { test, expect } from "./support/fixtures.mjs";
import { before, fileOf, sampleEntries } from "./support/jobs.mjs";
import { Quick } from "./pages/quick.mjs";

const MUST_NOT = "Do not drive this car.";
const MAY = "The car may be driven.";
const NEITHER = /The car may be driven|REPLACED, safe to drive/;

async function customers(quick) {
  return (await quick.report()).getByRole("region", { name: "For the customer" });
}

test("nothing wrong found: everything is put back and the car may be driven", async ({ app }) => {
  test.slow();
  const quick = new Quick(app);
  await quick.practice();
  await quick.walk("Decide: Decision", { "Rises with speed": (quick) => quick.signs() });
  await expect(quick.main).toContainText("KEEP");
  await quick.finish("Nothing to repair today");
  for (const key of ["Undo", "Not done"]) await expect(quick.key(key)).toHaveCount(0);
  await expect(quick.key("Reopen the job")).toBeVisible();
  const page = await customers(quick);
  await expect(page).toContainText("We found nothing that must be repaired today.");
  await expect(page).toContainText(MAY);
  await expect(page).not.toContainText(MUST_NOT);
});

test("a STOP that is declined is put back, and its consequence is said and printed", async ({ app }) => {
  test.slow();
  const consequence = "The steering can fail, the wheel can come off, and people can be hurt or killed.";
  const quick = new Quick(app);
  await quick.practice();
  await quick.walk("Decide: Decision", { "Spin by hand": "Grinds, hot or smokes" });
  await expect(quick.main).toContainText("STOP");
  await expect(quick.alert("Do not drive this car.")).toBeVisible();
  await quick.walk("Approve: Customer's answer");
  await quick.key("No").tap();
  await expect(quick.alert(`You chose not to have it repaired. ${consequence}`)).toBeVisible();
  await quick.goOn(() => quick.key("Refused to sign").tap());
  await quick.finish("Declined, put back");
  const page = await customers(quick);
  await expect(page).toContainText(MUST_NOT);
  await expect(page).toContainText("DO NOT DRIVE");
  await expect(page).toContainText("We advised this work, and you declined it.");
  await expect(page).toContainText("Refused to sign");
  await expect(page.locator(".report__signature")).toHaveCount(0);
  await expect(page).not.toContainText("lug-nut torque");
  await expect(page).toContainText(consequence);
  await expect(page).not.toContainText(NEITHER);
});

test("a REPLACE that is declined names what can follow from it", async ({ app }) => {
  const quick = new Quick(app);
  const opened = before(sampleEntries("replaced-hub"), (what) => what.consent?.step.startsWith("agree"));
  await quick.open(fileOf(opened));
  await quick.isAt("Approve: Customer's answer");
  await expect(quick.main).toContainText("REPLACE");
  await quick.key("No").tap();
  const consequence = "You chose not to have this bearing replaced. It will get worse, and it can become unsafe.";
  await expect(quick.alert(consequence)).toBeVisible();
  await quick.goOn(() => quick.sign("Save"));
  await quick.finish("Declined, put back");
  await expect(await customers(quick)).toContainText(consequence);
});

test("a place that is not safe ends the job before the car is touched", async ({ app }) => {
  const quick = new Quick(app);
  await quick.practice();
  await quick.walk("Hand over: Report and file", { "The ground": "Not safe here" });
  await quick.finish("Not safe here");
  const page = await customers(quick);
  await expect(page).toContainText("We did not open anything: the place was not safe for this work.");
});

test("left unfinished in the middle of Strip: what is loose by name, STOP, and who took charge", async ({ app }) => {
  const quick = new Quick(app);
  const opened = before(sampleEntries("replaced-hub"), (what) => what.answered?.step.startsWith("strip_brake"));
  await quick.open(fileOf(opened));
  await quick.walk("Remove: Free sensor wire");
  await quick.endHere();
  await expect(quick.main).toContainText("STOP");
  await expect(quick.main.getByRole("heading", { name: "Left unfinished", exact: true })).toBeVisible();
  const loose = await quick.main.getByRole("list").getByRole("listitem").allInnerTexts();
  const named = (name) => loose.filter((row) => row.startsWith(name)).length;
  expect(named("Lug nut ")).toBe(5);
  expect(named("Bracket bolt ")).toBe(2);
  expect(named("Guide pin bolt, ")).toBe(2);
  for (const one of ["Axle nut, front left", "Caliper, front left", "Caliper bracket, front left", "Rotor, front left", "Wheel, front left"]) {
    expect(named(one), one).toBe(1);
  }
  expect(named("Hub bolt ")).toBe(0);
  await quick.key("Towed away").tap();
  await expect(quick.main).toContainText("The job has ended.");
  const report = await quick.report();
  await expect(report).toContainText("Do not drive or move it");
  await expect(report).toContainText("Towed away");
  await expect(report).toContainText("Axle nut, front left");
  await expect(report).not.toContainText(NEITHER);
});

/** The screen at "before and after" with a new part that does not pass, and how the job can end. */
async function isBlocked(quick) {
  await quick.isAt("Verify: Before and after");
  await expect(quick.main).toContainText("STOP");
  await expect(quick.alert("The new part does not pass. The vehicle stays at STOP.")).toBeVisible();
  await expect(quick.main).toContainText("Check nut torque, hub bolts and seat, then the part.");
  await expect(quick.key("Continue")).toHaveCount(0);
  await quick.endHere();
  await expect(quick.main).toContainText("STOP");
  await expect(quick.key(/Finished/)).toHaveCount(0);
  await quick.key("Customer, on jack stands").tap();
  await expect(quick.main).toContainText("The job has ended.");
  const report = await quick.report();
  await expect(report).toContainText("Front left: replaced, but the new part fails its check.");
  await expect(report).toContainText("The work on this car is not finished. Do not drive or move it");
  await expect(report).toContainText("Customer, on jack stands");
  await expect(report).not.toContainText(NEITHER);
}

test("a proof that fails is told at the open wheel end and can be measured again", async ({ app }) => {
  test.slow();
  const quick = new Quick(app);
  await quick.open(fileOf(before(sampleEntries("replaced-hub"), (what) => what.reading?.when === "after")));
  const rounds = (number) => ({ "Push, pull, read": (it) => it.round(number) });
  await quick.walk("Verify: Before and after", rounds("7"));
  await expect(quick.alert("The new part does not pass.")).toBeVisible();
  await quick.goOn(() => quick.key("Measure again").tap());
  await quick.isAt("Verify: Dial setup");
  await quick.goOn(() => quick.key("Set up as shown").tap());
  await quick.isAt("Verify: Base on the knuckle");
  await quick.goOn(() => quick.key("It does not move").tap());
  await expect(quick.main).toContainText("Cycle 1 of 3");
  await quick.walk("Torque: Caliper down", rounds("0.5"));
  const report = await quick.report();
  await expect(report).toContainText("Undone");
});

test("a new part that measures over is not finished work", async ({ app }) => {
  test.slow();
  const quick = new Quick(app);
  await quick.open(fileOf(before(sampleEntries("replaced-hub"), (what) => what.reading?.when === "after")));
  await quick.walk("Verify: Before and after", { "Push, pull, read": (it) => it.round("7") });
  await isBlocked(quick);
});

/** The sample up to its last look, its new hub spun with another result. */
async function spun(quick, pick) {
  const told = before(sampleEntries("replaced-hub"), (what) => what.answered?.step === "prove_result");
  const spin = told.find(({ what }) => what.answered?.step.startsWith("prove_spin"));
  spin.what.answered.reply = { picked: { pick } };
  await quick.open(fileOf(told));
}

test("a new part that runs rough is not finished work", async ({ app }) => {
  const quick = new Quick(app);
  await spun(quick, "rough");
  await isBlocked(quick);
});

test("measured again with the wheel on, it is opened first and closed to its card after", async ({ app }) => {
  test.slow();
  const quick = new Quick(app);
  await spun(quick, "rough");
  await expect(quick.main).toContainText("The wheel end is closed");
  await quick.goOn(() => quick.key("Measure again").tap());
  await quick.isAt("Verify: Loosen lug nuts");
  await quick.walk("Verify: Caliper up again");
  const loose = app.getByRole("link", { name: /loose$/ });
  await expect(loose).toHaveText(/^6/);
  await quick.walk("Verify: Pedal first", { "Push, pull, read": (it) => it.round("0.5") });
  await expect(loose).toHaveText(/^0/);
  await quick.walk("Verify: Before and after");
  await expect(quick.alert("The new part does not pass.")).toHaveCount(0);
  await expect(quick.key("Continue")).toBeVisible();
});

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
