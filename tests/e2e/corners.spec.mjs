// Two corners of one axle on one job: what is shared is asked once, left and right are never mixed up,
// and a second technician goes on from the state in which the first one left the car.
import { test, expect, open } from "./support/fixtures.mjs";
import { FAMILY, FIGURES, FIRST } from "./pages/bookings.mjs";
import { VAN } from "./pages/first.mjs";
import { CARDS, Pack } from "./pages/pack.mjs";
import { Quick } from "./pages/quick.mjs";
import { before, fileOf, sampleEntries } from "./support/jobs.mjs";

/** From the booking to the car: both front corners, with the specs of their axle. */
async function packed(page) {
  const pack = new Pack(page);
  await pack.begin();
  await pack.paste(FIRST.message);
  await pack.keepVehicle(FAMILY);
  // What holds in front is never taken for the rear.
  await page.getByRole("button", { name: "Front left" }).tap();
  await expect(page.getByRole("button", { name: "Rear left" })).toBeDisabled();
  await page.getByRole("button", { name: "Front left" }).tap();
  await pack.corners("Front left", "Front right");
  for (const card of CARDS) {
    await pack.at(card);
    await pack.card(...FIGURES[card]);
  }
  await pack.price("480", "95");
  await pack.kit();
  await pack.leave();
}

/** The corner that the strip says and draws; empty at what both corners share. */
async function corner(quick) {
  const strip = quick.main.locator(".strip__phase");
  // The page that the customer is shown has none: there the corner is a heading.
  if (!(await strip.count())) {
    const heading = quick.main.getByRole("heading", { name: /^Front (left|right)$/ });
    return (await heading.count()) ? heading.innerText() : "";
  }
  const phase = await strip.innerText();
  const said = phase.match(/^(Front left|Front right) · /)?.[1] ?? "";
  const drawn = said || "Corners of the vehicle, seen from above";
  await expect(quick.main.locator(".strip__corner svg")).toHaveAccessibleName(drawn);
  return said;
}

