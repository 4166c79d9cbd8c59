// Keeps one whole version of the app on the phone and serves it without a network.
//
// The build writes the two lines below. A version is a set of files: it is fetched whole and
// checked file by file, or not at all. It takes over only when the page says "skip-waiting",
// and it never touches what another app on the same host has kept. What a browser drops of it is
// fetched again as soon as it is missed.
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
  event.respondWith(request.mode === "navigate" ? opened(url, request) : answer(url, request));
});

// All are fetched before any is kept, so that a mismatch leaves nothing behind.
const version = () => Promise.all(PRECACHE.map(fetched));

async function keep(responses) {
  const cache = await caches.open(CACHE);
  for (const [at, response] of responses.entries()) await cache.put(whole(PRECACHE[at][0]), response);
}

async function install() {
  const responses = await version();
  try {
    await keep(responses);
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

async function kept(url) {
  const cache = await caches.open(CACHE);
  return cache.match(url, { ignoreVary: true });
}

// One filling at a time, whoever misses something first.
let filling;

async function answer(url, request) {
  const copy = await kept(url);
  if (copy) return copy;
  if (!PRECACHE.some(([own]) => whole(own) === url)) return fetch(request);
  filling ??= version().then(keep).finally(() => { filling = undefined; });
  // The host may have another version by now, or there is no room: then it is not kept.
  return filling.then(() => kept(url)).then((again) => again ?? fetch(request), () => fetch(request));
}

// The app has one page; every other address leads to it.
async function opened(url, request) {
  if (url !== whole(INDEX) && url !== whole("index.html")) return Response.redirect(whole(INDEX));
  return answer(whole(INDEX), request).catch(nothingHere);
}

const nothingHere = () => new Response(`<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Hubslate: no copy on this phone</title>
<h1>Hubslate cannot open without a signal</h1>
<p>This browser dropped the app's own files, and there is no network to fetch them again.</p>
<p>This says nothing about your jobs: they are stored apart. Do not clear the data of this site.</p>
<p>Get a signal, then <a href="${whole(INDEX)}">open Hubslate again</a>.</p>
</html>
`, { status: 503, headers: { "content-type": "text/html; charset=utf-8", "content-security-policy": "default-src 'none'" } });
