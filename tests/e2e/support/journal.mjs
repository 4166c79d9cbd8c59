// What the phone keeps, read beside the app: facts for the tests, never a way into the app.

/** Does one thing with a store of the app's database: "getAll", or "add" with a value. */
function inStore(page, store, method, value, key) {
  return page.evaluate(async ([name, what, given, under]) => {
    const answered = (request) => new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const database = await answered(indexedDB.open("hubslate"));
    const place = database.transaction(name, what === "add" ? "readwrite" : "readonly").objectStore(name);
    const result = await answered(place[what](...[given, under].filter((it) => it !== undefined)));
    database.close();
    return result;
  }, [store, method, value, key]);
}

/** The records of the journal. */
export const journal = (page) => inStore(page, "entries", "getAll");

/** What was set aside because it could not be read. */
export const asides = (page) => inStore(page, "aside", "getAll");

/** What is half typed or half set; settings are kept beside it. */
export async function drafts(page) {
  const names = await inStore(page, "drafts", "getAllKeys");
  const texts = await inStore(page, "drafts", "getAll");
  return texts.filter((_, at) => !names[at].startsWith("setting:"));
}

/** Puts a record into the journal, as damage or another version might. */
export const plant = (page, record) => inStore(page, "entries", "add", record);

/** The digests under which pictures are kept. */
export const pictures = (page) => inStore(page, "photos", "getAllKeys");

/** Puts a picture under a digest, as a phone that died before its entry would leave it. */
export const plantPicture = (page, sha) => inStore(page, "photos", "add", { bytes: [1], mime: "image/jpeg" }, sha);

/** The keys of localStorage that begin so. */
export const localKeys = (page, start) =>
  page.evaluate((head) => Object.keys(localStorage).filter((key) => key.startsWith(head)).sort(), start);

/** Everything that is kept, in a form that can be compared. */
export async function everything(page) {
  const stores = {};
  for (const name of ["entries", "aside", "summaries"]) stores[name] = await inStore(page, name, "getAll");
  const local = await page.evaluate(() => Object.entries(localStorage).sort());
  return { ...stores, local };
}
