// How the browser tests run. tests/browser.rs gives the folders in environment variables.
import { join } from "node:path";
import { defineConfig } from "@playwright/test";
import { launchOptions, phone } from "./support/phone.mjs";

const results = process.env.HUBSLATE_RESULTS ?? "test-results";

export default defineConfig({
  testDir: ".",
  testMatch: "**/*.spec.mjs",
  outputDir: join(results, "files"),
  // A test that passes the second time has found something; it is not hidden.
  retries: 0,
  workers: 2,
  forbidOnly: true,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: [["list"], ["json", { outputFile: join(results, "report.json") }]],
  use: { ...phone, launchOptions, trace: "off" },
  projects: [{ name: "phone" }],
});
