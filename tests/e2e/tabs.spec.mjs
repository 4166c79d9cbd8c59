// Two tabs on one job: each sees what the other has kept, and nothing is lost.
import { readFileSync } from "node:fs";
import { test, expect, open, ready } from "./support/fixtures.mjs";
import { journal } from "./support/journal.mjs";
import { Quick } from "./pages/quick.mjs";

const loose = (page) => page.getByRole("link", { name: /loose$/ });

/** Both tabs show the same step and the same count of loose things. */
async function agree(quicks, label) {
  for (const quick of quicks) await quick.isAt(label);
  const [count] = await Promise.all(quicks.map(({ page }) => loose(page).textContent()));
  for (const { page } of quicks) await expect(loose(page)).toHaveText(count);
  return Number.parseInt(count, 10);
}

/** Readings that condemn the old hub. */
const WORN = { "Push, pull, read": (quick) => quick.round("6") };

/** A practice job that one tab has brought to a step, open in two tabs from there on. */
async function twoTabs(app, context, label) {
  const first = new Quick(app);
  await first.practice();
  await first.walk(label);
  const tab = await context.newPage();
  await open(tab, app.url());
  const second = new Quick(tab);
  await second.isAt(label);
  return [first, second];
}

/** The entries of the open job, as its file has them. */
async function exported(quick) {
  await quick.report();
  const download = quick.page.waitForEvent("download");
  await quick.key("Export the job").tap();
  return JSON.parse(readFileSync(await (await download).path(), "utf8")).logs[0].entries;
}

/** Writes a note at the step on the screen, up to the key that keeps it. */
async function writeNote(quick, text) {
  await quick.key("More").tap();
  await quick.key("Note").tap();
  await quick.main.getByRole("textbox").fill(text);
}

test("two tabs tapped in turn show the same step and lose nothing", async ({ app, context }) => {
  test.setTimeout(150_000);
  const tabs = await twoTabs(app, context, "Measure: Loosen lug nuts");
  let most = 0;
  for (let turn = 0; await tabs[0].label() !== "Torque: Hub bolts"; turn += 1) {
    const [one, other] = turn % 2 ? [tabs[1], tabs[0]] : tabs;
    // A tab that nobody sees draws nothing, and its keys wait for what they ask to be seen.
    await one.page.bringToFront();
    await one.step(WORN);
    const label = await one.label();
    // The customer's page has nothing on it but what the customer needs.
    if (label === "Approve: Customer's answer") await other.isAt(label);
    else most = Math.max(most, await agree(tabs, label));
  }
  // 5 lug nuts, wheel, 2 pins, caliper, pads, stake, axle nut, 2 bracket bolts, bracket, rotor,
  // sensor wire, 4 hub bolts, hub, plate.
  expect(most).toBe(23);
  const entries = await exported(tabs[0]);
  expect(await exported(tabs[1])).toEqual(entries);
  const answered = entries.flatMap(({ what }) => (what.answered ? [what.answered.step] : []));
  expect(new Set(answered).size, "no answer twice").toBe(answered.length);
  const pulls = entries.flatMap(({ what }) => (what.reading ? [[what.reading.round, what.reading.divisions]] : []));
  expect(pulls).toEqual([[1, "6"], [2, "6"], [3, "6"]]);
  // Each entry has seen the one before it, whichever tab wrote it.
  for (const [place, entry] of entries.entries()) {
    expect(entry.after).toEqual(place === 0 ? [] : [entries[place - 1].id]);
  }
});

test("two tabs that write in the same moment keep both", async ({ app, context }) => {
  const tabs = await twoTabs(app, context, "Site: The ground");
  const notes = ["left tab", "right tab"];
  for (const [place, quick] of tabs.entries()) await writeNote(quick, notes[place]);
  // A finger is on one tab only: the two keys are pressed by the pages themselves, at once.
  const [one, other] = tabs.map((quick) => quick.key("Save"));
  await other.evaluate((key) => { new BroadcastChannel("now").onmessage = () => key.click(); });
  await one.evaluate((key) => {
    new BroadcastChannel("now").postMessage("press");
    key.click();
  });
  const of = (entries) => entries.flatMap(({ what }) => (what.note ? [what.note.text] : [])).sort();
  await expect.poll(async () => of((await journal(app)).map(({ text }) => JSON.parse(text)))).toEqual(notes);
  for (const quick of tabs) expect(of(await exported(quick))).toEqual(notes);
});

