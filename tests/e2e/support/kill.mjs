// Killing the browser as a phone does it: at once, everything, with no chance to save.
// Works where /proc is: on Linux.
import { execFileSync } from "node:child_process";
import { cp, mkdtemp, readFile, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { chromium } from "@playwright/test";
import { launchOptions, phone } from "./phone.mjs";

/** One browser profile that outlives the browsers which use it. */
export class Profile {
  #folder;
  #context = null;
  #options;
  #disk = null;

  /** `options` are those of a browser context, on top of the usual phone. */
  static async make(options = {}) {
    const profile = new Profile();
    profile.#folder = await mkdtemp(join(tmpdir(), "hubslate-profile-"));
    profile.#options = options;
    return profile;
  }

  /** Starts a browser on the profile; gives its context. */
  async open() {
    const env = this.#disk ? { ...process.env, ...this.#disk } : process.env;
    this.#context = await chromium.launchPersistentContext(this.#folder, {
      ...launchOptions, ...phone, ...this.#options, env,
    });
    return this.#context;
  }

  /** From the next start on, the disk forgets at a cut what was not flushed; all there is now is. */
  async forgetting() {
    const flushed = `${this.#folder}-flushed`;
    const library = `${flushed}.so`;
    const source = fileURLToPath(new URL("disk.c", import.meta.url));
    execFileSync("cc", ["-shared", "-fPIC", "-O2", "-o", library, source, "-ldl"]);
    this.#disk = { LD_PRELOAD: library, DISK_PROFILE: this.#folder, DISK_FLUSHED: flushed };
    await this.#context?.close();
    await cp(this.#folder, flushed, { recursive: true, verbatimSymlinks: true });
  }

  /** The power is cut: the browser is gone, and on the disk is what was flushed. Gives how many
   * files of the site's storage are not as the browser had written them. */
  async cut() {
    await this.kill();
    const { DISK_FLUSHED: flushed } = this.#disk;
    let forgotten = 0;
    for (const place of ["IndexedDB", "File System", "Local Storage"]) {
      const written = join(this.#folder, "Default", place);
      for (const name of await readdir(written, { recursive: true })) {
        const [was, is] = await Promise.all([join(written, name), join(flushed, "Default", place, name)]
          .map((path) => readFile(path).catch(() => null)));
        if (was && (!is || !was.equals(is))) forgotten += 1;
      }
    }
    await writeFile(`${flushed}.names`, "");
    await rm(this.#folder, { recursive: true, maxRetries: 5 });
    await cp(flushed, this.#folder, { recursive: true, verbatimSymlinks: true });
    return forgotten;
  }

  /** SIGKILL to the browser and all its children; returns when they are gone. */
  async kill() {
    const pid = await this.#browser();
    const gone = new Promise((resolve) => this.#context.once("close", resolve));
    process.kill(-pid, "SIGKILL");
    await gone;
    while (await this.#find()) await pause(20);
    this.#context = null;
  }

  /** The browser's own databases are gone, as after a torn file that it could not read. */
  async loseDatabases() {
    await rm(join(this.#folder, "Default", "IndexedDB"), { recursive: true });
  }

  /** The same for what the browser keeps of localStorage. */
  async loseLocal() {
    await rm(join(this.#folder, "Default", "Local Storage"), { recursive: true });
  }

  /** The disk gives other bytes for one word of the backup journal; both are of one length. */
  async hurtBackup(was, is) {
    const hurt = await this.#backups((text) => text.includes(was) && text.replaceAll(was, is));
    if (hurt !== 1) throw new Error(`The backup journal names ${was} in ${hurt} files.`);
  }

  /** The last line never came into the backup journal: the browser had died before it. */
  async shortenBackup() {
    const short = await this.#backups((text) => text.endsWith("\n") && text.slice(0, text.lastIndexOf("\n", text.length - 2) + 1));
    if (short !== 1) throw new Error(`The backup journal is in ${short} files.`);
  }

  /** Gives each file of the backup journal that has lines the text that `with_` makes of it; tells how many. */
  async #backups(with_) {
    const folder = join(this.#folder, "Default", "File System");
    let changed = 0;
    for (const name of await readdir(folder, { recursive: true })) {
      const path = join(folder, name);
      const text = await readFile(path, "latin1").catch(() => "");
      const is = text.startsWith("hubslate backup") && with_(text);
      if (!is) continue;
      await writeFile(path, is, "latin1");
      changed += 1;
    }
    return changed;
  }

  /** Ends an open browser in the usual way and removes the profile. */
  async remove() {
    await this.#context?.close();
    for (const name of ["", "-flushed", "-flushed.so", "-flushed.names", "-flushed.lock"]) {
      await rm(this.#folder + name, { recursive: true, force: true, maxRetries: 5 });
    }
  }

  async #browser() {
    const pid = await this.#find();
    if (!pid) throw new Error(`No browser runs on ${this.#folder}.`);
    return pid;
  }

  /** The browser itself is the process on this profile that is of no special type. */
  async #find() {
    for (const name of await readdir("/proc")) {
      if (!/^\d+$/.test(name)) continue;
      const line = await readFile(`/proc/${name}/cmdline`, "utf8").catch(() => "");
      const words = line.split("\0");
      const ours = words.includes(`--user-data-dir=${this.#folder}`);
      if (ours && !words.some((word) => word.startsWith("--type="))) return Number(name);
    }
    return null;
  }
}
