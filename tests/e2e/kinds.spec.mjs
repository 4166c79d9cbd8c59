// The longest job of another kind of wheel end than a bolted, driven hub: asked for at home, its specs
// typed, worked at the car from what the answers composed, and ended with nothing loose.
import { test, expect, open } from "./support/fixtures.mjs";
import { FAMILY, FIRST, SOURCE } from "./pages/bookings.mjs";
import { VAN } from "./pages/first.mjs";
import { Pack } from "./pages/pack.mjs";
import { Quick } from "./pages/quick.mjs";

/** The one black key of a step; where several steps stand on one screen that of the last. */
const primary = (quick) => quick.main.locator("fieldset .key--primary").last().tap();

const torque = (value) => async (pack) => {
  await pack.card(value, "lb-ft", { source: (await pack.step()) === pack.first ? SOURCE : undefined });
};

const play = (pack) => pack.card("2.0", "thou");
const brake = { "Spec: bracket bolts": torque("80"), "Spec: guide pin bolts": torque("22") };

/** Of each kind: its key, what else is chosen, the corner, its specs in their order, the readings, and
 * steps that it must come to. */
const KINDS = {
  "a pressed-in bearing on a car with lug bolts": {
    choose: ["Pressed-in bearing, driven", "Bolts"],
    corner: "Front left",
    specs: {
      "Spec: axle nut": (pack) => pack.card("180", "lb-ft", { position: "In the air, brake held", source: SOURCE }),
      "Spec: strut bolts": torque("120"), "Spec: ball joint": torque("60"), "Spec: tie rod end": torque("40"),
      ...brake, "Spec: lug bolts": torque("85"), "Spec: play limit": play,
    },
    before: "6", after: "0.5",
    come: [
      "Loosen lug bolts", "Knuckle off", "Hub out first", "Bearing out", "Knuckle bore", "Encoder to the sensor",
      "Press the bearing in", "Press the hub in", "Knuckle on", "Lug bolts", "Alignment",
    ],
    never: ["Loosen lug nuts", "Lug nuts"],
  },
};

/** What is answered at the steps of these kinds. */
const ANSWERS = {
  "Lug bolts tight": "All tight",
  "Nut lock as found": "Locked",
  "Spindle nut as found": "Tight, not touched",
  "Base on the axle": "It does not move",
  "Slot for the cotter": "A slot is in line",
  "Wash and look": (quick) => quick.all(),
  "Which rollers are new": "Outer only",
  "Knuckle bore": (quick) => quick.all(),
  "Photo: encoder side": (quick) => quick.notDone("No time"),
  "Encoder to the sensor": "It faces the sensor",
  "Alignment": "It was said",
};
const BY_KEY = [
  "Loosen lug nuts", "Loosen lug bolts", "Release parking brake", "Caliper up", "Back off the shoes", "Drum off", "Cap off",
  "Clean for the dial", "Brake off", "Free sensor wire", "Spindle nut off", "Hub off the spindle", "Hub out", "Knuckle off",
  "Hub out first", "Snap ring out", "Bearing out", "Clean the seat", "Install the hub", "Pack the grease", "New seal",
  "Hub on the spindle", "Press the bearing in", "Snap ring in", "Press the hub in", "Knuckle on", "Sensor wire back",
  "Strut bolts", "Ball joint", "Tie rod end", "Spindle nut", "Seat and set the nut", "Lock nut", "Rotor on", "Drum on",
  "Set the shoes", "Cap on", "New cotter", "Stake the nut", "Bracket on", "Caliper down", "Set parking brake", "Wheel on",
  "Lug bolts",
];

/** From the booking to the end, at what the answers composed. */
async function whole(page, host, kind) {
  test.setTimeout(150_000);
  page.setDefaultTimeout(15_000);
  await open(page, host.url, VAN);
  const pack = new Pack(page);
  await pack.begin();
  await pack.paste(FIRST.message);
  await page.locator("summary").filter({ hasText: "Wheel end: Bolted hub, driven" }).tap();
  for (const choice of kind.choose) await pack.key(choice).first().tap();
  await expect(page.locator("summary").filter({ hasText: `Wheel end: ${kind.choose[0]}` })).toBeVisible();
  await pack.type("Vehicle and years", FAMILY);
  await pack.key("Facts are right").tap();
  await pack.at("Corners");
  await page.getByRole("button", { name: kind.corner }).tap();
  await pack.key("These corners").tap();
  [pack.first] = Object.keys(kind.specs);
  for (const [spec, type] of Object.entries(kind.specs)) {
    await pack.at(spec);
    await type(pack);
  }
  await pack.price("480", "95");
  await pack.kit();
  await pack.leave();

  const quick = new Quick(page);
  const answers = {
    ...Object.fromEntries(BY_KEY.map((step) => [step, primary])),
    ...ANSWERS,
    "Measure: Push, pull, read": (it) => it.round(kind.before),
    "Verify: Push, pull, read": (it) => it.round(kind.after),
  };
  await quick.walk("Hand over: Report and file", answers);
  await expect(page.getByRole("link", { name: /loose$/ })).toHaveText(/^0/);
  await quick.finish("Finished");
  const report = await quick.report();
  await expect(report).toContainText("REPLACED, safe to drive");

  // What was asked is what the answers composed, and all of it was done.
  await page.evaluate(() => (location.hash = location.hash.replace(/report$/, "where")));
  const steps = page.locator(".where__step");
  await expect(steps.first()).toBeVisible();
  for (const step of kind.never) await expect(steps.filter({ hasText: new RegExp(`^${step}`) })).toHaveCount(0);
  for (const step of kind.come) {
    await expect(steps.filter({ hasText: new RegExp(`^${step}`) }).first(), step).toContainText("Done");
  }
}

test("one job of a pressed-in bearing on a car with lug bolts", async ({ page, host, faults: _ }) => {
  await whole(page, host, KINDS["a pressed-in bearing on a car with lug bolts"]);
});
