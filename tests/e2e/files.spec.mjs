// A job leaves the phone as a file and as paper, and comes in again as what it was.
import { readFileSync } from "node:fs";
import { test, expect, open } from "./support/fixtures.mjs";
import { everything } from "./support/journal.mjs";
import { fileOf, sampleEntries, sampleText, verified } from "./support/jobs.mjs";
import { sheets } from "./support/paper.mjs";
import { phone } from "./support/phone.mjs";
import { Quick, file } from "./pages/quick.mjs";

// What the samples were made with: 6.3, 6.4 and 6.3 thousandths before and 1.0, 1.0 and 1.2 after on
// a dial of 0.001 in, against 2.0; 21, 22 and 21 divisions of 0.01 mm, and 2, 1.5 and 2. The twin of
// each is by the inch of 25.4 mm exactly: the means 0.006333 in and 0.001067 in are 0.161 and
// 0.027 mm, the limit 0.002 in is 0.051 mm.
const REPLACED_CUSTOMER = [
  "For the customer", "REPLACED, safe to drive", "Before the work, this wheel bearing failed our check.",
  "The hub moved 0.0063 in (0.16 mm) before the repair and 0.0011 in (0.03 mm) after it.",
  "The limit is 0.0020 in (0.05 mm)", "Each dot is one reading.",
  "We replaced the front left wheel bearing.", "Have the lug-nut torque checked after 50 mi",
  "no later than Feb 22, 2026", "Total to pay", "486.00 USD", "inspection; tax of 8.25 %", "Signature",
];
const REPLACED_TECHNICIAN = [
  "0.0063 in = 0.160 mm", "0.0064 in = 0.163 mm", "0.0010 in = 0.025 mm", "0.0012 in = 0.030 mm",
  "2.0 thou = 0.051 mm", "Over the limit, proven", "What the uncertainty is made of",
];
const DECLINED_TECHNICIAN = [
  "0.0083 in = 0.210 mm", "0.0087 in = 0.220 mm", "0.004 in (default limit: common practice, no source)",
];
const NOTHING_TECHNICIAN = [
  "0.0008 in = 0.020 mm", "0.0006 in = 0.015 mm", "0.10 mm (the manufacturer's service information)",
];

const NO_NEWS = "Everything in this file was here already.";

