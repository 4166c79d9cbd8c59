// The run-out bench by touch: a rotor is read place by place, the browser dies in between, and in
// the end every stud is known.
import { test, expect, kept, ready } from "./support/fixtures.mjs";
import { serious } from "./support/audit.mjs";
import { Profile } from "./support/kill.mjs";
import { Quick } from "./pages/quick.mjs";

/** Steps of the needle from where it stood last, before each place is kept; without one it is the
 * same again, or the zero of the first place. High at 90°, three divisions either way. */
const WOBBLE = ["", "++", "+", "-", "--", "--", "-", "+"];
/** The same from another stud, lower: one division either way. */
const LOWER = ["", "+", "", "", "-", "-", "", ""];
const KEYS = { "+": "Plus one, +1", "-": "Minus one, −1" };

class Bench extends Quick {
  /** From any step: More, then the run-out. */
  async openBench() {
    await this.key("More").tap();
    await this.way("Runout").tap();
    await this.isAt("Runout");
  }

  async setUp(surface, stud) {
    await this.key(surface).tap();
    await this.main.getByRole("group", { name: "Hole 1 of the rotor sits on lug" })
      .getByRole("button", { name: stud, exact: true }).tap();
    await this.main.getByRole("group", { name: "Both faces cleaned" }).getByRole("button", { name: "Yes" }).tap();
    await this.key("Start reading").tap();
  }

  /** Reads these places from `first` on, one number at a time. */
  async read(steps, first = 1, of = 8) {
    for (const [nth, step] of steps.entries()) {
      const title = this.main.getByRole("heading", { name: `Place ${first + nth} of ${of}, ` });
      await expect(title).toBeVisible();
      for (const sign of step) await this.key(KEYS[sign]).tap();
      await this.key(/^(Save|Same:) /).tap();
      await expect(title).toHaveCount(0);
    }
  }

  /** The manufacturer's limit in millimeters, typed with the source that is offered. */
  async limit(mm) {
    await this.key("Type the limit").tap();
    await this.main.getByLabel("Value").fill(mm);
    await this.main.getByRole("group", { name: "Unit" }).getByRole("button", { name: "mm", exact: true }).tap();
    await this.key("Save the limit").tap();
  }

  places(count) {
    return this.main.getByRole("group", { name: "How many places?" })
      .getByRole("button", { name: count, exact: true }).tap();
  }

  says(text) {
    return expect(this.main.getByText(text)).toBeVisible();
  }
}

async function start(context, url) {
  const page = context.pages()[0] ?? await context.newPage();
  page.setDefaultTimeout(15_000);
  await page.goto(url);
  await ready(page);
  return page;
}

test("a rotor read in two positions shows its high spot and its best lug, and a kill loses nothing", async ({ host }) => {
  test.setTimeout(150_000);
  const profile = await Profile.make();
  try {
    let page = await start(await profile.open(), host.url);
    await kept(page);
    let bench = new Bench(page);
    await bench.practice();
    await bench.openBench();
    await bench.setUp("Rotor on the hub", "1");
    await bench.read(WOBBLE.slice(0, 5));
    expect(await serious(page)).toEqual([]);
    const place = page.url();

    await profile.kill();
    page = await start(await profile.open(), place);
    bench = new Bench(page);
    await bench.read(WOBBLE.slice(5), 6);
    await bench.says(/^Runout .* \(95.% from .* to .*\), a wobble, high on one side: no limit looked up\.$/);
    await bench.says(/^High 90° on from lug 1 \(± \d+°\), between lugs 2 and 3\.$/);
    await bench.says("Look up the manufacturer's limit.");
    await expect(bench.main.getByRole("img", { name: /^Readings around the face/ })).toBeVisible();

    await bench.key("Another run").tap();
    await bench.setUp("Rotor on the hub", "3");
    await bench.read(LOWER);
    await bench.says("The rotor on each lug");
    const positions = bench.main.getByRole("listitem").filter({ hasText: /^Hole 1 on lug/ });
    await expect(positions).toHaveCount(5);
    await expect(positions.first()).toContainText("best");
    await expect(positions.filter({ hasText: "Hole 1 on lug 3" })).toContainText("it sits here now");
    expect(await serious(page)).toEqual([]);

    await page.reload();
    await ready(page);
    await expect(positions).toHaveCount(5);
  } finally {
    await profile.remove();
  }
});

test("a place begins with no number, and the same again is one tap that names it", async ({ app }) => {
  const bench = new Bench(app);
  await bench.practice();
  await bench.openBench();
  await bench.setUp("Rotor on the hub", "1");
  const number = bench.main.locator("output");
  await expect(number).toHaveText("–");
  await expect(bench.key(/^(Save|Same:) /)).toHaveText(["Save 0: zeroed here"]);
  await bench.read(["++"]);

  await expect(number).toHaveText("–");
  await bench.says("Last 2");
  await expect(bench.key(/^(Save|Same:) /)).toHaveText(["Same: 2"]);
  await bench.key("Same: 2").tap();

  // The keys step from where the needle stood last; what they set is kept by its own key.
  await expect(bench.main.getByRole("heading", { name: "Place 3 of 8, " })).toBeVisible();
  await bench.key("Plus one, +1").tap();
  await expect(number).toHaveText("3");
  await expect(bench.key(/^(Save|Same:) /)).toHaveText(["Save 3"]);
});

