// One visit with a signal is enough. "No signal" means that the host is stopped.
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
