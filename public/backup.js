// The backup journal: lines in two files of the origin private file system, each flushed before it
// is answered for. Only a worker may write there at once. What the lines say is none of its business.
"use strict";

const NAMES = ["backup-1", "backup-2"];
const HEADER = "hubslate backup ";
const DIGITS = 6;
const FIRST = HEADER.length + DIGITS + 1;
const END = 10;
const TORN = "~\n";

const utf8 = new TextEncoder();

const header = (number) => `${HEADER}${String(number).padStart(DIGITS, "0")}\n`;

async function open(name, create) {
  const root = await navigator.storage.getDirectory();
  const file = await root.getFileHandle(name, { create });
  const handle = await file.createSyncAccessHandle();
  // Older browsers answer later, which nothing here waits for.
  if (typeof handle.getSize() === "number") return handle;
  handle.close();
  throw new DOMException("no synchronous files", "NotSupportedError");
}

function bytes(handle, at, length) {
  const read = new Uint8Array(length);
  return read.subarray(0, handle.read(read, { at }));
}

const text = (handle, at, length) => new TextDecoder().decode(bytes(handle, at, length));

/** The number of a file; 0 where it is new or is being written, 1 where a disk made it unreadable. */
function number(handle) {
  if (handle.getSize() < FIRST) return 0;
  const head = text(handle, 0, FIRST);
  const read = head.startsWith(HEADER) ? Number(head.slice(HEADER.length, -1)) : NaN;
  return Number.isNaN(read) ? 1 : read;
}

function put(handle, at, said) {
  const all = utf8.encode(said);
  for (let done = 0; done < all.length;) {
    const more = handle.write(all.subarray(done), { at: at + done });
    if (more === 0) throw new DOMException("no room", "QuotaExceededError");
    done += more;
  }
}

/** Does something with both files, the one that counts first. */
async function withFiles(act, create = true) {
  const handles = [];
  try {
    for (const name of NAMES) handles.push(await open(name, create));
    if (number(handles[0]) < number(handles[1])) handles.reverse();
    return act(...handles);
  } finally {
    for (const handle of handles) handle.close();
  }
}

const whole = (handle) => text(handle, 0, handle.getSize());

/** Writes what counts into the other file. The number comes last: a file without one is none. */
function turn(now, other, lines) {
  other.truncate(0);
  put(other, 0, header(0) + lines);
  other.flush();
  put(other, 0, header(number(now) + 1));
  other.flush();
  now.truncate(0);
  now.flush();
}

const acts = {
  // Asked before it is known whether the app starts: it makes nothing where there is nothing yet.
  look: () => withFiles((now, other) => (number(now) === 0 ? null : [whole(other), whole(now)]), false),

  read: () => withFiles((now, other) => {
    if (number(now) === 0) turn(other, now, "");
    return [whole(other), whole(now)];
  }),

  append: ({ lines }) => withFiles((now, other) => {
    if (number(now) === 0) turn(other, now, "");
    const size = now.getSize();
    const torn = bytes(now, size - 1, 1)[0] !== END ? TORN : "";
    try {
      put(now, size, torn + lines);
    } catch (error) {
      now.truncate(size);
      throw error;
    }
    now.flush();
    return now.getSize();
  }),

  // Lines that came while the new ones were made would be lost: then it is left for another time.
  anew: ({ lines, size }) => withFiles((now, other) => {
    if (now.getSize() !== size) return false;
    turn(now, other, lines);
    return true;
  }),
};

let before = Promise.resolve();

/** One after the other, in all tabs where the browser has locks. */
function alone(act) {
  if (navigator.locks) return navigator.locks.request("hubslate backup", act);
  const turn = before.then(act);
  before = turn.catch(() => {});
  return turn;
}

addEventListener("message", ({ data }) => {
  const { id, act } = data;
  alone(() => acts[act](data)).then(
    (said) => postMessage({ id, said }),
    (error) => postMessage({ id, problem: error?.name ?? "Error" }),
  );
});
