// Reading the removed part, earlier visits of the same vehicle, and the bar code of its VIN.
import { test, expect, open } from "./support/fixtures.mjs";
import { serious } from "./support/audit.mjs";
import { another, fileOf, sampleEntries, sampleText } from "./support/jobs.mjs";
import { Quick, file } from "./pages/quick.mjs";
import { Pack } from "./pages/pack.mjs";

const READ = /^Read removed part: /;

class Reader extends Quick {
  /** The removed part of the one corner, from wherever its way stands. */
  async read() {
    await this.unfold();
    await this.main.getByRole("link", { name: READ }).first().tap();
    await expect(this.main.getByRole("heading", { name: READ, level: 1 })).toBeVisible();
  }

  /** The row of a finding. */
  finding(name) {
    return this.main.getByRole("listitem").filter({ hasText: name });
  }

  async turn(name) {
    const key = this.key(name);
    const was = await key.getAttribute("aria-pressed");
    await key.tap();
    await expect(key).toHaveAttribute("aria-pressed", was === "true" ? "false" : "true");
  }
}

test("a removed part is read where it is in hand: suspected while closed, not more than was seen, and taken back", async ({ app }) => {
  const quick = new Reader(app);
  await quick.practice();
  await quick.walk("Install: New next to old", { "Push, pull, read": (it) => it.round("9") });
  await quick.read();
  // Nobody has looked yet: nothing to be seen is offered.
  await expect(quick.finding("Red grease")).toHaveCount(0);
  await quick.turn("Closed, as it came off");
  await expect(quick.finding("Flaked in the loaded zone")).toHaveCount(0);
  await quick.turn("Red grease or water at the seal");
  const grease = quick.finding("Red grease");
  await expect(grease).toContainText("Suspected: moisture corrosion (ISO 15243:2017).");
  await expect(grease).toContainText("Likely cause: water past a seal");
  await expect(grease).toContainText("Change: New seal and cap.");
  // What is no mode of the standard is not printed as one.
  await quick.turn("Seal lip cut or out of place");
  await expect(quick.finding("Seal lip cut")).not.toContainText("ISO");
  await quick.turn("Seal lip cut or out of place");
  expect(await serious(app)).toEqual([]);
  // Closed in the middle, it stands as it was.
  await app.reload();
  await expect(grease).toContainText("Suspected: moisture corrosion");
  await quick.turn("Cut open, customer approved");
  await expect(grease).toContainText("Failure mode: moisture corrosion (ISO 15243:2017).");
  await quick.turn("Flaked in the loaded zone");
  await expect(quick.finding("Flaked in")).toContainText("Failure mode: subsurface initiated fatigue");
  // Looked at less far, the races were not seen.
  await quick.turn("Closed, as it came off");
  await expect(quick.finding("Flaked in")).toHaveCount(0);
  await quick.turn("Cut open, customer approved");
  await expect(quick.key("Flaked in the loaded zone")).toHaveAttribute("aria-pressed", "false");
  await quick.turn("Closed, as it came off");
  // At another corner no part was removed: nothing can be recorded there by its address.
  await app.evaluate(() => { location.hash = location.hash.replace(/removed\/.*$/, "removed/rear_right"); });
  await expect(quick.alert("No part was removed at this corner.")).toBeVisible();
  await expect(quick.key("Closed, as it came off")).toHaveCount(0);
  await quick.way("Resume").tap();
  await quick.isAt("Install: New next to old");
  // Undo at the step takes the last tap back.
  await quick.key("Undo").tap();
  const report = await quick.report();
  await expect(report).toContainText("Cut open, customer approved");
  await expect(report).toContainText("Red grease or water at the seal. Failure mode: moisture corrosion (ISO 15243:2017).");
  await expect(report.getByRole("img", { name: "Red grease or water at the seal" })).toBeVisible();
});

