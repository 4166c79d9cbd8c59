// What the benchmarks do inside the app: store jobs, and tap through steps.

/** Stores `count` jobs through the app on `page`; gives how many are stored. */
export async function storeJobs(_page, _count) {
  return 0;
}

/**
 * Opens a job on a page of `context` at `host.url`, slows the processor `slower` times, and taps
 * through steps; gives for each tap the milliseconds until its entry was safe and painted.
 */
export async function measureTaps(_context, _host, _slower) {
  return [];
}
