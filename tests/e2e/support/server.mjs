// A static host of one's own. Stopping it is what "no signal" means in these tests.
import { createReadStream, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize, sep } from "node:path";
import { once } from "node:events";

const KINDS = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".wasm": "application/wasm",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
};

/** Serves one folder at a time, always on the port it first got: the origin stays the same. */
export class Server {
  #folder;
  #port = 0;
  #http = null;

  /** Paths asked for since the last `forget`. */
  asked = [];

  constructor(folder) {
    this.#folder = folder;
  }

  /** The address of the app, ending in a slash. */
  get url() {
    return `http://localhost:${this.#port}/`;
  }

  async start() {
    this.#http = createServer((request, response) => this.#answer(request, response));
    this.#http.listen(this.#port, "localhost");
    await once(this.#http, "listening");
    this.#port = this.#http.address().port;
    return this;
  }

  /** Truly stops: open connections are cut, and nothing listens any more. */
  async stop() {
    if (!this.#http) return;
    const closed = once(this.#http, "close");
    this.#http.close();
    this.#http.closeAllConnections();
    this.#http = null;
    await closed;
  }

  /** From now on another folder is served, as after an upload. */
  switchTo(folder) {
    this.#folder = folder;
  }

  forget() {
    this.asked = [];
  }

  #answer(request, response) {
    const { pathname } = new URL(request.url, this.url);
    this.asked.push(pathname);
    const file = this.#file(decodeURIComponent(pathname));
    if (!file) {
      response.writeHead(404, { "content-type": "text/plain" }).end("Not here.\n");
      return;
    }
    const kind = KINDS[extname(file)] ?? "application/octet-stream";
    response.writeHead(200, { "content-type": kind, "cache-control": "no-cache" });
    createReadStream(file).pipe(response);
  }

  #file(pathname) {
    const path = normalize(join(this.#folder, pathname));
    if (!path.startsWith(normalize(this.#folder + sep))) return null;
    const file = path.endsWith(sep) ? join(path, "index.html") : path;
    return statSync(file, { throwIfNoEntry: false })?.isFile() ? file : null;
  }
}
