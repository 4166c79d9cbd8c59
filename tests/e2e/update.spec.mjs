// A new version comes whole or not at all, and only when the technician agrees.
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test, expect, baseStyle, dist1, dist2, kept, ready } from "./support/fixtures.mjs";
import { Quick } from "./pages/quick.mjs";

/** The upload broke off: the new worker and page are there, the changed style sheet is not. */
function halfUpload() {
  const folder = mkdtempSync(join(tmpdir(), "hubslate-half-"));
  cpSync(dist1(), folder, { recursive: true });
  for (const name of ["sw.js", "index.html"]) cpSync(join(dist2(), name), join(folder, name));
  return folder;
}

/** The base style sheet as the page gets it now, through the worker. */
function styleOf(page) {
  return page.evaluate(async () => {
    const link = [...document.querySelectorAll("link[rel=stylesheet]")].find(({ href }) => /\/base-/.test(href));
    return (await fetch(link.href)).text();
  });
}

const cacheNames = (page) => page.evaluate(async () => (await caches.keys()).sort());

/** Asks for a newer worker and waits until the answer is in: "waiting", or why not. */
function lookForUpdate(page) {
  return page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    const found = new Promise((resolve) => {
      registration.addEventListener("updatefound", () => resolve(registration.installing), { once: true });
    });
    await registration.update();
    const worker = await found;
    const settled = () => ["installed", "activating", "activated", "redundant"].includes(worker.state);
    await new Promise((resolve) => {
      if (settled()) resolve();
      else worker.addEventListener("statechange", () => { if (settled()) resolve(); });
    });
    return worker.state;
  });
}

/** The technician agrees, at home, where the new version is offered; the page loads once more. */
async function accept(page) {
  const offer = page.getByRole("status").filter({ hasText: "A new version is ready." });
  await expect(offer).toBeVisible();
  const reloaded = page.waitForEvent("load");
  await offer.getByRole("button", { name: "Update now" }).tap();
  await reloaded;
  await ready(page);
}

test.beforeEach(async ({ app }) => {
  await kept(app);
  // The first visit has no worker yet; from the second on it has.
  await app.reload();
  await ready(app);
});

test("the two builds differ", () => {
  expect(baseStyle(dist1())).not.toBe(baseStyle(dist2()));
});

test("half an upload changes nothing", async ({ app, host, faults }) => {
  faults.allow(/integrity|digest|Failed to fetch|sw\.js/i);
  const before = await cacheNames(app);
  const half = halfUpload();
  try {
    host.switchTo(half);
    expect(await lookForUpdate(app)).toBe("redundant");
    expect(await cacheNames(app)).toEqual(before);
    await host.stop();
    await app.reload();
    await ready(app);
    expect(await styleOf(app)).toBe(baseStyle(dist1()));
  } finally {
    rmSync(half, { recursive: true });
  }
});

test("the old version stays until the new one is accepted", async ({ app, host, context }) => {
  host.switchTo(dist2());
  expect(await lookForUpdate(app)).toBe("installed");
  await app.reload();
  await ready(app);
  expect(await styleOf(app)).toBe(baseStyle(dist1()));
  const tab = await context.newPage();
  await tab.goto(host.url);
  await ready(tab);
  expect(await styleOf(tab)).toBe(baseStyle(dist1()));
  await tab.close();

  await accept(app);
  expect(await styleOf(app)).toBe(baseStyle(dist2()));
  await host.stop();
  await app.reload();
  await ready(app);
  expect(await styleOf(app)).toBe(baseStyle(dist2()));
});

test("an update removes our old version and nothing of a neighbour", async ({ app, host }) => {
  await app.evaluate(async () => {
    for (const name of ["neighbour-v1", "hubslate /elsewhere/ 1"]) {
      await (await caches.open(name)).put("/theirs", new Response("theirs"));
    }
  });
  const before = await cacheNames(app);
  host.switchTo(dist2());
  expect(await lookForUpdate(app)).toBe("installed");
  await accept(app);
  await expect.poll(async () => (await cacheNames(app)).length).toBe(before.length);
  const after = await cacheNames(app);
  const ours = (names) => names.filter((name) => name.startsWith("hubslate / "));
  expect(ours(after)).toHaveLength(1);
  expect(ours(after)).not.toEqual(ours(before));
  expect(after.filter((name) => !ours(after).includes(name))).toEqual(["hubslate /elsewhere/ 1", "neighbour-v1"]);
  expect(await app.evaluate(async () => (await (await caches.open("neighbour-v1")).match("/theirs")).text())).toBe("theirs");
});

test("a new version is not offered in the middle of a step, and a job is there after it", async ({ app, host }) => {
  const quick = new Quick(app);
  await quick.practice();
  await quick.walk("Check-in: The right car");
  host.switchTo(dist2());
  expect(await lookForUpdate(app)).toBe("installed");
  await expect(quick.key("Update now")).toHaveCount(0);
  await quick.walk("Check-in: Odometer");
  expect(await styleOf(app)).toBe(baseStyle(dist1()));
  await app.evaluate(() => { location.hash = "#/"; });
  await accept(app);
  expect(await styleOf(app)).toBe(baseStyle(dist2()));
  await quick.main.getByRole("link", { name: /PRC 001/ }).tap();
  await quick.isAt("Check-in: Odometer");
});
