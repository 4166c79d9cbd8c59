// One real job from the booking message to the file, on a phone without a signal, by touch.
//
// The screen counts every contact and every typed character; the limits are those of a person with
// gloves in a driveway, and are not to be raised.
import { readFileSync } from "node:fs";
import Ajv2020 from "ajv/dist/2020.js";
import { test, expect, kept, open, ready } from "./support/fixtures.mjs";
import { FAMILY, FIGURES, FIRST, SECOND } from "./pages/bookings.mjs";
import { VAN } from "./pages/first.mjs";
import { Hands } from "./pages/hands.mjs";
import { CARDS, Pack } from "./pages/pack.mjs";
import { Quick } from "./pages/quick.mjs";

const MOST = { pack: 35, packKnown: 20, car: 95, carLetters: 0, carDigits: 12 };

/** Off or loosened when the hub is out: 5 lug nuts, wheel, 2 pins, caliper, pads, stake, axle nut,
 * 2 bracket bolts, bracket, rotor, sensor wire, 4 hub bolts, hub, plate. */
const ALL_LOOSE = 5 + 1 + 2 + 1 + 1 + 1 + 1 + 2 + 1 + 1 + 1 + 4 + 1 + 1;

/** Fasteners that end at their card, each by a tap of its own. */
const BY_CARD = {
  hub_bolts: 4, bracket_bolts: 2, axle_nut: 1, caliper_pins: 2, lug_nuts: 5,
};

/** From the list of jobs to the car, with everything looked up for a new family. */
async function packNew(page, hands) {
  const pack = new Pack(page);
  await pack.begin();
  await hands.paste(async () => {
    await page.keyboard.insertText(FIRST.message);
  });
  for (const [label, text] of Object.entries(FIRST.found)) await expect(pack.found(label)).toHaveText(text);
  await expect(pack.found("Complaint, word for word")).toHaveText(FIRST.complaint);
  await expect(page.getByText("The check digit is right.")).toBeVisible();
  await pack.key("Save the message").tap();
  await pack.keepVehicle(FAMILY);
  await pack.corners("Front left");
  for (const card of CARDS) {
    await pack.at(card);
    const [value, unit, rest] = FIGURES[card];
    await pack.card(value, unit, rest);
  }
  await pack.price("480", "95");
  await pack.kit();
  await expect(pack.ready("This dial")).toContainText(/can prove/);
  await pack.leave();
}

/** The same for the second car of the family: every card is offered again. */
async function packKnown(page, hands) {
  const pack = new Pack(page);
  await pack.begin();
  await hands.paste(async () => {
    await page.keyboard.insertText(SECOND.message);
  });
  await pack.key("Save the message").tap();
  await pack.knownFamily(FAMILY);
  await pack.corners("Front left");
  for (const card of CARDS) {
    await pack.at(card);
    await pack.lookedUpAgain();
  }
  await pack.price();
  await pack.kit();
  await pack.leave();
}

/** What this job answers at the car where it is not what an uneventful one answers. */
function answers(page, hands, quick) {
  const camera = () => hands.camera();
  const swing = (felt, toTheEnd = false) => async () => {
    // Some beats to read and take hold, five pushing, five pulling, and nothing to touch.
    if (toTheEnd) {
      await expect(page.getByText("PUSH, swing")).toBeVisible();
      await expect(page.getByText("PULL, swing")).toBeVisible({ timeout: 13_000 });
      await expect(quick.key("Start the count")).toBeVisible({ timeout: 8_000 });
    }
    await quick.key(felt).tap();
  };
  const round = (keys, keep) => async () => {
    for (const key of keys) await quick.key(key).tap();
    await quick.key(keep).tap();
  };
  // Each round begins empty; what is the same again is said once the hub was pushed and pulled.
  const counted = async () => {
    await quick.key("Start the count").tap();
    await expect(quick.key("Same: 6.5")).toBeVisible({ timeout: 25_000 });
    await quick.key("Same: 6.5").tap();
  };
  const before = [
    round(["Plus five, +5", "Plus one, +1", "½"], "Save 6.5"), counted, round(["Plus five, +5", "Plus one, +1"], "Save 6"),
  ];
  const after = [1, 2, 3].map(() => round(["½"], "Save 0.5"));
  return {
    "Jack and jack stand": camera,
    "Rock: 12 and 6": swing("Nothing"),
    "Rock: 9 and 3": swing("Nothing"),
    "Push and pull": swing("Just felt", true),
    "Measure: Push, pull, read": () => before.shift()(),
    "Decision": "Show the customer",
    "Customer's answer": async () => {
      await expect(page.getByText("This wheel bearing failed our check and should be replaced.")).toBeVisible();
      await expect(quick.key(/^Yes, for/)).toBeDisabled();
      await hands.sign();
      await quick.key(/^Yes, for/).tap();
    },
    "Axle nut off": camera,
    "New next to old": camera,
    "Axle nut": "Axle nut: 60°",
    "Verify: Push, pull, read": () => after.shift()(),
    "Re-torque due": async () => {
      await hands.sign();
      await quick.key("Save the signature").tap();
    },
  };
}

/** The entries of an exported file, after it was held against the published schema. */
function entriesOf(path) {
  const schema = JSON.parse(readFileSync(new URL("../../public/schema/job-1.schema.json", import.meta.url), "utf8"));
  // The schema says "object" once, above the places that say what is in it.
  const valid = new Ajv2020({ allErrors: true, strictTypes: false }).compile(schema);
  const file = JSON.parse(readFileSync(path, "utf8"));
  valid(file);
  expect(valid.errors, "what the schema says of the exported file").toBeNull();
  expect(file.logs).toHaveLength(1);
  return file.logs[0].entries.map(({ what }) => what);
}