/** Where the job is, as it is read: every step with its state. */
async function where(quick) {
  await quick.page.evaluate(() => { location.hash = location.hash.replace(/^(#\/job\/[^/]+).*$/, "$1/where"); });
  await expect(quick.main.getByRole("heading", { name: "All steps" })).toBeVisible();
  return quick.main.getByRole("list").innerText();
}

async function opened(quick, text) {
  const outcome = await quick.take([file("job.json", text)]);
  await outcome.getByRole("link", { name: "Open the job" }).tap();
  await expect(quick.main.getByRole("heading", { name: "All steps" })).toBeVisible();
}

/** The text of a sheet or of a screen in one line. */
const inline = (text) => text.replace(/\s+/g, " ");

async function exported(quick) {
  const report = await quick.report();
  const [download] = await Promise.all([
    quick.page.waitForEvent("download"),
    quick.key("Export the job").tap(),
  ]);
  await expect(report).toBeVisible();
  return { name: download.suggestedFilename(), text: verified(await download.path()) };
}

/** The report of a sample has these words on page one and these on the pages after it. */
async function says(quick, name, customer, technician) {
  await opened(quick, sampleText(name));
  const report = await quick.report();
  const part = (title) => report.getByRole("region", { name: title, exact: true });
  for (const words of customer) await expect(part("For the customer"), words).toContainText(words);
  for (const words of technician) await expect(part("The technician's pages"), words).toContainText(words);
}

test("the sample of a replaced hub shows its readings before and after, and its limit", async ({ app }) => {
  await says(new Quick(app), "replaced-hub", REPLACED_CUSTOMER, REPLACED_TECHNICIAN);
});

test("the sample of a declined STOP shows its readings, its limit and what can follow", async ({ app }) => {
  await says(new Quick(app), "declined-stop",
    ["DO NOT DRIVE", "Do not drive this car.", "the wheel can come off", "Repair you declined, not charged"], DECLINED_TECHNICIAN);
});

test("the sample with nothing wrong shows its readings and its limit", async ({ app }) => {
  await says(new Quick(app), "nothing-wrong",
    ["We found nothing that must be repaired today.", "The car may be driven."], NOTHING_TECHNICIAN);
});

test("an exported job is the same sheet on another phone", async ({ app, host, browser, faults }) => {
  const here = new Quick(app);
  await opened(here, sampleText("replaced-hub"));
  const steps = await where(here);
  const { name, text } = await exported(here);
  expect(name).toMatch(/^hubslate-job-\d{4}-\d\d-\d\d-KLM4821\.json$/);
  const report = await (await here.report()).innerText();
  expect(JSON.parse(text).logs).toEqual(JSON.parse(sampleText("replaced-hub")).logs);

  const other = await browser.newContext(phone);
  try {
    const page = faults.watch(await other.newPage());
    await open(page, host.url);
    const there = new Quick(page);
    await opened(there, text);
    expect(await where(there)).toBe(steps);
    expect(await (await there.report()).innerText()).toBe(report);
  } finally {
    await other.close();
  }
});

test("a job begun on one phone goes on at the same step on another", async ({ app, host, browser, faults }) => {
  const here = new Quick(app);
  await here.practice();
  await here.walk("Road test: Pre-drive check");
  const { text } = await exported(here);
  const other = await browser.newContext(phone);
  try {
    const page = faults.watch(await other.newPage());
    await open(page, host.url);
    const there = new Quick(page);
    await there.open(text);
    await there.isAt("Road test: Pre-drive check");
    await there.walk("Road test: Rises with speed");
  } finally {
    await other.close();
  }
});

test("the pictures that a file only names are told by their steps", async ({ app }) => {
  const quick = new Quick(app);
  const outcome = await quick.take([file("job.json", sampleText("replaced-hub"))]);
  await expect(outcome).toContainText("Some photos are not in the file. The record is complete. (");
  const named = sampleEntries("replaced-hub").filter(({ what }) => what.photo).length;
  expect((await outcome.innerText()).split(" · ")).toHaveLength(named);
  const none = await quick.take([file("job.json", sampleText("declined-stop"))]);
  await expect(none).not.toContainText("Some photos");
});

test("what is due leaves as a calendar file", async ({ app }) => {
  const quick = new Quick(app);
  await opened(quick, sampleText("replaced-hub"));
  await quick.report();
  const [download] = await Promise.all([
    app.waitForEvent("download"),
    quick.key("Add to the calendar").tap(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^hubslate-job-\d{4}-\d\d-\d\d-KLM4821\.ics$/);
  const text = readFileSync(await download.path(), "utf8");
  expect(text).toContain("DTSTART;VALUE=DATE:20260222\r\n");
  expect(text).toContain("SUMMARY:Re-torque the lugs KLM 4821 (at 81254\u00a0mi)\r\n");
  const unfolded = text.replaceAll("\r\n ", "");
  expect(unfolded).toMatch(/DESCRIPTION:[^\r]* when the odometer shows 81254\u00a0mi\\, no later than Feb 22\\, 2026/);
  expect(text).not.toContain("Quill");
});

test("importing a file twice changes nothing", async ({ app }) => {
  const quick = new Quick(app);
  const first = await quick.take([file("job.json", sampleText("replaced-hub"))]);
  await expect(first).toContainText(`${sampleEntries("replaced-hub").length} of them new`);
  const kept = await everything(app);
  expect(kept.entries).toHaveLength(sampleEntries("replaced-hub").length);
  const second = await quick.take([file("job.json", sampleText("replaced-hub"))]);
  await expect(second).toContainText("0 of them new");
  await expect(second).toContainText(NO_NEWS);
  expect(await everything(app)).toEqual(kept);
});

test("a foreign, a cut, an edited and a newer file each say so and change nothing", async ({ app }) => {
  const quick = new Quick(app);
  await quick.take([file("job.json", sampleText("declined-stop"))]);
  const kept = await everything(app);
  const good = sampleText("replaced-hub");
  const cases = [
    ["foreign.json", '{"format":"something else","version":1,"logs":[]}', "This is not a Hubslate file. Nothing was changed."],
    ["picture.json", "\u0089PNG", "This is not a Hubslate file. Nothing was changed."],
    ["cut.json", good.slice(0, good.length / 2), "The file is cut off. Ask for it again. Nothing was changed."],
    ["edited.json", good.replace('"divisions":"6.3"', '"divisions":"1.3"'),
      "The file was changed after it was made: its digest differs. Nothing was changed."],
    ["newer.json", good.replace('"version": 1', '"version": 2'),
      "The file is from a newer version. Update first. Nothing was changed."],
  ];
  for (const [name, text, sentence] of cases) {
    expect(text, name).not.toBe(good);
    const outcome = await quick.take([file(name, text)]);
    await expect(outcome, name).toContainText(name);
    await expect(outcome, name).toContainText(sentence);
    expect(await everything(app), name).toEqual(kept);
  }
});

test("two changed entries of one name are said and the first one stays", async ({ app }) => {
  const quick = new Quick(app);
  await quick.take([file("job.json", sampleText("nothing-wrong"))]);
  const kept = await everything(app);
  const changed = sampleEntries("nothing-wrong");
  changed.find(({ what }) => what.note).what.note.text = "Another note.";
  const outcome = await quick.take([file("job.json", fileOf(changed))]);
  await expect(outcome).toContainText("One entry is there twice with different contents.");
  expect((await everything(app)).entries).toEqual(kept.entries);
});

/** Printed on this paper: page one is the customer's and the readings and limits follow it. */
async function isOnPaper(page, format, [width, height]) {
  const all = await sheets(page, { format });
  expect(all.length).toBeGreaterThan(1);
  for (const sheet of all) {
    // The browser rounds a sheet up to whole device pixels.
    expect(Math.abs(sheet.width - width)).toBeLessThan(1.5);
    expect(Math.abs(sheet.height - height)).toBeLessThan(1.5);
  }
  const [first, ...rest] = all.map(({ text }) => inline(text));
  for (const words of REPLACED_CUSTOMER) expect(first, words).toContain(words);
  expect(first).toContain("It is no promise of how long a part will last.");
  expect(first).not.toContain("The technician's pages");
  expect(rest[0]).toContain("The technician's pages");
  const technician = rest.join(" ");
  for (const words of REPLACED_TECHNICIAN) expect(technician, words).toContain(words);
  expect([first, technician].join(" ")).not.toContain("Export the job");
}

test("the report on paper has page one for the customer, then readings and limits, on A4 and Letter", async ({ app }) => {
  const quick = new Quick(app);
  await opened(quick, sampleText("replaced-hub"));
  await quick.report();
  // In points of 1/72 inch: 210 × 297 mm and 8.5 × 11 inches.
  await isOnPaper(app, "A4", [595, 842]);
  await isOnPaper(app, "Letter", [612, 792]);
});
