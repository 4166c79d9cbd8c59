// Paper alone brings a job to the next phone: printed, rendered, read by another library, taken in.
import { test, expect, open } from "./support/fixtures.mjs";
import { sampleText } from "./support/jobs.mjs";
import { sheets } from "./support/paper.mjs";
import { phone } from "./support/phone.mjs";
import { rendered, withBarcodeDetector } from "./support/rendered.mjs";
import { Quick, file } from "./pages/quick.mjs";

// The identity and the digest that the published sample carries.
const { id: JOB, digest: DIGEST } = JSON.parse(sampleText("replaced-hub")).logs[0];

async function shown(page) {
  const quick = new Quick(page);
  const outcome = await quick.take([file("job.json", sampleText("replaced-hub"))]);
  await outcome.getByRole("link", { name: "Open the job" }).tap();
  await quick.report();
}

async function printed(page, options) {
  await shown(page);
  return rendered(page, options);
}

test("the code is read off the printed page and says cards, readings and digest", async ({ app }) => {
  await shown(app);
  for (const format of ["A4", "Letter"]) {
    const codes = (await rendered(app, { format })).filter(({ code }) => code);
    expect(codes, format).toHaveLength(1);
    const [{ code, mm, modules }] = codes;
    // From the sample: its nut card, its rounds before and after, and the digest of its file.
    for (const said of [`J|${JOB}|${DIGEST}`, "t200n_m", "1=0>6.3|2=0>6.4|3=0>6.3", "1=0>1.0|2=0>1.0|3=0>1.2"]) {
      expect(code, said).toContain(said);
    }
    expect(code).not.toContain("Quill");
    expect(mm / modules, "millimetres a module").toBeGreaterThanOrEqual(0.4);
  }
});

test("every sheet names the job and the digest of its file, and its number", async ({ app }) => {
  await shown(app);
  for (const format of ["A4", "Letter"]) {
    const all = await sheets(app, { format });
    all.forEach(({ text }, at) => {
      expect(text, `sheet ${at + 1}`).toContain(JOB.slice(-8));
      expect(text, `sheet ${at + 1}`).toContain(DIGEST.slice(0, 12));
      expect(text.replace(/\s/g, ""), `sheet ${at + 1}`).toContain(`${at + 1}/${all.length}`);
    });
  }
});

/** What the next phone says and shows after it took the code. */
async function isTaken(page) {
  const main = page.getByRole("main");
  await expect(main).toContainText("Taken from paper.");
  await expect(main).toContainText("0.0063 in; 0.0064 in; 0.0063 in");
  await main.getByRole("link", { name: "Open the job" }).tap();
  await expect(main.getByRole("heading", { name: "All steps" })).toBeVisible();
  const quick = new Quick(page);
  const report = await quick.report();
  await expect(report).toContainText("They were not measured on this phone.");
  await expect(report).toContainText("200 N·m");
  await expect(report).not.toContainText(/REPLACED, safe to drive|The car may be driven/);
}

test("the next phone takes the text of the code and opens the job under its id", async ({ app, host, browser, faults }) => {
  const { code } = (await printed(app)).find(({ code }) => code);
  const other = await browser.newContext(phone);
  try {
    const page = faults.watch(await other.newPage());
    await open(page, `${host.url}#/import`);
    const box = page.getByRole("textbox");
    const read = page.getByRole("button", { name: "Read the text" });
    await box.fill(code.replace("6.3", "1.3"));
    await read.tap();
    await expect(page.getByRole("main")).toContainText("its check differs");
    await box.fill(code);
    await read.tap();
    await isTaken(page);
    expect(page.url()).toContain(JOB);
    await page.goto(`${host.url}#/import`);
    await page.getByRole("textbox").fill(code);
    await page.getByRole("button", { name: "Read the text" }).tap();
    await expect(page.getByRole("main")).toContainText("This job is here already.");
  } finally {
    await other.close();
  }
});

test("a phone that reads codes takes a picture of the paper", async ({ app, host, browser, faults }) => {
  const all = await printed(app);
  const [sheet, none] = [all.find(({ code }) => code), all.find(({ code }) => !code)];
  const other = await browser.newContext(phone);
  try {
    await withBarcodeDetector(other);
    const page = faults.watch(await other.newPage());
    await open(page, `${host.url}#/import`);
    const camera = page.getByLabel("Photograph the code");
    const picture = (buffer) => ({ name: "paper.png", mimeType: "image/png", buffer });
    await camera.setInputFiles(picture(none.png));
    await expect(page.getByRole("main")).toContainText("No code was found.");
    await camera.setInputFiles(picture(sheet.png));
    await isTaken(page);
  } finally {
    await other.close();
  }
});
