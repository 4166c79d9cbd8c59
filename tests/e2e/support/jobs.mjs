// Files of jobs for the tests: the samples as they are, cut short, or changed and sealed again.
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";

const sha256 = (text) => createHash("sha256").update(text).digest("hex");

/** The text of one of the published samples. */
export function sampleText(name) {
  return readFileSync(new URL(`../../../public/sample/${name}.json`, import.meta.url), "utf8");
}

/** The text of an exported file; the command on a computer must compute the same of it. */
export function verified(path) {
  execFileSync(process.env.HUBSLATE_COMMAND, ["verify", path]);
  return readFileSync(path, "utf8");
}

/** The entries of a sample, in the order in which they were written. */
export function sampleEntries(name) {
  return JSON.parse(sampleText(name)).logs[0].entries;
}

/** The entries before the first one that `ends` holds for; none ending is a mistake of the test. */
export function before(entries, ends) {
  const at = entries.findIndex(({ what }) => ends(what));
  if (at < 0) throw new Error("No entry of this sample ends the cut.");
  return entries.slice(0, at);
}

/** A whole file of these jobs, each given by its entries, with the digests that an export gives. */
export function fileOf(...jobs) {
  const logs = jobs.map((entries) => {
    const digests = entries.map((entry) => sha256(JSON.stringify(entry))).sort();
    return { kind: "job", id: entries[0].log, digest: sha256(digests.join("\n")), entries };
  });
  return JSON.stringify({ format: "hubslate", version: 1, made_by: "a test", logs });
}

/** The same entries as another job: its identity and those of all its entries are new. */
export function another(entries, number) {
  const renew = (id) => id.replace(/-7[0-9a-f]{3}-/, `-7${number.toString(16).padStart(3, "0")}-`);
  const known = [entries[0].log, ...entries.map(({ id }) => id)];
  const renewed = new Map(known.map((id) => [id, renew(id)]));
  if (new Set(renewed.values()).size !== new Set(known).size) throw new Error("Two identities fell together.");
  const text = JSON.stringify(entries).replace(/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/g, (id) => renewed.get(id) ?? id);
  return JSON.parse(text);
}
