// Far more entries than work on one car makes: the phone stays usable, and what is long can be stopped.
import { readFileSync } from "node:fs";
import { test, expect, ready } from "./support/fixtures.mjs";
import { journal } from "./support/journal.mjs";
import { fileOf, sampleEntries } from "./support/jobs.mjs";
import { Quick, file } from "./pages/quick.mjs";

/** What is long takes its time on a busy machine. */
const LONG_MS = 60_000;

/** So many entries a log may have to be read by itself. */
const MOST = 20_000;

/** A job of so many entries: a sample, and after it notes that saw each other in turn. */
function long(count) {
  const entries = sampleEntries("replaced-hub");
  const note = { note: { text: "once more" } };
  for (let at = entries.length; at < count; at += 1) {
    const { id: after } = entries.at(-1);
    const id = `019c6c21-0e76-762b-b33a-${at.toString(16).padStart(12, "0")}`;
    entries.push({ ...entries[0], id, n: 100_000 + at, after: [after], what: note });
  }
  return entries;
}

test("a job far too long stays shut, its file can be made, and all of it opens when that is asked", async ({ app }) => {
  test.setTimeout(120_000);
  const quick = new Quick(app);
  const entries = long(MOST + 1);
  const [{ log }] = entries;
  await expect(await quick.take([file("long.json", fileOf(entries))], LONG_MS)).toContainText(`${MOST + 1} of them new`);
  for (const start of ["at once", "after a start"]) {
    await app.evaluate(() => { location.hash = ""; });
    const line = app.getByRole("link", { name: "it is too long" });
    await expect(line, start).toContainText("Unknown what is loose");
    await line.tap();
    await expect(app.getByRole("alert"), start).toContainText("What is loose is unknown. Look at the car.");
    await app.reload();
    await ready(app);
  }
  // The other jobs are as quick as ever.
  await app.evaluate(() => { location.hash = ""; });
  await quick.practice();
  await app.evaluate((id) => { location.hash = `#/job/${id}`; }, log);
  const [download] = await Promise.all([app.waitForEvent("download"), quick.key("Export the job").tap()]);
  const [{ id, entries: made }] = JSON.parse(readFileSync(await download.path(), "utf8")).logs;
  expect([id, made.length]).toEqual([log, MOST + 1]);
  await quick.key("Read it anyway").tap();
  await expect(app.getByRole("link", { name: /loose$/ }).first()).toBeVisible({ timeout: LONG_MS });
  expect(new Set((await journal(app)).filter((it) => it.log === log).map((it) => it.id)).size).toBe(MOST + 1);
});

test("a long file shows how far it is and can be stopped, and then nothing was changed", async ({ app }) => {
  test.setTimeout(120_000);
  const quick = new Quick(app);
  const before = await journal(app);
  const taken = quick.take([file("long.json", fileOf(long(3 * MOST)))], LONG_MS);
  await expect(app.getByRole("progressbar").first()).toBeVisible({ timeout: LONG_MS });
  await quick.key("Stop").tap();
  await expect(await taken).toContainText("Stopped. Nothing was changed.");
  await expect(app.getByRole("progressbar")).toHaveCount(0);
  expect(await journal(app)).toEqual(before);
});