test("a limit is typed with its source, a place is skipped, another is left out", async ({ app }) => {
  test.setTimeout(90_000);
  const bench = new Bench(app);
  await bench.practice();
  await bench.openBench();
  await bench.setUp("Rotor on the hub", "1");
  await bench.read(WOBBLE.slice(0, 6));
  await bench.key("Skip this place").tap();
  await bench.read(["+"], 8);
  await bench.says(/^Runout .*, a wobble, high on one side: /);

  await bench.limit("0.01");
  await bench.says(/over its limit of 0\.01/);

  const place = bench.main.getByRole("button", { name: /^Place 3,/ });
  await place.tap();
  await bench.key("Bolt hole").tap();
  await expect(place).toContainText("Bolt hole");
  await expect(bench.main.getByRole("button", { name: /^Place 7,/ })).toContainText("skipped");
  const report = await bench.report();
  await expect(report.getByRole("heading", { name: "Runout" })).toBeVisible();
  await expect(report.getByRole("row").filter({ hasText: "Bolt hole" })).toHaveCount(1);
});

test("places stand at typed angles, and two places never at one", async ({ app }) => {
  test.setTimeout(90_000);
  const bench = new Bench(app);
  await bench.practice();
  await bench.openBench();
  await bench.key("Typed angles").tap();
  await bench.places("5");
  await bench.setUp("Rotor on the hub", "1");
  const asked = (place) => bench.main.getByRole("heading", { name: `Place ${place} of 5: at which angle?` });
  await expect(asked(1)).toBeVisible();
  expect(await serious(app)).toEqual([]);
  await bench.key("Read the needle here").tap();
  await bench.read([""], 1, 5);

  await expect(asked(2)).toBeVisible();
  await bench.type("360");
  await bench.key("Read the needle here").tap();
  await expect(bench.alert("Place 1 has this angle.")).toBeVisible();
  for (let digit = 0; digit < 3; digit += 1) await bench.main.locator(".pad__key").last().tap();
  await bench.type("47.5");
  await bench.key("Read the needle here").tap();
  await expect(bench.main.getByRole("heading", { name: "Place 2 of 5, 47.5° on from lug 1" })).toBeVisible();
  await bench.read(["+"], 2, 5);
  for (const [place, angle] of [[3, "140"], [4, "210"], [5, "290"]]) {
    await expect(asked(place)).toBeVisible();
    await bench.type(angle);
    await bench.key("Read the needle here").tap();
    await bench.read([""], place, 5);
  }
  await bench.says(/^Runout .*: no limit looked up\.$/);
  const report = await bench.report();
  await expect(report.getByRole("row").filter({ hasText: "47.5°" })).toHaveCount(1);
  await expect(report.getByText("Typed angles")).toBeVisible();
});

/** Types a thickness over what stands on the pad, and keeps it. */
async function measures(bench, place, of, number) {
  await expect(bench.main.getByRole("heading", { name: `Place ${place} of ${of}, ` })).toBeVisible();
  await bench.type(number);
  await bench.key("Save").tap();
}

