// The way out when the app itself has stopped: reload, or save everything to a file.
// It uses nothing of the app, so that it works whatever has happened to the app.
"use strict";

(() => {
  const DATABASE = "hubslate";
  // Two texts beside the database, of which either may be missing.
  const BACKUPS = ["backup-1", "backup-2"];
  const PREFIX = "hubslate:";

  const byId = (id) => document.getElementById(id);
  const show = () => {
    byId("app")?.setAttribute("hidden", "");
    byId("crash")?.removeAttribute("hidden");
  };

  // An app that cannot even start has no panic hook yet; its faults arrive here.
  const started = () => document.documentElement.hasAttribute("data-ready");
  const fault = () => { if (!started()) whenParsed(show); };
  addEventListener("error", (event) => { if (event instanceof ErrorEvent) fault(); });
  addEventListener("unhandledrejection", fault);

  function whenParsed(act) {
    if (document.readyState === "loading") addEventListener("DOMContentLoaded", act, { once: true });
    else act();
  }

  function answer(request) {
    return new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
  }

  async function stored(store) {
    const opening = indexedDB.open(DATABASE);
    // Opening must not leave an empty database behind where there was none.
    opening.onupgradeneeded = () => opening.transaction.abort();
    const database = await answer(opening);
    try {
      if (!database.objectStoreNames.contains(store)) return [];
      return await answer(database.transaction(store).objectStore(store).getAll());
    } finally {
      database.close();
    }
  }

  function kept() {
    const all = {};
    for (let n = 0; n < localStorage.length; n += 1) {
      const key = localStorage.key(n);
      if (key.startsWith(PREFIX)) all[key] = localStorage.getItem(key);
    }
    return all;
  }

  async function backup(name) {
    const root = await navigator.storage?.getDirectory?.();
    try {
      return await (await (await root?.getFileHandle(name))?.getFile())?.text() ?? null;
    } catch (error) {
      if (error?.name === "NotFoundError") return null;
      throw error;
    }
  }

  async function backups(problems) {
    const texts = [];
    for (const name of BACKUPS) texts.push(await part(() => backup(name), name, problems));
    return texts.filter((text) => text !== null);
  }

  // What one place refuses must not stop the others from being saved.
  async function part(read, what, problems) {
    try {
      return await read();
    } catch (error) {
      problems.push(`${what}: ${error?.name ?? error}`);
      return null;
    }
  }

  async function everything() {
    const problems = [];
    return {
      format: "hubslate-rescue",
      version: 1,
      saved_at: new Date().toISOString(),
      entries: await part(() => stored("entries"), "journal", problems),
      aside: await part(() => stored("aside"), "set aside", problems),
      local: await part(async () => kept(), "second copy", problems),
      backup: await backups(problems),
      problems,
    };
  }

  async function save() {
    const all = await everything();
    const url = URL.createObjectURL(new Blob([JSON.stringify(all, null, 1)], { type: "application/json" }));
    const link = document.createElement("a");
    link.href = url;
    link.download = `hubslate-rescue-${all.saved_at.slice(0, 10)}.json`;
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(url), 60_000);
    const count = (all.entries ?? []).length;
    byId("crash-note").textContent = all.problems.length === 0
      ? `${count} entries saved to ${link.download}. Photos stay on the phone.`
      : `Not everything could be read (${all.problems.join("; ")}). The rest is in ${link.download}.`;
  }

  whenParsed(() => {
    byId("crash-reload").addEventListener("click", () => location.reload());
    byId("crash-save").addEventListener("click", save);
  });
})();
