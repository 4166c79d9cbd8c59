// A phone whose browser dies in the middle of the work and is started again on the same profile.
import { verified } from "./jobs.mjs";
import { kept, ready } from "./fixtures.mjs";
import { Profile } from "./kill.mjs";
import { Quick } from "../pages/quick.mjs";

/** Readings that condemn the old hub and pass the new one. */
export const WORN = {
  "Measure: Push, pull, read": (quick) => quick.round("6"),
  "Verify: Push, pull, read": (quick) => quick.round("0"),
};

/** A phone of one's own with the app on it, without a signal from then on. */
export async function phone(host, use) {
  const profile = await Profile.make();
  try {
    const page = await start(await profile.open(), host);
    await kept(page);
    await host.stop();
    await use({ profile, page });
  } finally {
    await profile.remove();
  }
}

/** The app in the first tab of a browser that has just been started. */
async function start(context, host) {
  const page = context.pages()[0] ?? await context.newPage();
  page.setDefaultTimeout(15_000);
  await page.goto(host.url);
  await ready(page);
  return page;
}

/** The browser is started again on the same phone. */
export const again = async (profile, host) => start(await profile.open(), host);

/** The browser dies, is started again, and the job is opened from the list. */
export async function killed(profile, host) {
  await profile.kill();
  const page = await again(profile, host);
  await page.getByRole("listitem").getByRole("link").first().tap();
  return { page, quick: new Quick(page) };
}

/** The file of the open job, taken along from its report. */
export async function exported(page, quick) {
  await quick.report();
  const download = page.waitForEvent("download");
  await quick.key("Export the job").tap();
  const { logs } = JSON.parse(verified(await (await download).path()));
  await page.goBack();
  return logs[0].entries;
}

/** Which fasteners were brought to their card at a step, in the order of the taps. */
export const turned = (entries, step) => entries
  .flatMap(({ what }) => (what.moved?.step.startsWith(`${step}@`) && what.moved.wrench ? what.moved.items : []))
  .map(({ number }) => number);
