// What lies below the edge of the screen is brought on it: until then no key of a step answers.
import { expect } from "@playwright/test";

/** The key that brings on the screen what lies below its edge. */
export const moreBelow = (page) => page.getByRole("button", { name: "More below ↓", exact: true });

/** Taps "More below" once; what came on the screen is seen when it is drawn. */
export async function push(more) {
  // It may be gone by the time that the finger comes down.
  await more.tap({ timeout: 1_000 }).catch(() => {});
  await more.page().evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
}

/** Taps "More below" for as long as it is there, and waits until the keys are live. */
export async function unfold(page) {
  const main = page.getByRole("main");
  const more = moreBelow(page);
  for (;;) {
    const state = () => main.evaluate((it) => {
      const keys = it.querySelector("fieldset.step__keys");
      const below = it.querySelector(".step__more:not([hidden])");
      return below ? "below" : keys?.disabled ? "wait" : "whole";
    });
    await expect.poll(state).not.toBe("wait");
    if ((await state()) !== "below") return;
    await push(more);
  }
}
