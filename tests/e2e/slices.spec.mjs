// A long file is read slice by slice: looked at whole before anything of it is kept, and taken a few jobs
// at a time, each whole.
import { test, expect } from "./support/fixtures.mjs";
import { journal } from "./support/journal.mjs";
import { another, fileOf, sampleEntries } from "./support/jobs.mjs";
import { Quick, file } from "./pages/quick.mjs";

/** What is long takes its time on a busy machine. */
const LONG_MS = 120_000;
/** So many jobs are longer than what is read whole. */
const JOBS = 200;

const entries = sampleEntries("replaced-hub");
const jobs = Array.from({ length: JOBS }, (_, number) => another(entries, number + 1));
const text = fileOf(...jobs);

/** The jobs that the phone has, each with how many entries. */
async function here(page) {
  const count = new Map();
  for (const { log } of await journal(page)) count.set(log, (count.get(log) ?? 0) + 1);
  return count;
}

test.beforeEach(() => {
  test.setTimeout(3 * LONG_MS);
  expect(text.length).toBeGreaterThan(8 << 20);
});

test("a long file comes in, and comes in again without a change", async ({ app }) => {
  const quick = new Quick(app);
  const sum = `${JOBS * entries.length} entries`;
  const taken = await quick.take([file("all.json", text)], LONG_MS);
  await expect(taken).toContainText(`${JOBS * entries.length} of them new`);
  await expect(taken.getByRole("link", { name: "Open the job" })).toHaveCount(20);
  const count = await here(app);
  expect(count.size, sum).toBe(JOBS);
  expect(new Set(count.values())).toEqual(new Set([entries.length]));
  await expect(await quick.take([file("all.json", text)], LONG_MS)).toContainText("Everything in this file was here already.");
});

test("a fault in its last job changes nothing", async ({ app }) => {
  const quick = new Quick(app);
  const last = text.lastIndexOf('"by":"');
  const edited = `${text.slice(0, last)}"by":"X${text.slice(last + '"by":"'.length)}`;
  await expect(await quick.take([file("edited.json", edited)], LONG_MS)).toContainText("Nothing was changed.");
  const cut = text.slice(0, -100);
  await expect(await quick.take([file("cut.json", cut)], LONG_MS)).toContainText("Nothing was changed.");
  expect((await here(app)).size).toBe(0);
});

test("stopped half way the jobs that came are whole, and the same file brings the rest", async ({ app }) => {
  const quick = new Quick(app);
  // Stop is tapped when a few jobs were kept; a tap by hand could come before or after.
  await app.evaluate(() => {
    let kept = 0;
    const { add } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.add = function (...given) {
      kept += this.name === "entries" ? 1 : 0;
      if (kept === 10_000) {
        const keys = [...document.querySelectorAll(".work button")];
        keys.find((key) => key.textContent.includes("Stop"))?.click();
      }
      return add.apply(this, given);
    };
  });
  await expect(await quick.take([file("all.json", text)], LONG_MS)).toContainText("The jobs that came in are whole.");
  const some = await here(app);
  expect(some.size).toBeGreaterThan(0);
  expect(some.size).toBeLessThan(JOBS);
  expect(new Set(some.values())).toEqual(new Set([entries.length]));
  const rest = (JOBS - some.size) * entries.length;
  await expect(await quick.take([file("all.json", text)], LONG_MS)).toContainText(`${rest} of them new`);
  expect((await here(app)).size).toBe(JOBS);
});
