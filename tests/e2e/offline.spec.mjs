// One visit with a signal is enough, and what the browser drops of it is fetched again or said.
// "No signal" means that the host is stopped.
import { test, expect, kept, open, ready } from "./support/fixtures.mjs";

test("after one visit the app reloads without a signal", async ({ app, host }) => {
  await kept(app);
  await host.stop();
  await app.reload();
  await ready(app);
});

test("a new tab opens deep in the app without a signal", async ({ app, host, context }) => {
  await kept(app);
  await host.stop();
  const tab = await context.newPage();
  await open(tab, `${host.url}#/job/unknown/gauge`);
  await open(tab, `${host.url}index.html#/settings`);
  await open(tab, `${host.url}?from=home-screen`);
});

test("without a visit there is nothing, so the host does stop", async ({ page, host, faults }) => {
  faults.allow(/ERR_CONNECTION_REFUSED/);
  await host.stop();
  await expect(page.goto(host.url)).rejects.toThrow(/ERR_CONNECTION_REFUSED/);
});

test("a second start asks the host for nothing but a newer worker", async ({ app, host }) => {
  await kept(app);
  await app.reload();
  await ready(app);
  host.forget();
  await app.reload();
  await ready(app);
  await expect.poll(() => host.asked.filter((path) => path !== "/sw.js")).toEqual([]);
});

/** Drops every file of the app, as a browser does that needs the room. */
const emptied = (page) => page.evaluate(async () => {
  for (const name of await caches.keys()) await caches.delete(name);
});

/** How many files of the app are kept. */
const files = (page) => page.evaluate(async () => {
  const [name] = await caches.keys();
  return name ? (await (await caches.open(name)).keys()).length : 0;
});

test("an emptied cache is whole again after one load with a signal", async ({ app, host }) => {
  await kept(app);
  await app.reload();
  await ready(app);
  const before = await files(app);
  await emptied(app);
  expect(await files(app)).toBe(0);
  await app.reload();
  await ready(app);
  expect(await files(app)).toBe(before);
  await host.stop();
  await app.reload();
  await ready(app);
});

test("an emptied cache without a signal is said, and mended by the next signal", async ({ app, host, faults }) => {
  faults.allow(/503|ERR_CONNECTION_REFUSED/);
  await kept(app);
  await app.reload();
  await ready(app);
  await emptied(app);
  await host.stop();
  await app.reload();
  await expect(app.getByRole("heading")).toHaveText("Hubslate cannot open without a signal");
  await host.start();
  await app.getByRole("link", { name: "open Hubslate again" }).click();
  await ready(app);
});

test("a path that is no page of the app leads home", async ({ app, host, context }) => {
  await kept(app);
  await host.stop();
  const tab = await context.newPage();
  await open(tab, `${host.url}no/such/page`);
  await expect(tab).toHaveURL(host.url);
});

test("every place of a job that is not on this phone leads home", async ({ app, host }) => {
  for (const place of ["", "/where", "/loose", "/bill", "/report", "/runout", "/thickness", "/notes", "/erase", "/truth"]) {
    await app.goto(`${host.url}#/job/unknown${place}`);
    await app.getByRole("main").getByRole("link", { name: "Back", exact: true }).tap();
    await expect(app).toHaveURL(`${host.url}#/`);
  }
});
