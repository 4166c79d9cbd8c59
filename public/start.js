// Runs first, while the page is still read: everything that the app will ask for is on its way
// before the app is there. Nothing here is needed: what is missing the app asks for by itself, and
// there it hears of every refusal.
"use strict";

(() => {
  // The build writes the two lines below.
  const GLUE = "";
  const PROGRAM = "";

  document.documentElement.dataset.loading = "";

  const parsed = new Promise((done) => {
    if (document.readyState === "loading") addEventListener("DOMContentLoaded", done, { once: true });
    else done();
  });

  // A host that serves it as another type, or a browser that cannot: then the glue takes it whole.
  async function compiled() {
    try {
      return await WebAssembly.compileStreaming(fetch(PROGRAM));
    } catch {
      return PROGRAM;
    }
  }

  async function begin() {
    const [{ default: init }, module_or_path] = await Promise.all([import(GLUE), compiled(), parsed]);
    await init({ module_or_path });
  }

  /** Leaves a thing for the app, which takes it once. */
  const leave = (name, thing) => { globalThis[name] = thing; };
  const takeBack = (...names) => names.forEach((name) => delete globalThis[name]);

  /** The worker of the backup journal, asked what its files say. */
  function askBackup() {
    const worker = new Worker("./backup.js");
    leave("hubslateBackup", worker);
    worker.onerror = () => takeBack("hubslateBackup");
    worker.onmessage = ({ data }) => leave("hubslateBackupSaid", data);
    worker.postMessage({ id: 0, act: "look" });
  }

  /** The database, if there is one: making it and raising it is the app's business. */
  function openDatabase() {
    const opening = indexedDB.open("hubslate");
    opening.onupgradeneeded = () => opening.transaction.abort();
    leave("hubslateDatabase", new Promise((opened) => {
      opening.onerror = () => opened(null);
      opening.onsuccess = () => {
        const database = opening.result;
        // A newer version in another tab, or somebody who clears the storage, does not wait for us.
        database.onversionchange = () => {
          database.close();
          takeBack("hubslateDatabase", "hubslateFirst");
        };
        database.onclose = () => takeBack("hubslateDatabase", "hubslateFirst");
        opened(database);
        attempt(() => readFirst(database));
      };
    }));
  }

  /** What the first screen shows: drafts and settings, and on the way home the line of each job. */
  function readFirst(database) {
    // What another tab writes meanwhile is read again.
    const tabs = new BroadcastChannel("hubslate");
    tabs.onmessage = () => takeBack("hubslateFirst");
    const stores = ["drafts", "summaries", "entries"];
    const reading = database.transaction(stores);
    const [drafts, summaries, entries] = stores.map((name) => reading.objectStore(name));
    const asked = [drafts.getAllKeys(), drafts.getAll()];
    if (!location.hash.startsWith("#/job/")) asked.push(summaries.getAll(), entries.getAllKeys(null, 1));
    leave("hubslateFirst", new Promise((read) => {
      reading.onabort = () => read(null);
      reading.oncomplete = () => read({ tabs, found: asked.map(({ result }) => result) });
    }));
  }

  /** What is refused here the app asks for again, and says. */
  function attempt(ask) {
    try {
      ask();
    } catch { /* It hears the same refusal. */ }
  }

  begin();
  attempt(askBackup);
  attempt(openDatabase);
})();
