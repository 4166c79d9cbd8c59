// What a reading is: the method that was recorded at the dial, on one dial, and nothing that was not
// looked at in its own round.
import { test, expect } from "./support/fixtures.mjs";
import { serious } from "./support/audit.mjs";
import { before, fileOf, sampleEntries } from "./support/jobs.mjs";
import { Quick } from "./pages/quick.mjs";

const FINE = { graduation_mm: 0.002, divisions_per_turn: 100, kind: "lever" };
const HUNDREDTH = { graduation_mm: 0.01, divisions_per_turn: 100, kind: "plunger" };

/** The replaced hub up to the entry that `ends` holds for, changed by `change`. */
async function opened(app, ends, change = () => {}) {
  const quick = new Quick(app);
  const entries = before(sampleEntries("replaced-hub"), ends);
  change(entries);
  await quick.open(fileOf(entries));
  return quick;
}

/** The last statement of a kind among these entries. */
const last = (entries, kind) => entries.findLast(({ what }) => kind in what).what[kind];

/** The spec asks for a rock at the rotor's edge. */
function rocked(entries) {
  const limit = entries.find(({ what }) => what.spec?.item === "play_limit").what.spec.play;
  limit.way = { method: "rock", place: "rotor_edge" };
}

const setUp = (what) => what.dial_setup;

test("a spec for another method is said before the base is set, and the readings are not compared", async ({ app }) => {
  const quick = await opened(app, setUp, rocked);
  await quick.isAt("Measure: Dial setup");
  await expect(quick.main.getByRole("heading", { name: "Manufacturer's spec" })).toBeVisible();
  await expect(quick.main.getByRole("definition")).toHaveText([
    "Rock: push in at the top, pull out at the top", "Tip on the rotor's outer edge, at the top",
    "Pads out, caliper tied up, rotor clamped flat", "By hand",
  ]);
  expect(await serious(app)).toEqual([]);

  await quick.key("Set up another way").tap();
  await expect(quick.alert("not compared")).toHaveCount(0);
  await quick.key("Axial").tap();
  await quick.key("Hub pilot").tap();
  await expect(quick.alert("Spec is for another method: not compared")).toBeVisible();
  expect(await serious(app)).toEqual([]);
  await quick.goOn(() => quick.key("Save this setup").tap());
  await quick.isAt("Measure: Base on the knuckle");
  await quick.walk("Decide: Decision", { "Push, pull, read": (it) => it.round("6.3") });
  await expect(quick.main).not.toContainText("exceeds");
  const report = await quick.report();
  // The default limit stays in force, since its own method is that of the reading.
  await expect(report).toContainText("The manufacturer's limit is for another method. Default limit 0.004 in used");
  await expect(report).toContainText("Pushed and pulled along the axle");
});

test("a spec for a rock is met by a rock, and its rounds say how", async ({ app }) => {
  const quick = await opened(app, setUp, rocked);
  await quick.goOn(() => quick.key("Set up as shown").tap());
  await quick.walk("Measure: Push, pull, read");
  await expect(quick.main).toContainText("Push in at the top, hold: bezel to zero.");
  await quick.walk("Decide: Decision", { "Push, pull, read": (it) => it.round("6.3") });
  const report = await quick.report();
  await expect(report).toContainText("Rocked");
  await expect(report).not.toContainText("Not compared with the limit");
});

test("a set whose method nobody recorded is not compared, and says so", async ({ app }) => {
  const quick = await opened(app, setUp);
  await quick.goOn(() => quick.notDone("No time"));
  await quick.walk("Decide: Decision", { "Push, pull, read": (it) => it.round("6.3") });
  await expect(quick.main).toContainText("the method was not recorded at the dial");
  const report = await quick.report();
  await expect(report).toContainText("Not compared with the limit: the method was not recorded at the dial");
});

test("a second set that cannot be compared takes nothing from the first", async ({ app }) => {
  const quick = await opened(app, setUp, (entries) => {
    // Nothing but the play speaks: the hub is smooth and quiet, and so is the road.
    for (const { what } of entries) {
      const { step, reply } = what.answered ?? { step: "" };
      if (step === "spin_hand@front_left") reply.picked.pick = "smooth_quiet";
      if (step === "sign_swerve") reply.picked.pick = "no_change";
      if (step.startsWith("sign_") && reply.said) reply.said.answer = "no";
      if (step === "heat_here") reply.number.value.number = "97";
    }
  });
  const slightly = { "Push, pull, read": (it) => it.round("2.5") };
  await quick.walk("Decide: Decision", slightly);
  const reasons = quick.main.locator(".verdict__reasons");
  const word = quick.main.locator(".verdict__word b");
  await expect(word).toHaveText("REPLACE");
  const first = await reasons.textContent();
  await quick.goOn(() => quick.key("Take a second set").tap());
  await quick.walk("Measure: Dial setup", slightly);
  await quick.key("Set up another way").tap();
  await quick.key("Rock").tap();
  await expect(quick.alert("Spec is for another method: not compared")).toBeVisible();
  await quick.goOn(() => quick.key("Save this setup").tap());
  await quick.walk("Decide: Decision", slightly);
  await expect(word).toHaveText("REPLACE");
  await expect(reasons).toHaveText(first);
});

test("one cycle proves nothing, and the decision says what is missing", async ({ app }) => {
  const quick = await opened(app, setUp);
  const rounds = [(it) => it.round("6.3"), (it) => it.notDone("No time"), (it) => it.notDone("No time")];
  await quick.walk("Decide: Decision", { "Push, pull, read": (it) => rounds.shift()(it) });
  await expect(quick.main.locator(".verdict__reasons")).toContainText("Play of 0.0063 in exceeds the 0.0020 in limit, but");
  await expect(quick.main.locator(".verdict__reasons")).not.toContainText("by more than");
  await expect(quick.main).toContainText("Fewer than three cycles prove nothing");
});

