// The browser and the phone that every test uses.
import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";

const NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

function executable(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function chromium() {
  if (process.env.HUBSLATE_CHROMIUM) return process.env.HUBSLATE_CHROMIUM;
  const folders = (process.env.PATH ?? "").split(delimiter);
  const found = NAMES.flatMap((name) => folders.map((folder) => join(folder, name))).find(executable);
  if (!found) throw new Error("No Chromium: run `cargo run -- browsers`.");
  return found;
}

/** How the browser is started. It asks no host but the test's own. */
export const launchOptions = {
  executablePath: chromium(),
  args: [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
  ],
};

/** A phone held upright, used with fingers. */
export const phone = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
  locale: "en-US",
};
