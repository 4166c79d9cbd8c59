// Pictures and voice notes: taken, captioned, taken again, told of when there is no room, spoken
// while a key is held, and carried to another phone in one zip with the job.
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { test, expect, open } from "./support/fixtures.mjs";
import { journal, pictures } from "./support/journal.mjs";
import { sheets } from "./support/paper.mjs";
import { launchOptions, phone } from "./support/phone.mjs";
import { settings } from "./pages/settings.mjs";
import { Quick } from "./pages/quick.mjs";

test.use({
  launchOptions: {
    ...launchOptions,
    args: [...launchOptions.args, "--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream"],
  },
});

const FULL = "The phone's storage is full: this photo was not saved. All that you tapped before is saved.";

/** A picture larger than is kept, in one colour with a bar across. */
async function shot(page, colour, name = "camera.jpg") {
  const url = await page.evaluate((fill) => {
    const canvas = Object.assign(document.createElement("canvas"), { width: 2400, height: 1800 });
    const pen = canvas.getContext("2d");
    pen.fillStyle = fill;
    pen.fillRect(0, 0, 2400, 1800);
    pen.fillStyle = "black";
    pen.fillRect(0, 800, 2400, 200);
    return canvas.toDataURL("image/jpeg");
  }, colour);
  return { name, mimeType: "image/jpeg", buffer: Buffer.from(url.split(",")[1], "base64") };
}

const camera = (quick) => quick.page.getByLabel("Take a photo");
const again = (quick) => quick.page.getByLabel("Take it again");
const kept = (quick) => quick.way("Photo saved: look, caption, again");

/** What the entries of the journal say, by kind. */
async function told(page, kind) {
  const whats = (await journal(page)).map(({ id, text }) => ({ id, what: JSON.parse(text).what }));
  return whats.filter(({ what }) => what[kind]).map(({ id, what }) => ({ id, ...what[kind] }));
}

/** A practice job at the picture of the stand. */
async function atThePicture(page) {
  const quick = new Quick(page);
  await quick.practice();
  await quick.goTo("Photo: jack stand");
  return quick;
}

async function take(quick, colour) {
  const file = await shot(quick.page, colour);
  await quick.goOn(() => camera(quick).setInputFiles(file));
}

/** The key is held until it says so many seconds, then let go. */
async function hold(quick, until) {
  const talk = quick.key(/^Hold to talk/);
  await talk.scrollIntoViewIfNeeded();
  const { x, y, width, height } = await talk.boundingBox();
  await quick.page.mouse.move(x + width / 2, y + height / 2);
  await quick.page.mouse.down();
  await expect(talk).toContainText(until);
  await quick.page.mouse.up();
}

async function openNote(quick) {
  await quick.key("More").tap();
  await quick.key("Note").tap();
}

test("a picture is kept by one touch, captioned with a word, and a second one strikes the first", async ({ app }) => {
  const quick = await atThePicture(app);
  await take(quick, "red");
  await expect(kept(quick).locator("img")).toBeVisible();
  await kept(quick).tap();
  const image = quick.main.getByRole("img", { name: /^Photo: jack stand/ });
  await expect(image).toBeVisible();
  expect(await image.evaluate((it) => [it.naturalWidth, it.naturalHeight])).toEqual([1600, 1200]);

  await quick.main.getByText("What does it show?").tap();
  await expect(quick.main).toContainText("Words of your own are typed at the desk, with clean hands.");
  await quick.key("Chocks").tap();
  await expect(quick.main.getByRole("img", { name: "Chocks" })).toBeVisible();

  await again(quick).setInputFiles(await shot(app, "white"));
  await expect.poll(async () => (await told(app, "photo")).length).toBe(2);
  const [first, second] = await told(app, "photo");
  expect(second.sha256).not.toBe(first.sha256);
  expect((await told(app, "strike")).map(({ hits }) => hits)).toEqual([[first.id]]);
  expect((await told(app, "captioned")).map(({ sha256, word }) => [sha256, word]))
    .toEqual([[first.sha256, "chocks"], [second.sha256, "chocks"]]);
  await expect(quick.main.getByRole("listitem").getByRole("img")).toHaveCount(1);

  const report = await quick.report();
  await expect(report.locator("figure.report__photo img")).toHaveCount(1);
  await expect(report).toContainText(`Chocks. Photo: jack stand, front left`);
  await expect(report).toContainText(second.sha256.slice(0, 12));
  const paper = (await sheets(app, { format: "A4" })).map(({ text }) => text.replace(/\s+/g, " "));
  expect(paper.filter((text) => text.includes("Chocks. Photo: jack stand"))).toHaveLength(1);
});