test("two corners, left over to a second technician in the middle", async ({ page, host }) => {
  test.setTimeout(240_000);
  page.setDefaultTimeout(15_000);
  await open(page, host.url, VAN);
  await packed(page);

  const quick = new Quick(page);
  const seen = [];
  const look = async (label) => {
    const step = `${await corner(quick)}/${label}`;
    if (seen.at(-1) !== step) seen.push(step);
  };
  // The left one is bad, the right one is not.
  const answers = {
    "Measure: Push, pull, read": async (it) => it.round((await corner(it)) === "Front left" ? "6" : "0"),
    "Spin by hand": async (it) => it.key((await corner(it)) === "Front left" ? "Rough and noisy" : "Smooth and quiet").tap(),
    "Verify: Push, pull, read": (it) => it.round("0.5"),
    // The price is of both; what this one comes to is typed before the customer is asked.
    "Customer's answer": async (it) => {
      await it.main.getByLabel(/^Full repair/).fill("240");
      await it.key("Ask the customer").tap();
      await it.key("Verbal approval").tap();
    },
    "Axle nut": /clicked$|°$/,
    "Axle nut on": /clicked$|°$|^Seated by hand$/,
  };
  await quick.walk("Remove: Free sensor wire", answers, look);
  expect(await corner(quick)).toBe("Front left");

  // Rain: the car stays as it stands, and somebody else goes on.
  await quick.key("More").tap();
  await quick.key("Leave the car").tap();
  await expect(quick.main).toContainText("Keep everyone out of the car");
  await quick.key("Rain").tap();
  await quick.main.getByLabel("Who goes on (empty: I come back)").fill("S. Brook");
  await quick.key("Record it, leave the car").tap();
  await quick.isAt("Lift: Take over the car");
  await expect(quick.main).toContainText("The car was left: Rain; S. Brook goes on");

  // The second one is somebody else on the same phone, and the app was closed in between.
  await page.evaluate(() => { location.hash = "#/settings"; });
  await page.getByRole("heading", { name: "Name and report" }).tap();
  await page.getByLabel("Technician's name").fill("S. Brook");
  await page.getByLabel("Technician's name").blur();
  await page.reload();
  await page.evaluate(() => { location.hash = "#/"; });
  await quick.main.getByRole("link").filter({ hasText: FIRST.plate }).tap();
  await quick.isAt("Lift: Take over the car");
  const left = quick.main.getByRole("heading", { name: "Front left On its jack stand" });
  const right = quick.main.getByRole("heading", { name: "Front right On its wheel" });
  await expect(left).toBeVisible();
  await expect(right).toBeVisible();
  const lists = quick.main.locator(".takeover__list");
  await expect(lists.first()).toContainText("Lug nuts: off");
  await expect(lists.first()).toContainText("Axle nut, front left: off");
  await expect(quick.main).toContainText("Nothing off or loose");

  // A no is a no: no step goes on, by its address either.
  await quick.unfold();
  await quick.key("Not as listed").tap();
  await expect(quick.alert("Keep clear.")).toBeVisible();
  await page.evaluate(() => { location.hash = location.hash.replace(/^(#\/job\/[^/]+).*$/, "$1/strip_sensor@front_left"); });
  await quick.isAt("Lift: Take over the car");
  await expect(quick.main.getByRole("heading", { name: "Front left Raised, not shoved" })).toBeVisible();
  await quick.unfold();
  await quick.key("As listed, firm").tap();
  await quick.isAt("Remove: Free sensor wire");
  expect(await corner(quick)).toBe("Front left");

  await quick.walk("Hand over: Report and file", answers, look);
  await expect(page.getByRole("link", { name: /loose$/ })).toHaveText(/^0/);
  await quick.finish("Finished");

  // What both share was asked once; each corner was measured and decided by itself.
  const times = (step) => seen.filter((it) => it.endsWith(step));
  for (const once of ["Site: The ground", "Odometer", "Test drive", "Road test again", "Hold the car", "Before it moves"]) {
    expect(times(once), once).toHaveLength(1);
  }
  for (const each of ["Jack and jack stand", "Decide: Decision", "Spin by hand"]) {
    const corners = new Set(times(each).map((it) => it.split("/")[0]));
    expect([...corners], each).toEqual(["Front left", "Front right"]);
  }
  const decided = seen.filter((it) => it.includes("/Remove: ") || it.includes("/Install: "));
  expect(decided.filter((it) => !it.startsWith("Front left/"))).toEqual([]);
  const report = await quick.report();
  await expect(report).toContainText("The car was left: Rain; S. Brook goes on");
  await expect(report).toContainText("Front right");
});

/** At a step of the replaced hub, before anything was answered there. */
async function at(app, step) {
  const quick = new Quick(app);
  const entries = before(sampleEntries("replaced-hub"), (what) => what.answered?.step === step);
  await quick.open(fileOf(entries));
  return quick;
}

test("a wrong part holds the job, says what is safe, and goes back", async ({ app }) => {
  const quick = await at(app, "compare@front_left");
  await quick.walk("Install: New next to old");
  await quick.main.getByRole("button", { name: /^Same depth/ }).tap();
  await quick.unfold();
  await quick.notDone("No time");
  await expect(quick.alert("get the right part")).toBeVisible();
  await quick.unfold();
  await quick.key("Something is wrong").tap();
  await quick.key("Wrong part").tap();
  await expect(quick.alert("Do not install it.")).toBeVisible();
  await quick.key("Record it").tap();
  await expect(quick.alert("The job is held")).toBeVisible();
  await expect(quick.alert("Keep everyone out of the car")).toBeVisible();
  await expect(quick.way("End the job here")).toBeVisible();
  // The customer is not asked for a part that was delivered wrong.
  await expect(quick.key("Customer approves")).toHaveCount(0);
  await quick.key("The right part is here").tap();
  await quick.isAt("Install: New next to old");
  await expect(quick.alert("The job is held")).toHaveCount(0);
  const report = await quick.report();
  await expect(report).toContainText("Wrong part; goes back:");
});

test("a hub that will not come out is asked for, and is over once it is out", async ({ app }) => {
  const quick = await at(app, "strip_sensor@front_left");
  await quick.walk("Remove: Free sensor wire");
  await quick.unfold();
  await quick.key("Something is wrong").tap();
  await quick.key("Will not come out").tap();
  await quick.key("Record it").tap();
  await quick.isAt("Remove: Photo: what went wrong");
  await quick.notDone("No light, no sight");
  await quick.key("Customer approves").tap();
  await quick.walk("Install: New next to old");
  await expect(quick.alert("will not come out")).toHaveCount(0);
});
