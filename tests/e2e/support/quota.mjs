// A phone whose room the test decides.

/** Lets the origin have no more than this; 0 means no limit. */
export async function allow(page, url, quotaSize) {
  const client = await page.context().newCDPSession(page);
  const { origin } = new URL(url);
  await client.send("Storage.overrideQuotaForOrigin", quotaSize ? { origin, quotaSize } : { origin });
}

/** Fills what is left with bytes that nothing can press together, down to the last few. */
export function fillJournal(page) {
  return page.evaluate(async () => {
    const database = await new Promise((resolve, reject) => {
      const opening = indexedDB.open("neighbour", 1);
      opening.onupgradeneeded = () => opening.result.createObjectStore("bytes", { autoIncrement: true });
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const put = (size) => new Promise((resolve) => {
      const transaction = database.transaction("bytes", "readwrite", { durability: "strict" });
      transaction.objectStore("bytes").add(crypto.getRandomValues(new Uint8Array(size)));
      transaction.oncomplete = () => resolve(true);
      transaction.onabort = () => resolve(false);
    });
    for (let size = 1 << 16; size >= 16;) if (!(await put(size))) size /= 2;
    database.close();
  });
}
