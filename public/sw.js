// Keeps one whole version of the app on the phone and serves it without a network.
//
// The build writes the two lines below. A version is a set of files: it is fetched whole and
// checked file by file, or not at all. It takes over only when the page says "skip-waiting",
// and it never touches what another app on the same host has kept.
"use strict";

const VERSION = "unbuilt";
const PRECACHE = [];

// The folder is part of the name: two copies of the app may live on one host.
const PREFIX = `hubslate ${new URL(self.registration.scope).pathname} `;
const CACHE = PREFIX + VERSION;
const INDEX = "./";
const WITHOUT_COPY = ["sample/", "schema/"];

const whole = (url) => new URL(url, self.registration.scope).href;

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(dropOldVersions()));
self.addEventListener("message", (event) => {
  if (event.data === "skip-waiting") self.skipWaiting();
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = request.url.split(/[?#]/, 1)[0];
  if (request.method !== "GET" || !url.startsWith(self.registration.scope)) return;
  if (WITHOUT_COPY.some((folder) => url.startsWith(whole(folder)))) return;
  event.respondWith(answer(request.mode === "navigate" ? whole(INDEX) : url, request));
});

async function install() {
  // All are fetched before any is kept, so that a mismatch leaves nothing behind.
  const responses = await Promise.all(PRECACHE.map(fetched));
  try {
    const cache = await caches.open(CACHE);
    for (const [at, response] of responses.entries()) await cache.put(whole(PRECACHE[at][0]), response);
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

async function fetched([url, integrity]) {
  const response = await fetch(whole(url), { cache: "reload", integrity, credentials: "same-origin" });
  if (!response.ok || response.redirected) throw new Error(`${url}: ${response.status}`);
  return response;
}

async function dropOldVersions() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

async function answer(url, request) {
  const cache = await caches.open(CACHE);
  return (await cache.match(url, { ignoreVary: true })) ?? fetch(request);
}