test("a rotor is measured at the places of its run-out, a reload loses nothing, and both limits judge it", async ({ host }) => {
  test.setTimeout(150_000);
  const profile = await Profile.make();
  try {
    const page = await start(await profile.open(), host.url);
    await kept(page);
    const bench = new Bench(page);
    await bench.practice();
    await bench.openBench();
    await bench.key("Typed angles").tap();
    await bench.places("6");
    await bench.setUp("Rotor on the hub", "1");
    await bench.key("Read the needle here").tap();
    await bench.read([""], 1, 6);
    await bench.type("47.5");
    // What is half typed outlives a reload, and a place can be skipped before it has its angle.
    await page.reload();
    await ready(page);
    await expect(bench.main.locator("output")).toHaveText("47.5");
    await bench.key("Read the needle here").tap();
    await bench.read(["+"], 2, 6);
    await bench.key("Skip this place").tap();
    for (const [place, angle] of [[4, "180"], [5, "240"], [6, "300"]]) {
      await expect(bench.main.getByRole("heading", { name: `Place ${place} of 6: at which angle?` })).toBeVisible();
      await bench.type(angle);
      await bench.key("Read the needle here").tap();
      await bench.read([""], place, 6);
    }
    await expect(bench.main.getByRole("button", { name: /^Place 3, –/ })).toContainText("skipped");

    await bench.way("Rotor thickness").tap();
    await bench.isAt("Rotor thickness");
    await bench.key(/^0\.001.mm$/).tap();
    expect(await serious(page)).toEqual([]);
    await bench.key("Start reading").tap();
    // 22.020 mm and 0.010 mm times the cosine of each angle.
    await measures(bench, 1, 6, "22.030");
    await expect(bench.main.getByRole("heading", { name: "Place 2 of 6, 47.5° on from lug 1" })).toBeVisible();
    await bench.type("22.02");
    await bench.says(/^From the first place: /);
    await page.reload();
    await ready(page);
    await measures(bench, 2, 6, "7");
    await bench.key("Save").tap();
    await expect(bench.alert(/./)).toBeVisible();
    await bench.key("Skip this place").tap();
    await measures(bench, 4, 6, "22.010");
    for (const place of [5, 6]) {
      await expect(bench.main.getByRole("heading", { name: `Place ${place} of 6, ` })).toBeVisible();
      await bench.key("Skip this place").tap();
    }
    await expect(bench.alert("3 places were measured.")).toBeVisible();
    const again = async (place, number) => {
      await bench.main.getByRole("button", { name: new RegExp(`^Place ${place},`) }).tap();
      await measures(bench, place, 6, number);
    };
    await again(3, "22.015");
    await bench.says(/^Thinnest .*, at place 4: minimum thickness not looked up\.$/);
    await bench.says(/^Too few readings to tell runout from scatter\. Measure at least 1 more places\.$/);
    await again(5, "22.015");
    await again(6, "22.025");
    await bench.says(/^It varies by .* \(95.% from .* to .*\): limit not looked up\.$/);

    for (const [key, value] of [["Enter the discard thickness", "22.2"], ["Enter the maximum variation", "0.013"]]) {
      await bench.key(key).tap();
      await bench.main.getByLabel("Value").fill(value);
      await bench.main.getByRole("group", { name: "Unit" }).getByRole("button", { name: "mm", exact: true }).tap();
      await bench.key("Save the limit").tap();
    }
    await bench.says(/below its minimum thickness of 22\.2.mm, proven\.$/);
    await bench.says(/over its limit of 0\.013.mm, proven\.$/);
    await bench.says(/Too thin to go back on the road/);
    expect(await serious(page)).toEqual([]);
    const report = await bench.report();
    await expect(report.getByRole("heading", { name: "Rotor thickness", exact: true })).toBeVisible();
    await expect(report.getByRole("row").filter({ hasText: "22.027" })).toHaveCount(1);
  } finally {
    await profile.remove();
  }
});

test("a hub's face and the rotor on it tell every stud where both distances are typed", async ({ app }) => {
  test.setTimeout(120_000);
  const bench = new Bench(app);
  await bench.practice();
  await bench.openBench();
  for (const [surface, radius, steps] of [["Hub face", "2.8", WOBBLE], ["Rotor on the hub", "5", WOBBLE]]) {
    await bench.main.getByText("Tip's distance from the axle's center", { exact: true }).tap();
    await bench.main.getByRole("textbox", { name: /^Tip's distance/ }).fill(radius);
    await bench.key(surface).tap();
    await bench.main.getByRole("group", { name: "Both faces cleaned" }).getByRole("button", { name: "Yes" }).tap();
    await bench.key("Start reading").tap();
    await bench.read(steps);
    if (surface === "Hub face") await bench.key("Another run").tap();
  }
  await bench.says(/^Computed from the hub's face, scaled to the rotor's distance/);
  await expect(bench.main.getByRole("listitem").filter({ hasText: /^Hole 1 on lug/ })).toHaveCount(5);
});

/** Reads a rotor that was cleaned, at so many places, against a limit of 0.05 mm. */
async function against(app, steps) {
  const bench = new Bench(app);
  await bench.practice();
  await bench.openBench();
  await bench.places(`${steps.length}`);
  await bench.setUp("Rotor on the hub", "1");
  await bench.read(steps, 1, steps.length);
  await bench.limit("0.05");
  return bench;
}

test("five places of scatter name no new part and ask for more places", async ({ app }) => {
  test.setTimeout(90_000);
  // 0, 3, -1, 2, 0 divisions: a wobble and a warp of 0.10 mm meet all five.
  const bench = await against(app, ["", "+++", "----", "+++", "--"]);
  await bench.says(/^Runout .* its limit of 0\.05.mm, not proven\.$/);
  await bench.says(/These readings do not show it\. .* read again at more places\.$/);
  await expect(bench.main.getByText(/new part|a warp/)).toHaveCount(0);
});

test("a flat face that is read with scatter is not judged over", async ({ app }) => {
  test.setTimeout(90_000);
  // 0, 1, -1, 1, 0, -1, 1, -1 divisions: a range of 0.051 mm, and no wave in it.
  const bench = await against(app, ["", "+", "--", "++", "-", "-", "++", "--"]);
  await bench.says(/^Runout 0.* within its limit of 0\.05.mm, not proven\.$/);
  await expect(bench.main.getByText(/over its limit/)).toHaveCount(0);
});
