// What every spec starts from: a host of its own, and a page on which nothing may go wrong unseen.
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { test as base, expect } from "@playwright/test";
import { First } from "../pages/first.mjs";
import { moreBelow, push } from "../pages/unfold.mjs";
import { Server } from "./server.mjs";

function folder(name) {
  const path = process.env[name];
  if (!path) throw new Error(`${name} is not set: run these tests with \`cargo test --test browser\`.`);
  return path;
}

/** The build under test, and the one that follows it: one byte of one style sheet differs. */
export const dist1 = () => folder("HUBSLATE_DIST_1");
export const dist2 = () => folder("HUBSLATE_DIST_2");

/** What a build's base style sheet says; the two builds differ there. */
export function baseStyle(dist) {
  return readFileSync(join(dist, readdirSync(dist).find((name) => /^base-.*\.css$/.test(name))), "utf8");
}

/** Collects what goes wrong on a page. `allow` names what a test causes on purpose. */
export class Faults {
  #seen = [];
  #allowed = [];

  watch(page) {
    page.on("pageerror", (error) => this.#seen.push(`page error: ${error.message}`));
    page.on("console", (message) => {
      if (message.type() === "error") this.#seen.push(`console: ${message.text()} (${message.location().url})`);
    });
    return page;
  }

  allow(pattern) {
    this.#allowed.push(pattern);
  }

  get unexpected() {
    return this.#seen.filter((fault) => !this.#allowed.some((pattern) => pattern.test(fault)));
  }
}

export const test = base.extend({
  /** The host of this test alone; another test's storage is on another origin. */
  host: async ({}, use) => {
    const host = await new Server(dist1()).start();
    await use(host);
    await host.stop();
  },

  /** Watches every page of the test's context and fails the test at its end. */
  faults: [async ({ context }, use) => {
    const faults = new Faults();
    context.on("page", (page) => faults.watch(page));
    await use(faults);
    expect(faults.unexpected, "errors on the page").toEqual([]);
  }, { auto: true }],

  /** The app, opened and ready. */
  app: async ({ page, host, faults: _ }, use) => {
    await open(page, host.url);
    await use(page);
  },
});

/** Opens an address of the app and waits until it has started. What a new phone asks is answered
 * as `van` says, or put off: then no wrench is known. */
export async function open(page, url, van) {
  await page.goto(url);
  await ready(page, van);
}

/** Waits until the app on the page has started, and goes past what a new phone asks. */
export async function ready(page, van) {
  await started(page);
  const first = new First(page);
  if (!(await first.title.count())) return;
  await (van ? first.answer(van) : first.later());
}

/** Waits until the app on the page has started, whatever it shows. */
export async function started(page) {
  await expect(page.locator("html[data-ready]")).toBeAttached();
  if (pushed.has(page)) return;
  pushed.add(page);
  await page.addLocatorHandler(moreBelow(page), push, { noWaitAfter: true });
}

/** Pages on which what lies below the edge is brought on the screen before a key is touched, as a
 * person does it. */
const pushed = new WeakSet();

/** Waits until this version is kept on the phone, so that the host may go away. */
export async function kept(page) {
  await page.evaluate(async () => { await navigator.serviceWorker.ready; });
  await expect.poll(() => page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    return registration?.active?.state;
  })).toBe("activated");
}

export { expect };
