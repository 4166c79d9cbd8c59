// A whole Tighten phase: a slip of the unit on the card, torque and angle on the axle nut, a stud
// that breaks at the third of five, and a browser that dies twice on the way.
import { test, expect } from "./support/fixtures.mjs";
import { WORN, exported, killed, phone, turned } from "./support/revived.mjs";
import { Pack } from "./pages/pack.mjs";
import { Quick } from "./pages/quick.mjs";

const BROKE = "Lug nut 3, front left: Stud or bolt broke; part: stud and nut, or bolt; 30 min more";

/** The card of the axle nut is typed in the wrong unit, which is caught, and given its angle. */
async function card(page, quick) {
  await quick.goTo("Spec: axle nut");
  await quick.key("lb-in").tap();
  await quick.key("Save the spec").tap();
  const doubt = quick.alert("is far from the usual for this");
  await expect(doubt).toContainText("180 lb-in");
  await expect(doubt).toContainText("The same digits would be usual in: N·m, lb-ft.");
  await expect(quick.key("Read twice, printed so")).toBeVisible();
  await quick.key("N·m").tap();
  await expect(quick.key("Read twice, printed so")).toHaveCount(0);
  await quick.key("Then an angle").tap();
  await new Pack(page).type("Angle after the torque, degrees", "60");
  await quick.key("Save the spec").tap();
  await quick.isAt("Site: The ground");
}

test("from the card to the last nut, with a stud that breaks and two kills", async ({ host }) => {
  test.setTimeout(240_000);
  await phone(host, async ({ profile, page }) => {
    let quick = new Quick(page);
    await quick.practice();
    await card(page, quick);
    await quick.walk("Torque: Axle nut on", WORN);
    await quick.key("Axle nut clicked").tap();
    await expect(quick.key("Axle nut: 60°")).toBeVisible();

    ({ page, quick } = await killed(profile, host));
    await quick.isAt("Torque: Axle nut");
    await expect(quick.key("Axle nut: 60°")).toBeEnabled();
    await quick.goOn(() => quick.key("Axle nut: 60°").tap());
    await quick.walk("Torque: Lug nuts", WORN);

    // One key a fastener, and a bounce of the finger is one tap.
    await expect(quick.key("Lug nut 1 clicked")).toBeEnabled();
    await quick.key("Lug nut 1 clicked").evaluate((key) => { key.click(); key.click(); });
    await quick.key("Lug nut 2 clicked").tap();
    await expect(quick.key("Lug nut 3 clicked")).toBeEnabled();
    await quick.key("Something is wrong").tap();
    await quick.key("Stud or bolt broke").tap();
    await quick.key("Record it").tap();
    await quick.isAt("Torque: Photo: what went wrong");
    await quick.notDone("No light, no sight");
    await expect(quick.alert(BROKE)).toBeVisible();

    ({ page, quick } = await killed(profile, host));
    await quick.isAt("Torque: Lug nuts");
    await expect(quick.alert(BROKE)).toBeVisible();
    await expect(quick.key(/clicked$/)).toHaveCount(0);
    const loose = page.getByRole("link", { name: /loose$/ });
    await expect(loose).toHaveText(/^[1-9]/);
    await quick.key("Customer approves").tap();
    // The car stands on that wheel: it is raised, shoved and the wheel off before the stud is replaced.
    await quick.walk("Torque: New stud", { "Raise it again": /^(It stands firm|Loosened, on the stand)$/ });
    await quick.goOn(() => quick.key("In by hand: stud and nut, or bolt").tap());
    await quick.walk("Torque: Lug nuts");
    for (const nut of [1, 2, 3, 4, 5]) await quick.key(`Lug nut ${nut} clicked`).tap();
    await quick.isAt("Verify: Pedal first");
    await expect(loose).toHaveText(/^0/);

    const entries = await exported(page, quick);
    expect(turned(entries, "turn_lug_nuts")).toEqual([1, 2, 1, 2, 3, 4, 5]);
    const told = entries.map(({ what }) => what);
    expect(told.find(({ mishap }) => mishap).mishap).toMatchObject({
      kind: "sheared", item: { corner: "front_left", group: "lug_nuts", number: 3 }, minutes: 30,
    });
    expect(told.find(({ consent }) => consent?.scope === "extra").consent.yes).toBe(true);
    expect(told.filter(({ mended }) => mended)).toHaveLength(1);
    const stages = told.findLast(({ spec }) => spec?.item === "axle_nut").spec.torque.stages;
    expect(stages).toEqual([{ torque: { number: "180", unit: "n_m" } }, { angle: { number: "60", unit: "deg" } }]);
  });
});