test("the same again is the whole reading: 98.5 and then 2.0 is 3.5", async ({ app }) => {
  const quick = await opened(app, (what) => what.reading);
  const push = async () => {
    await quick.main.getByTitle("Number pad").tap();
    await quick.key("Dial was not at zero").tap();
    await quick.type("98.5");
    await quick.key("Save push reading").tap();
    await expect(quick.main).toContainText("Pushed in: 98.5");
  };
  await push();
  await expect(quick.key(/^Same:/)).toHaveCount(0);
  await quick.type("2.0");
  await expect(quick.main).toContainText(/0\.0035\sin/);
  await quick.goOn(() => quick.key("Save 2.0").tap());

  // The second round begins empty; nothing is the same before the hub was moved in it.
  await expect(app.getByText("Cycle 2 of 3")).toBeVisible();
  await expect(quick.key(/^(Save|Same:)/)).toHaveCount(0);
  await push();
  await quick.goOn(() => quick.key("Same: 98.5, then 2.0").tap());
  await expect(app.getByText("Cycle 3 of 3")).toBeVisible();
  // Another push is another reading.
  await quick.main.getByTitle("Number pad").tap();
  await quick.key("Dial was not at zero").tap();
  await quick.type("97");
  await quick.key("Save push reading").tap();
  await expect(quick.main).toContainText("Pushed in: 97");
  await expect(quick.key(/^Same:/)).toHaveCount(0);
  const report = await quick.report();
  const rows = report.getByRole("row").filter({ hasText: /^[12]98\.52\.0/ });
  await expect(rows).toHaveCount(2);
  for (const row of [0, 1]) await expect(rows.nth(row)).toContainText(/0\.089\smm/);
});

test("when the paced count has come to its end, the reading before can be said again", async ({ app }) => {
  await app.clock.install();
  const quick = await opened(app, (what) => what.reading?.round === 2);
  await expect(app.getByText("Cycle 2 of 3")).toBeVisible();
  await quick.key("Start the count").tap();
  await app.clock.runFor(10_000);
  await expect(quick.key(/^Same:/)).toHaveCount(0);
  await app.clock.runFor(12_000);
  await expect(quick.key("Same: 6.3")).toBeEnabled();
  // What is set by hand is kept as it was set.
  await quick.key("Plus one, +1").tap();
  await expect(quick.key(/^Same:/)).toHaveCount(0);
  await expect(quick.key("Save 1")).toBeEnabled();
});

test("a set on two dials is refused: before it is read, and where a file brings it", async ({ app }) => {
  const other = (entries) => { last(entries, "reading").dial = HUNDREDTH; };
  let quick = await opened(app, (what) => what.reading?.round === 2, (entries) => {
    for (const { what } of entries) if (what.reading) what.reading.dial = HUNDREDTH;
  });
  await expect(quick.alert("One set, one dial")).toBeVisible();
  await expect(quick.key(/^(Save|Needle)/)).toHaveCount(0);
  expect(await serious(app)).toEqual([]);
  await quick.goOn(() => quick.key("Read the set again").tap());
  await expect(app.getByText("Cycle 1 of 3")).toBeVisible();
  await quick.goOn(() => quick.round("6.3"));
  await expect(app.getByText("Cycle 2 of 3")).toBeVisible();

  quick = await opened(app, (what) => what.decided, other);
  await quick.isAt("Decide: Decision");
  await expect(quick.alert("the cycles were read on different dials")).toBeVisible();
  const report = await quick.report();
  await expect(report).toContainText("Not evaluated: the cycles were read on different dials. One set, one dial.");
});

/** From any step to the bench, and its first place read at 0. */
async function bench(quick) {
  await quick.key("More").tap();
  await quick.way("Runout").tap();
  await quick.isAt("Runout");
  await quick.key("Hub face").tap();
  await quick.main.getByRole("group", { name: "Both faces cleaned" }).getByRole("button", { name: "Yes" }).tap();
  await quick.key("Start reading").tap();
  await expect(quick.main.getByRole("heading", { name: /^Place 1 of 8/ })).toBeVisible();
  await quick.key("Save 0: zeroed here").tap();
  await expect(quick.main.getByRole("heading", { name: /^Place 2 of 8/ })).toBeVisible();
}

test("a lever dial with a short turn asks for its turns in a run, and one run has one dial", async ({ app }) => {
  const quick = await opened(app, (what) => what.reading, (entries) => { last(entries, "carried").dial = FINE; });
  await bench(quick);
  await expect(quick.key("Same: 0")).toBeVisible();
  await quick.key("Minus five, −5").tap();
  await expect(quick.main).toContainText("Short turn: choose how far it went.");
  await expect(quick.key(/^(Save|Same:) /)).toHaveCount(0);
  // 95 of 100 divisions of 0.002 mm: 0.010 mm back, or 0.190 mm on.
  await quick.key(/^0\.190\smm$/).tap();
  await quick.key("Save 95").tap();
  await expect(quick.main.getByRole("heading", { name: /^Place 3 of 8/ })).toBeVisible();
  // The same number may be a turn further on: its turns are asked too, before it is kept.
  await quick.key("Same: 95").tap();
  await expect(quick.main).toContainText("Short turn: choose how far it went.");
  await expect(quick.key(/^(Save|Same:) /)).toHaveCount(0);
  const report = await quick.report();
  await expect(report).toContainText(/0\.190\smm/);
});