test("the part of a finished job is read from its end, and the shop counts causes with their modes", async ({ app }) => {
  const quick = new Reader(app);
  const jobs = [1, 2, 3].map((at) => file(`${at}.json`, fileOf(another(sampleEntries("replaced-hub"), at))));
  const ways = await quick.take(jobs);
  await expect(ways).toBeVisible();
  const look = [
    ["Closed, as it came off", "Red grease or water at the seal"],
    ["Cut open, customer approved", "Brown lines spaced like the rolling elements"],
    ["Closed, as it came off"],
  ];
  const links = await quick.main.getByRole("link", { name: "Open the job" }).evaluateAll((all) => all.map((it) => it.hash));
  expect(links).toHaveLength(3);
  for (const [at, keys] of look.entries()) {
    await app.evaluate((hash) => { location.hash = hash; }, links[at]);
    await quick.read();
    for (const name of keys) await quick.turn(name);
  }
  await app.evaluate(() => { location.hash = "#/shop-lists/counts"; });
  const counts = quick.main.locator("section").filter({ has: app.getByRole("heading", { name: "Removed parts: likely causes" }) });
  const water = counts.getByRole("row").filter({ hasText: "Water past a seal" });
  await expect(water).toContainText("2 of 3");
  await expect(water).toContainText("moisture corrosion, 1 cut open");
  // 2 of 3 lies between 9.4 and 99.2 percent: scipy, binomtest(2, 3).proportion_ci(0.95, "exact").
  await expect(water).toContainText(/9\D.*to 99/);
  await expect(counts.getByRole("row").filter({ hasText: "Nothing visible" })).toContainText("1 of 3");
  expect(await serious(app)).toEqual([]);
});

test("earlier visits of the same VIN or plate stand at the vehicle and open with one tap", async ({ app }) => {
  const quick = new Quick(app);
  const said = sampleEntries("replaced-hub").map(({ what }) => what);
  const vin = said.map(({ vehicle }) => vehicle).find((it) => it?.field === "vin").text;
  const plate = said.map(({ person }) => person).find((it) => it?.field === "plate").text;
  await quick.take([file("a.json", sampleText("replaced-hub")), file("b.json", sampleText("nothing-wrong"))]);
  await app.evaluate(() => { location.hash = "#/"; });
  const pack = new Pack(app);
  await pack.begin();
  await quick.key("Save the message").tap();
  await pack.at("Vehicle");
  const count = quick.main.getByRole("heading", { name: /^Earlier visits: / });
  const visit = quick.main.getByRole("link", { name: /^2026-/ });
  await expect(count).toHaveCount(0);
  await pack.type("VIN", vin.toLowerCase());
  await expect(count).toHaveText("Earlier visits: 1");
  await expect(visit).toContainText("Front left: REPLACE, hub replaced");
  // The plate alone with another VIN may be another car.
  await pack.type("VIN", "1M8GDM9AXKP042788");
  await expect(count).toHaveCount(0);
  await pack.type("Plate", plate);
  await expect(visit).toContainText("Same plate, another VIN: it may be another car.");
  await pack.type("VIN", vin);
  await expect(visit).not.toContainText("another VIN");
  expect(await serious(app)).toEqual([]);
  await visit.tap();
  await expect(quick.main.getByRole("heading", { name: "All steps" })).toBeVisible();
  await expect(quick.main.getByRole("link", { name: READ })).toBeVisible();
  // What was half typed is still there.
  await app.goBack();
  await expect(app.getByLabel("VIN", { exact: true })).toHaveValue(vin);
});

/** A browser that reads codes: each look at the camera gives the next of `looks`, the last one again
 * and again. */
async function withCodes(page, looks, { formats = ["code_39", "qr_code", "ean_13"], camera = "open" } = {}) {
  await page.addInitScript(([codes, offered, how]) => {
    let at = 0;
    window.stopped = 0;
    window.BarcodeDetector = class {
      static async getSupportedFormats() { return offered; }
      constructor(options) { window.asked = options?.formats; }
      async detect() {
        const look = codes[Math.min(at, codes.length - 1)];
        at += 1;
        return look.map((rawValue) => ({ rawValue }));
      }
    };
    navigator.mediaDevices.getUserMedia = async () => {
      if (how === "refused") throw new DOMException("no", "NotAllowedError");
      if (how === "none") throw new DOMException("no", "NotFoundError");
      const canvas = document.createElement("canvas");
      canvas.getContext("2d");
      const stream = canvas.captureStream();
      const [track] = stream.getTracks();
      const stop = track.stop.bind(track);
      track.stop = () => { window.stopped += 1; stop(); };
      return stream;
    };
  }, [looks, formats, camera]);
}