test("practice that one tab threw away comes back from no other", async ({ app, context }) => {
  const [first, second] = await twoTabs(app, context, "Site: The ground");
  await app.bringToFront();
  await app.evaluate(() => { location.hash = ""; });
  const hold = first.key(/^Delete it/);
  await hold.scrollIntoViewIfNeeded();
  await hold.hover();
  await app.mouse.down();
  await expect(hold).toHaveCount(0);
  await app.mouse.up();
  await expect.poll(async () => (await journal(app)).length).toBe(0);
  // The other tab says so, and what it writes next brings nothing of it back.
  await second.page.bringToFront();
  await expect(second.page.getByText("There is no such job on this phone.")).toBeVisible();
  await second.page.evaluate(() => { location.hash = ""; });
  await second.practice();
  await second.page.reload();
  await ready(second.page);
  await second.isAt("Site: The ground");
  const logs = new Set((await journal(second.page)).map(({ log }) => log));
  expect(logs.size).toBe(1);
  await second.page.evaluate(() => { location.hash = ""; });
  await expect(second.page.getByRole("listitem")).toHaveCount(1);
});

test("two tabs on two jobs take no running number twice", async ({ app, context, host }) => {
  const first = new Quick(app);
  await first.practice();
  const tab = await context.newPage();
  await open(tab, host.url);
  const second = new Quick(tab);
  await second.practice();
  for (const label of ["Check-in: The right car", "Check-in: Odometer"]) {
    for (const quick of [first, second]) {
      await quick.page.bringToFront();
      await quick.walk(label);
    }
  }
  const kept = (await journal(tab)).map(({ text }) => JSON.parse(text));
  expect(new Set(kept.map(({ log }) => log)).size).toBe(2);
  expect(new Set(kept.map(({ device, n }) => `${device} ${n}`)).size).toBe(kept.length);
});

test("at the place of one job no step of another is shown", async ({ app }) => {
  const quick = new Quick(app);
  const hash = () => app.evaluate(() => location.hash);
  await quick.practice();
  await quick.walk("Check-in: The right car");
  const first = await hash();
  await app.evaluate(() => { location.hash = ""; });
  await quick.practice();
  // What is read of the other job takes its time.
  await app.evaluate(() => {
    const { getAll } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.getAll = function (...given) {
      const request = getAll.apply(this, given);
      if (this.name !== "entries") return request;
      Object.defineProperty(request, "onsuccess", {
        set(heard) { request.addEventListener("success", (event) => { globalThis.answer = () => heard.call(request, event); }); },
      });
      return request;
    };
  });
  await app.evaluate((to) => { location.hash = to; }, first);
  await expect.poll(() => app.evaluate(() => typeof globalThis.answer)).toBe("function");
  await expect(app.getByRole("main")).not.toHaveAttribute("aria-label", /./);
  await app.evaluate(() => globalThis.answer());
  await quick.isAt("Check-in: The right car");
});

/** A tab that has begun to load the app, and whose program waits. */
async function loading(context, url) {
  const tab = await context.newPage();
  await tab.addInitScript(() => {
    const real = WebAssembly.instantiate;
    const held = new Promise((go) => { globalThis.goOn = go; });
    WebAssembly.instantiate = async (...all) => { await held; return real.apply(WebAssembly, all); };
  });
  await tab.goto(url);
  // The page's first script has read what the first screen shows.
  await expect.poll(() => tab.evaluate(() => Promise.resolve(globalThis.hubslateFirst).then(Boolean))).toBe(true);
  return tab;
}

test("what one tab writes while another one loads is in its list", async ({ app, context, host }) => {
  const first = new Quick(app);
  await first.practice();
  await first.isAt("Site: The ground");
  const tab = await loading(context, host.url);
  await app.bringToFront();
  await first.walk("Check-in: Odometer");
  await tab.bringToFront();
  await tab.evaluate(() => globalThis.goOn());
  await ready(tab);
  await expect(tab.getByRole("listitem")).toContainText("Odometer");
});

test("a tab that loads lets the database go to a newer version, and says what is left", async ({ app, context, host }) => {
  const tab = await loading(context, host.url);
  const raised = await app.evaluate(() => new Promise((told, refused) => {
    const opening = indexedDB.open("hubslate", 3);
    opening.onblocked = () => told("blocked");
    opening.onerror = () => refused(opening.error);
    opening.onsuccess = () => { opening.result.close(); told("opened"); };
  }));
  expect(raised).toBe("opened");
  await tab.bringToFront();
  await tab.evaluate(() => globalThis.goOn());
  await ready(tab);
  await expect(new Quick(tab).alert("The browser's database cannot be used")).toBeVisible();
});