/** The exported entries hold each reading, each fastener, each picture and each answer of the customer. */
function holdsEverything(entries) {
  const of = (kind) => entries.flatMap((what) => (kind in what ? [what[kind]] : []));
  const pulls = (when) => of("reading")
    .filter((reading) => reading.when === when && reading.side === "pull")
    .map(({ round, divisions }) => [round, divisions]);
  expect(pulls("before")).toEqual([[1, "6.5"], [2, "6.5"], [3, "6"]]);
  expect(pulls("after")).toEqual([[1, "0.5"], [2, "0.5"], [3, "0.5"]]);

  const numbers = (group) => of("moved")
    .filter(({ step, to }) => step.startsWith("turn_") && to === "done")
    .flatMap(({ items }) => items).filter((item) => item.group === group).map(({ number }) => number);
  for (const [group, count] of Object.entries(BY_CARD)) {
    const all = Array.from({ length: count }, (_, place) => place + 1);
    expect(numbers(group).sort(), `taps on ${group}`).toEqual(all);
  }
  expect(of("photo").map(({ step }) => step))
    .toEqual(["stand_photo@front_left", "sensor_photo@front_left", "compare_photo@front_left"]);
  expect(of("consent").map(({ scope, yes, how }) => [scope, yes, how]))
    .toEqual([["teardown", true, "spoken"], ["repair", true, "written"]]);
  expect(of("decided").map(({ decision }) => decision)).toEqual(["replace"]);
  expect(of("dial_setup").map(({ when, way }) => [when, way.method, way.place, way.rig]))
    .toEqual(["before", "after"].map((when) => [when, "axial", "pilot", "caliper_up"]));
  // What one tap says of several steps is kept for each of them.
  const answered = of("answered").map(({ step }) => step.replace("@front_left", ""));
  for (const step of [
    "lift_stand", "loosen_lug_nuts", "shove.3", "loosen_axle_nut", "shove.7", "strip_nut", "strip_brake", "gauge_clean", "rig_push", "compare", "seat", "offer",
    "route_sensor", "rotor_on", "bracket_on", "caliper_on", "pedal", "nut_on", "caliper_down", "stake", "pedal.2",
    "wheel_on", "lower", "clear", "tools", "retorque", "report", "sign_speed", "sign_swerve", "sign_coast", "sign_surface", "sign_brake",
  ]) expect(answered, step).toContain(step);
  expect(of("ended").map(({ ending }) => ending)).toEqual(["finished"]);
}

/** The report says what was found, from which readings, and how it was afterwards. */
async function reports(report) {
  // The mean of 6.5, 6.5 and 6 thousandths of an inch, and of three times 0.5.
  await expect(report).toContainText(/The hub moved 0\.0063\sin \(0\.16\smm\) before the repair and 0\.0005\sin \(0\.01\smm\) after it\./);
  await expect(report).toContainText(/The limit is 0\.0020\sin \(0\.05\smm\) \(Marten service sheet 7, page 41/);
  await expect(report.getByText("Front left: REPLACE").first()).toBeVisible();
  await expect(report.getByText("REPLACED, safe to drive")).toBeVisible();
  await expect(report).toContainText(FIRST.complaint);
  await expect(report).toContainText(/180\slb-ft \+ 60°/);
}

test("the whole job in a driveway without a signal, its contacts counted", async ({ page, host }) => {
  test.setTimeout(150_000);
  page.setDefaultTimeout(15_000);
  const hands = await Hands.on(page);
  await open(page, host.url, VAN);
  await kept(page);
  await host.stop();
  await page.reload();
  await ready(page);

  hands.start();
  await packNew(page, hands);
  console.log(`Prep: ${hands.told}`);
  expect.soft(hands.contacts, "contacts in Pack").toBeLessThanOrEqual(MOST.pack);

  const quick = new Quick(page);
  let most = 0;
  const loose = page.getByRole("link", { name: /loose$/ });
  hands.start();
  await quick.walk("Hand over: Report and file", answers(page, hands, quick), async () => {
    if (await loose.count()) most = Math.max(most, Number.parseInt(await loose.textContent(), 10));
  });
  expect(most).toBe(ALL_LOOSE);
  await expect(loose).toHaveText(/^0/);
  const download = page.waitForEvent("download");
  await quick.key("Export and end: Finished").tap();
  await expect(page.getByText("The job has ended.")).toBeVisible();
  await expect(page.getByText("Everything is at spec and proved. The car may be driven.")).toBeVisible();
  console.log(`At the car: ${hands.told}`);
  expect.soft(hands.contacts, "contacts at the car").toBeLessThanOrEqual(MOST.car);
  expect.soft(hands.letters, "letters at the car").toBeLessThanOrEqual(MOST.carLetters);
  expect.soft(hands.digits, "digits at the car").toBeLessThanOrEqual(MOST.carDigits);

  holdsEverything(entriesOf(await (await download).path()));

  await reports(await quick.report());

  await page.evaluate(() => { location.hash = "#/"; });
  hands.start();
  await packKnown(page, hands);
  console.log(`Pack, known family: ${hands.told}`);
  expect.soft(hands.contacts, "contacts in Pack, family known").toBeLessThanOrEqual(MOST.packKnown);
});
