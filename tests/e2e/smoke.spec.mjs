// The app starts, by its own rules.
import { test, expect, dist1, ready } from "./support/fixtures.mjs";
import { serious } from "./support/audit.mjs";
import { printed } from "./support/paper.mjs";
import { readFileSync } from "node:fs";
import { join } from "node:path";

test("the app starts and says so", async ({ app }) => {
  await expect(app).toHaveTitle(/Hubslate/);
  await expect(app.getByRole("alertdialog")).toBeHidden();
  expect(await serious(app)).toEqual([]);
});

test("what is on the screen can be printed and read", async ({ app }) => {
  const [sheet] = await printed(app);
  expect(sheet).toContain("Hubslate");
});

test("the page may run no script but ours and reach no other host", async ({ app, faults }) => {
  faults.allow(/Content Security Policy|Refused to|violates/i);
  const outcome = await app.evaluate(async () => {
    const broken = [];
    const both = new Promise((resolve) => {
      addEventListener("securitypolicyviolation", (event) => {
        broken.push(event.effectiveDirective);
        if (broken.length === 2) resolve();
      });
    });
    const script = document.createElement("script");
    script.textContent = "window.foreign = true";
    document.head.append(script);
    const reached = await fetch("http://127.0.0.1:9/").then(() => "reached", () => "refused");
    await both;
    return { foreign: window.foreign === true, reached, broken: broken.sort() };
  });
  expect(outcome).toEqual({ foreign: false, reached: "refused", broken: ["connect-src", "script-src-elem"] });
});

test("the phone can install it", async ({ app, host }) => {
  const client = await app.context().newCDPSession(app);
  const { url, errors } = await client.send("Page.getAppManifest");
  expect(errors).toEqual([]);
  expect(url).toBe(new URL("manifest.webmanifest", host.url).href);
  const { installabilityErrors } = await client.send("Page.getInstallabilityErrors");
  expect(installabilityErrors.filter(({ errorId }) => errorId !== "in-incognito")).toEqual([]);
});

test("where the second part of the program does not come, that is said, and it comes once there is a signal", async ({ page, host, faults }) => {
  faults.allow(/Failed to fetch|ERR_FAILED|split module/);
  await page.route("**/late-*.wasm", (route) => route.abort());
  await page.goto(`${host.url}#/import`);
  const main = page.getByRole("main");
  await expect(main.getByRole("alert")).toHaveText(/not on the phone yet/);
  expect(await serious(page)).toEqual([]);
  await page.unroute("**/late-*.wasm");
  await main.getByRole("button", { name: "Try again" }).tap();
  await expect(main.getByRole("heading", { name: "Import a file" })).toBeVisible();
});

test("a start that fails shows the panel, and its key saves what is kept", async ({ page, host, faults }) => {
  faults.allow(/Failed to fetch|ERR_FAILED/);
  await page.route("**/*.wasm", (route) => route.abort());
  await page.goto(host.url);
  const panel = page.getByRole("alertdialog", { name: "Hubslate has stopped" });
  await expect(panel).toBeVisible();
  expect(await serious(page)).toEqual([]);

  const before = await page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name));
  await plant(page);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    panel.getByRole("button", { name: "Save all my data to a file" }).tap(),
  ]);
  const saved = JSON.parse(readFileSync(await download.path(), "utf8"));
  expect(before).toEqual([]);
  expect(saved.entries).toEqual([{ log: "job-1", id: "entry-1", text: "{\"v\":1}" }]);
  expect(saved.local).toEqual({ "hubslate:settings": "{}" });
  expect([saved.aside, saved.backup]).toEqual([[], ["the second"]]);
  expect(saved.problems).toEqual([]);
  await expect(panel.getByRole("status")).toContainText("1 entries saved");

  await page.unroute("**/*.wasm");
  await panel.getByRole("button", { name: "Reload" }).tap();
  await ready(page);
  await expect(panel).toBeHidden();
});

test("saving where nothing was kept leaves no empty journal behind", async ({ page, host, faults }) => {
  faults.allow(/Failed to fetch|ERR_FAILED/);
  await page.route("**/*.wasm", (route) => route.abort());
  await page.goto(host.url);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save all my data to a file" }).tap(),
  ]);
  expect(JSON.parse(readFileSync(await download.path(), "utf8")).local).toEqual({});
  expect(await page.evaluate(async () => (await indexedDB.databases()).length)).toBe(0);
});

test("a place that the panel cannot read is said, and the others are saved", async ({ page, host, faults }) => {
  faults.allow(/Failed to fetch|ERR_FAILED/);
  await page.addInitScript(() => {
    navigator.storage.getDirectory = () => Promise.reject(new DOMException("denied", "SecurityError"));
  });
  await page.route("**/*.wasm", (route) => route.abort());
  await page.goto(host.url);
  await page.evaluate(() => localStorage.setItem("hubslate:settings", "{}"));
  const panel = page.getByRole("alertdialog", { name: "Hubslate has stopped" });
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    panel.getByRole("button", { name: "Save all my data to a file" }).tap(),
  ]);
  const saved = JSON.parse(readFileSync(await download.path(), "utf8"));
  expect(saved.local).toEqual({ "hubslate:settings": "{}" });
  expect(saved.problems).toEqual(expect.arrayContaining(["backup-1: SecurityError", "backup-2: SecurityError"]));
  await expect(panel.getByRole("status")).toContainText("Not everything could be read");
  await expect(panel.getByRole("status")).toContainText("backup-1: SecurityError");
});

test("every file of the build is what its worker says", async () => {
  const worker = readFileSync(join(dist1(), "sw.js"), "utf8");
  expect(worker).toMatch(/^const VERSION = "[0-9a-f]{16}";$/m);
  expect(worker).toMatch(/^const PRECACHE = \[\["\.\/","sha384-/m);
});

/** What an app that ran earlier would have left on the phone, and something of a neighbour. */
async function plant(page) {
  await page.evaluate(async () => {
    const root = await navigator.storage.getDirectory();
    const file = await (await root.getFileHandle("backup-2", { create: true })).createWritable();
    await file.write("the second");
    await file.close();
  });
  await page.evaluate(() => new Promise((resolve, reject) => {
    localStorage.setItem("hubslate:settings", "{}");
    localStorage.setItem("neighbour:secret", "no");
    const opening = indexedDB.open("hubslate", 1);
    opening.onupgradeneeded = () => {
      opening.result.createObjectStore("entries", { keyPath: ["log", "id"] })
        .add({ log: "job-1", id: "entry-1", text: "{\"v\":1}" });
    };
    opening.onsuccess = () => { opening.result.close(); resolve(); };
    opening.onerror = () => reject(opening.error);
  }));
}