/** The vehicle step of a new job. */
async function atVehicle(page) {
  const pack = new Pack(page);
  await pack.begin();
  await pack.key("Save the message").tap();
  await pack.at("Vehicle");
  return pack;
}

// The sample number of 49 CFR 565, as an import's code 39 carries it, and with a digit misread.
const VIN = "1M8GDM9AXKP042788";
const MISREAD = "1M8GDM9AXKP042789";

test("the VIN is scanned off its bar code, without the letter of an import, and the camera closes", async ({ page, host, faults: _ }) => {
  await withCodes(page, [[], ["4006381333931"], [MISREAD], [`I${VIN}`]]);
  await open(page, host.url);
  const pack = await atVehicle(page);
  await pack.key("Scan VIN bar code").tap();
  const field = page.getByLabel("VIN", { exact: true });
  await expect(field).toHaveValue(VIN);
  await expect(page.getByText("VIN scanned. Compare its last four with the car.")).toBeVisible();
  expect(await page.evaluate(() => [window.stopped, window.asked])).toEqual([1, ["code_39", "qr_code"]]);
  await expect(pack.key("Scan VIN bar code")).toBeVisible();
  // It is a draft like every typed one.
  await page.reload();
  await expect(field).toHaveValue(VIN);
});

test("a VIN whose check digit differs is taken when it is read twice, and that is said", async ({ page, host, faults: _ }) => {
  await withCodes(page, [[MISREAD], [MISREAD]]);
  await open(page, host.url);
  const pack = await atVehicle(page);
  await pack.key("Scan VIN bar code").tap();
  await expect(page.getByLabel("VIN", { exact: true })).toHaveValue(MISREAD);
  await expect(page.getByText(/check digit/i).first()).toBeVisible();
});

test("scanning is stopped by its key and by leaving, and the camera closes each time", async ({ page, host, faults: _ }) => {
  await withCodes(page, [["4006381333931"]]);
  await open(page, host.url);
  const pack = await atVehicle(page);
  await pack.key("Scan VIN bar code").tap();
  await expect(page.getByText("That code holds no VIN. Try another code on the car.")).toBeVisible();
  await pack.key("Stop scanning").tap();
  await expect(pack.key("Scan VIN bar code")).toBeVisible();
  expect(await page.evaluate(() => window.stopped)).toBe(1);
  await pack.key("Scan VIN bar code").tap();
  await expect(pack.key("Stop scanning")).toBeVisible();
  await expect(page.locator("video")).toBeVisible();
  await page.evaluate(() => { location.hash = "#/"; });
  await expect.poll(() => page.evaluate(() => window.stopped)).toBe(2);
  expect(await page.getByText("VIN scanned").count()).toBe(0);
});

for (const [camera, sentence] of [["refused", "The camera was refused."], ["none", "No camera, or another app is using it."]]) {
  test(`a camera that is ${camera} is a sentence, and the VIN is typed`, async ({ page, host, faults: _ }) => {
    await withCodes(page, [[VIN]], { camera });
    await open(page, host.url);
    const pack = await atVehicle(page);
    await pack.key("Scan VIN bar code").tap();
    await expect(page.getByText(sentence)).toBeVisible();
    await pack.type("VIN", VIN);
    await expect(page.getByLabel("VIN", { exact: true })).toHaveValue(VIN);
  });
}

test("there is no key where the browser reads no code that a car carries", async ({ page, host, faults: _ }) => {
  await withCodes(page, [[VIN]], { formats: ["ean_13"] });
  await open(page, host.url);
  const pack = await atVehicle(page);
  await expect(page.getByLabel("VIN", { exact: true })).toBeVisible();
  await expect(pack.key("Scan VIN bar code")).toHaveCount(0);
});
