// The browser dies in the middle of the work, at once and with everything in it; opened again on
// the same phone, without a signal, the job stands at the same step with every tap that read as done.
import { test, expect } from "./support/fixtures.mjs";
import { before as cut, fileOf, sampleEntries } from "./support/jobs.mjs";
import { drafts } from "./support/journal.mjs";
import { WORN, exported, killed, phone, turned } from "./support/revived.mjs";
import { Pack } from "./pages/pack.mjs";
import { Quick } from "./pages/quick.mjs";

test("killed in the middle of Gauge, the phone comes back to round 3", async ({ host }) => {
  test.setTimeout(120_000);
  await phone(host, async ({ profile, page }) => {
    const quick = new Quick(page);
    await openUntil(quick, "Measure: Push, pull, read", (what) => what.reading);
    const before = await exported(page, quick);
    await quick.isAt("Measure: Push, pull, read");
    for (const key of ["Plus five, +5", "Plus one, +1", "Save 6"]) await quick.key(key).tap();
    await expect(page.getByText("Cycle 2 of 3")).toBeVisible();
    for (const key of ["Plus five, +5", "Plus one, +1", "½", "Save 6.5"]) await quick.key(key).tap();
    await expect(page.getByText("Cycle 3 of 3")).toBeVisible();

    const again = await killed(profile, host);
    await again.quick.isAt("Measure: Push, pull, read");
    await expect(again.page.getByText("Cycle 3 of 3")).toBeVisible();
    // The round begins empty: no key answers for what was not looked at.
    await expect(again.quick.key(/^(Save|Same:)/)).toHaveCount(0);
    const after = await exported(again.page, again.quick);
    expect(after.slice(0, before.length)).toEqual(before);
    expect(after.slice(before.length).map(({ what }) => [what.reading.round, what.reading.side, what.reading.divisions]))
      .toEqual([[1, "pull", "6"], [2, "pull", "6.5"]]);
  });
});

test("killed after the third lug nut, the pass starts again at 1 and forgets no tap", async ({ host }) => {
  test.setTimeout(150_000);
  await phone(host, async ({ profile, page }) => {
    const quick = new Quick(page);
    await quick.practice();
    await quick.walk("Torque: Lug nuts", WORN);
    const before = await exported(page, quick);
    for (const nut of [1, 2, 3]) await quick.key(`Lug nut ${nut} clicked`).tap();
    await expect(quick.key("Lug nut 4 clicked")).toBeVisible();

    const again = await killed(profile, host);
    await again.quick.isAt("Torque: Lug nuts");
    await expect(again.quick.alert("The pass was interrupted. Start again at 1")).toBeVisible();
    await expect(again.quick.key("Lug nut 4 clicked")).toHaveCount(0);
    const after = await exported(again.page, again.quick);
    expect(after.slice(0, before.length)).toEqual(before);
    expect(turned(after, "turn_lug_nuts")).toEqual([1, 2, 3]);

    await again.quick.key("Start again at 1").tap();
    for (const nut of [1, 2, 3, 4, 5]) await again.quick.key(`Lug nut ${nut} clicked`).tap();
    await again.quick.isAt("Verify: Pedal first");
    expect(turned(await exported(again.page, again.quick), "turn_lug_nuts")).toEqual([1, 2, 3, 1, 2, 3, 4, 5]);
  });
});

test("killed between torque and angle, the axle nut asks for its angle", async ({ host }) => {
  test.setTimeout(150_000);
  await phone(host, async ({ profile, page }) => {
    const quick = new Quick(page);
    await openUntil(quick, "Torque: Axle nut on", (what) => what.answered?.step.startsWith("nut_on"));
    await addAngle(page, quick);
    const before = await exported(page, quick);
    await quick.key("Axle nut clicked").tap();
    await expect(quick.key("Axle nut: 60°")).toBeVisible();

    const again = await killed(profile, host);
    await again.quick.isAt("Torque: Axle nut");
    await expect(again.quick.key("Axle nut: 60°")).toBeEnabled();
    await expect(again.quick.key("Axle nut clicked")).toHaveCount(0);
    const after = await exported(again.page, again.quick);
    expect(after.slice(0, before.length)).toEqual(before);
    // The tap that turns the nut also says that it was put on by hand.
    expect(after.slice(before.length).map(({ what }) => what.moved?.step ?? what.answered?.step))
      .toEqual(["nut_on@front_left", "nut_on@front_left", "turn_axle_nut@front_left"]);
    const loose = again.page.getByRole("link", { name: /loose$/ });
    const count = Number.parseInt(await loose.textContent(), 10);
    await again.quick.key("Axle nut: 60°").tap();
    await again.quick.isAt("Verify: Caliper up again");
    await expect(loose).toHaveText(new RegExp(`^${count - 1}\\D`));
  });
});