test("words of one's own are typed at the desk only", async ({ app }) => {
  const quick = await atThePicture(app);
  await take(quick, "red");
  await quick.endHere();
  await quick.key("Towed away").tap();
  await expect(quick.main).toContainText("The job has ended.");
  await app.evaluate(() => { location.hash = location.hash.replace(/^(#\/job\/[^/]+).*$/, "$1/notes"); });
  await quick.main.getByText("What does it show?").tap();
  await app.getByLabel("In your own words").fill("Stand on the tarred strip");
  await quick.key("Save the words").tap();
  await expect(quick.main.getByRole("img", { name: "Stand on the tarred strip" })).toBeVisible();
  await expect(await quick.report()).toContainText("Stand on the tarred strip. Photo: jack stand");
});

test("a picture that does not fit is said, nothing else is lost, and there are two ways on", async ({ page, host, faults: _ }) => {
  await page.addInitScript(() => {
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function putOrRefuse(...given) {
      if (this.name === "photos" && globalThis.isFull) throw new DOMException("full", "QuotaExceededError");
      return put.apply(this, given);
    };
  });
  await open(page, host.url);
  const quick = await atThePicture(page);
  await page.evaluate(() => { globalThis.isFull = true; });
  const before = (await journal(page)).length;
  await camera(quick).setInputFiles(await shot(page, "red"));
  await expect(quick.alert(FULL)).toBeVisible();
  await quick.isAt("Lift: Photo: jack stand");
  expect(await pictures(page)).toEqual([]);
  expect(await journal(page)).toHaveLength(before);
  await expect(quick.key("Export with photos")).toBeVisible();

  // The taps go on, and the record says why there is no picture.
  await quick.goOn(() => quick.key("Go on without it").tap());
  expect((await told(page, "remark")).map(({ remark }) => remark)).toEqual(["no_room"]);
  await expect(quick.main.getByRole("status").filter({ hasText: /^Saved$/ })).toBeVisible();

  // Once there is room the step takes its picture.
  await page.evaluate(() => { globalThis.isFull = false; });
  await quick.goTo("Photo: jack stand");
  await take(quick, "red");
  expect(await pictures(page)).toEqual((await told(page, "photo")).map(({ sha256 }) => sha256));
});

test("little room is said on every screen before it is full, with how much is left", async ({ page, host, faults: _ }) => {
  await page.addInitScript(() => {
    navigator.storage.estimate = async () => ({ usage: 850e6, quota: 1000e6 });
  });
  await open(page, host.url);
  const quick = new Quick(page);
  const said = quick.alert("The phone's storage is nearly full: 150 MB left.");
  await expect(said).toBeVisible();
  await quick.practice();
  await expect(said).toBeVisible();
  await page.evaluate(() => { location.hash = "#/settings"; });
  await expect(said).toBeVisible();
  await expect(quick.main).toContainText("150 MB left for this app.");
});

test("a voice note is spoken while the key is held, kept as sound, and played", async ({ app }) => {
  const quick = new Quick(app);
  await quick.practice();
  await openNote(quick);
  await hold(quick, "2 of 60 s");
  const note = quick.way("Voice note saved");
  await expect(note).toBeVisible();
  const [voice] = await told(app, "voice");
  expect(voice).toMatchObject({ step: "site_look", mime: expect.stringMatching(/^audio\//) });
  expect(voice.seconds).toBeGreaterThanOrEqual(2);
  expect(voice.seconds).toBeLessThanOrEqual(5);
  expect(await pictures(app)).toEqual([voice.sha256]);

  await note.tap();
  const player = quick.main.locator("audio");
  await expect(player).toHaveAttribute("src", /^blob:/);
  await player.evaluate((it) => it.play());
  await expect.poll(() => player.evaluate((it) => it.currentTime)).toBeGreaterThan(0.2);

  const report = await quick.report();
  const row = report.getByRole("row").filter({ hasText: voice.sha256.slice(0, 12) });
  await expect(row).toContainText("The ground");
  await expect(row).toContainText(`${voice.seconds} s`);
});

test("a voice note ends by itself after 60 seconds", async ({ page, host, faults: _ }) => {
  await page.clock.install();
  await open(page, host.url);
  const quick = new Quick(page);
  await quick.practice();
  await page.clock.runFor(1000);
  await openNote(quick);
  const talk = quick.key(/^Hold to talk/);
  const { x, y, width, height } = await talk.boundingBox();
  await page.mouse.move(x + width / 2, y + height / 2);
  await page.mouse.down();
  await expect(talk).toHaveAttribute("data-talking", "true");
  await page.clock.runFor(50_000);
  await expect(talk).toContainText(/5\d of 60 s/);
  await page.clock.runFor(12_000);
  await expect.poll(async () => (await told(page, "voice")).map(({ seconds }) => seconds)).toEqual([60]);
  await page.mouse.up();
});

test("a denied microphone is a sentence, and typed notes stay", async ({ page, host, faults: _ }) => {
  await page.addInitScript(() => {
    navigator.mediaDevices.getUserMedia = async () => { throw new DOMException("no", "NotAllowedError"); };
  });
  await open(page, host.url);
  const quick = new Quick(page);
  await quick.practice();
  await openNote(quick);
  await quick.key(/^Hold to talk/).tap();
  await expect(quick.alert("The microphone is not allowed. Type the note")).toBeVisible();
  await quick.main.getByRole("textbox").fill("Ground slopes a little");
  await quick.key("Save").tap();
  await expect.poll(async () => (await told(page, "note")).map(({ text }) => text)).toEqual(["Ground slopes a little"]);
  expect(await told(page, "voice")).toEqual([]);
});

/** A job with a picture and a voice note, out of the phone as one zip. */
async function zipOf(quick) {
  await take(quick, "red");
  await openNote(quick);
  await hold(quick, "1 of 60 s");
  await expect(quick.way("Voice note saved")).toBeVisible();
  await quick.report();
  const [download] = await Promise.all([
    quick.page.waitForEvent("download"),
    quick.key("Export with photos").tap(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^hubslate-practice-\d{4}-\d\d-\d\d-PRC001\.zip$/);
  return download.path();
}

test("a zip brings a job with its pictures to another phone, and a wrong picture is left out", async ({ app, host, browser, faults }) => {
  test.setTimeout(120_000);
  const here = await atThePicture(app);
  const path = await zipOf(here);
  const digests = (await pictures(app)).sort();
  expect(digests).toHaveLength(2);
  const held = (zip) => execFileSync(process.env.HUBSLATE_COMMAND, ["verify", zip], { encoding: "utf8" });
  expect(held(path)).toContain("2 photos and voice notes there");
  // Everything on the phone goes the same way.
  await settings(app, "Storage");
  const [all] = await Promise.all([app.waitForEvent("download"), here.key("Export everything with photos").tap()]);
  expect(all.suggestedFilename()).toMatch(/\.zip$/);
  expect(held(await all.path())).toContain("2 photos and voice notes there");
  const zip = readFileSync(path);

  const other = await browser.newContext(phone);
  try {
    const page = faults.watch(await other.newPage());
    await open(page, host.url);
    const there = new Quick(page);
    const file = (buffer) => ({ name: "job.zip", mimeType: "application/zip", buffer });
    // One bit of the picture, whose JPEG begins with FF D8 FF.
    const bad = Buffer.from(zip);
    const at = bad.indexOf(Buffer.from([0xff, 0xd8, 0xff]));
    expect(at).toBeGreaterThan(0);
    bad[at + 200] ^= 1;
    const [photo] = await told(app, "photo");
    const half = await there.take([file(bad)]);
    await expect(half).toContainText(`Left out, since it is not what the record names: pictures/${photo.sha256}.jpg`);
    await expect(half).toContainText("1 photo or voice note came with it.");
    await expect(half).toContainText("Some photos are not in the file. The record is complete. (Photo: jack stand)");
    expect(await pictures(page)).toEqual(digests.filter((sha) => sha !== photo.sha256));

    const whole = await there.take([file(zip)]);
    await expect(whole).toContainText("2 photos and voice notes came with it.");
    await expect(whole).not.toContainText("Some photos");
    expect((await pictures(page)).sort()).toEqual(digests);
    await whole.getByRole("link", { name: "Open the job" }).tap();
    const image = (await there.report()).locator("figure.report__photo img");
    await expect.poll(() => image.evaluate((it) => it.naturalWidth)).toBe(1600);
    const bytes = await image.evaluate(async (it) => {
      const canvas = Object.assign(document.createElement("canvas"), { width: 1, height: 1 });
      canvas.getContext("2d").drawImage(it, 0, 0);
      return [...canvas.getContext("2d").getImageData(0, 0, 1, 1).data];
    });
    expect(bytes[0]).toBeGreaterThan(200);
    expect(bytes[1]).toBeLessThan(60);

    // A zip that is cut off on its way changes nothing.
    const entries = (await journal(page)).length;
    const cut = await there.take([file(zip.subarray(0, zip.length / 2))]);
    await expect(cut).toContainText("The file is cut off. Ask for it again. Nothing was changed.");
    expect(await journal(page)).toHaveLength(entries);
  } finally {
    await other.close();
  }
});

test("where the phone has a share sheet the zip goes there, and a closed sheet is said", async ({ page, host, faults: _ }) => {
  await page.addInitScript(() => {
    globalThis.shared = [];
    navigator.canShare = ({ files }) => files.length === 1;
    navigator.share = async ({ files: [file] }) => {
      if (globalThis.closesSheet) throw new DOMException("closed", "AbortError");
      const bytes = new Uint8Array(await file.arrayBuffer());
      globalThis.shared.push({ name: file.name, type: file.type, bytes: [...bytes] });
    };
  });
  await open(page, host.url);
  const quick = await atThePicture(page);
  await take(quick, "red");
  await quick.report();
  await quick.key("Export with photos").tap();
  await expect.poll(() => page.evaluate(() => globalThis.shared.length)).toBe(1);
  const { name, type, bytes } = await page.evaluate(() => globalThis.shared[0]);
  expect([name.split(".").pop(), type]).toEqual(["zip", "application/zip"]);
  const [photo] = await told(page, "photo");
  const zip = Buffer.from(bytes);
  const begins = zip.indexOf(Buffer.from([0xff, 0xd8, 0xff]));
  const ends = zip.indexOf(Buffer.from("PK\x07\x08"), begins);
  const picture = zip.subarray(begins, ends);
  expect(createHash("sha256").update(picture).digest("hex")).toBe(photo.sha256);

  await page.evaluate(() => { globalThis.closesSheet = true; });
  await quick.key("Export with photos").tap();
  await expect(quick.main).toContainText("Not sent. The job is still only here.");
});