test("killed with the needle half set, the phone comes back to the number and to the push", async ({ host }) => {
  test.setTimeout(120_000);
  await phone(host, async ({ profile, page }) => {
    const quick = new Quick(page);
    await openUntil(quick, "Measure: Push, pull, read", (what) => what.reading);
    for (const key of ["Plus five, +5", "Plus one, +1"]) await quick.key(key).tap();
    await expect(quick.key("Save 6")).toBeEnabled();
    await expect.poll(() => half(page)).toContain("6");

    let again = await killed(profile, host);
    await again.quick.isAt("Measure: Push, pull, read");
    await expect(again.quick.key("Save 6")).toBeEnabled();
    await again.quick.goOn(() => again.quick.key("Save 6").tap());

    // The push of a dial that was not at zero is an entry as soon as it is kept.
    await again.quick.main.getByTitle("Number pad").tap();
    await again.quick.key("Dial was not at zero").tap();
    await again.quick.type("98.5");
    await expect.poll(() => half(again.page)).toContain("98.5");
    again = await killed(profile, host);
    await again.quick.isAt("Measure: Push, pull, read");
    await again.quick.key("Save push reading").tap();
    await expect(again.quick.main).toContainText("Pushed in: 98.5");
    await again.quick.type("2.0");
    await expect.poll(() => half(again.page)).toContain("2.0");

    again = await killed(profile, host);
    await again.quick.isAt("Measure: Push, pull, read");
    await expect(again.quick.main).toContainText(/0\.0035\sin/);
    await again.quick.goOn(() => again.quick.key("Save 2.0").tap());
    await expect(again.page.getByText("Cycle 3 of 3")).toBeVisible();
    expect(await half(again.page)).toEqual([]);
    const read = (await exported(again.page, again.quick)).flatMap(({ what }) => what.reading ?? []);
    expect(read.map(({ round, side, divisions }) => [round, side, divisions]))
      .toEqual([[1, "pull", "6"], [2, "push", "98.5"], [2, "pull", "2.0"]]);
  });
});

test("loaded again with the needle half set, the number is there", async ({ app }) => {
  const quick = new Quick(app);
  await openUntil(quick, "Measure: Push, pull, read", (what) => what.reading);
  await quick.key("½").tap();
  await app.reload();
  await expect(quick.key("Save 0.5")).toBeEnabled();
});

test("killed in the middle of the angle, the swings that were counted are there", async ({ host }) => {
  test.setTimeout(150_000);
  await phone(host, async ({ profile, page }) => {
    const quick = new Quick(page);
    await openUntil(quick, "Torque: Axle nut on", (what) => what.answered?.step.startsWith("nut_on"));
    await addAngle(page, quick);
    await quick.key("Axle nut clicked").tap();
    for (let swing = 0; swing < 3; swing += 1) await quick.key(/^Swung/).tap();
    await expect(page.getByText("45° of 60°")).toBeVisible();
    await expect.poll(() => half(page)).toContain("3");

    const again = await killed(profile, host);
    await again.quick.isAt("Torque: Axle nut");
    await expect(again.page.getByText("45° of 60°")).toBeVisible();
    await again.quick.key(/^Swung/).tap();
    await expect(again.page.getByText("60° of 60°")).toBeVisible();
    await again.quick.goOn(() => again.quick.key("Axle nut: 60°").tap());
    // The torque was clicked once, the angle not at all.
    const entries = await exported(again.page, again.quick);
    const nut = entries.flatMap(({ what }) => (what.moved?.step === "turn_axle_nut@front_left" ? [what.moved] : []));
    expect(nut.map(({ wrench }) => Boolean(wrench))).toEqual([true, false]);
    expect(nut.at(-1).to).toBe("done");
  });
});

/** What is half typed on this phone, without what is empty. */
const half = async (page) => (await drafts(page)).filter((text) => /\d/.test(text));

/** The card of the axle nut is opened again from the list of steps, and an angle added to it. */
async function addAngle(page, quick) {
  await quick.goTo("Spec: axle nut");
  await quick.key("Then an angle").tap();
  await new Pack(page).type("Angle after the torque, degrees", "60");
  await quick.key("Save the spec").tap();
  await quick.isAt("Torque: Axle nut on");
}

/** A job of a file that has come to this step, which the first entry that `ends` holds for tells. */
async function openUntil(quick, label, ends) {
  await quick.open(fileOf(cut(sampleEntries("replaced-hub"), ends)));
  await quick.isAt(label);
}
