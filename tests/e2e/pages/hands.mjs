// The technician's hands, as the screen feels them: every touch and every typed character is
// counted by the page itself, whichever page object moved the finger.
import { expect } from "@playwright/test";

/** Runs in the page: tells of touches and of what is typed, on the keyboard or on the app's pad. */
function feel() {
  let pushed = 0;
  const tops = new WeakMap();
  addEventListener("pointerdown", (event) => {
    if (!event.isTrusted) return;
    const key = event.target.closest?.(".pad__key");
    // The key that pushes the page up is a contact; what then scrolls is no other one.
    if (event.target.closest?.(".step__more")) pushed = performance.now() + 300;
    globalThis.felt(1, key && !key.disabled ? key.textContent.trim() : "");
  }, { capture: true, passive: true });
  // Where something lies below the edge, a finger has to push the page up first.
  addEventListener("scroll", ({ target }) => {
    const { scrollTop } = target === document ? document.scrollingElement : target;
    // A page that falls back because room was made below it was pushed by no finger.
    const up = scrollTop > (tops.get(target) ?? 0);
    tops.set(target, scrollTop);
    if (up && performance.now() - pushed > 300) globalThis.felt(1, "", true);
    if (up) pushed = performance.now();
  }, { capture: true, passive: true });
  addEventListener("input", (event) => {
    if (event.isTrusted) globalThis.felt(0, event.data ?? "");
  }, { capture: true, passive: true });
}

export class Hands {
  #page;

  /** Begins to feel; to be called before the app is opened. */
  static async on(page) {
    const hands = new Hands();
    hands.#page = page;
    hands.start();
    await page.exposeFunction("felt", (touches, text, pushed) => {
      hands.contacts += touches;
      if (pushed) hands.pushes += 1;
      hands.letters += [...text].filter((sign) => /\p{L}/u.test(sign)).length;
      hands.digits += [...text].filter((sign) => /\d/.test(sign)).length;
    });
    await page.addInitScript(feel);
    return hands;
  }

  /** Begins to count again. */
  start() {
    this.contacts = 0;
    this.pushes = 0;
    this.letters = 0;
    this.digits = 0;
  }

  /** What was felt so far, in words. */
  get told() {
    return `${this.contacts} contacts (${this.pushes} of them to push the page up), ${this.letters} letters, ${this.digits} digits`;
  }

  /** What is pasted is not typed; holding the field and choosing "paste" are two touches. */
  async paste(act) {
    const { letters, digits } = this;
    await act();
    await this.#page.evaluate(() => {});
    Object.assign(this, { letters, digits });
    this.contacts += 2;
  }

  /** One touch opens the camera. What it sees here is the screen itself, a picture as good as any. */
  async camera() {
    const buffer = await this.#page.screenshot({ type: "jpeg", quality: 60 });
    const chosen = this.#page.waitForEvent("filechooser");
    await this.#page.getByText("Take a photo", { exact: true }).tap();
    await (await chosen).setFiles({ name: "camera.jpg", mimeType: "image/jpeg", buffer });
  }

  /** A name written with one stroke in the box for it. */
  async sign() {
    const pad = this.#page.getByRole("img", { name: "Signature" });
    await pad.scrollIntoViewIfNeeded();
    const { x, y, width, height } = await pad.boundingBox();
    const at = (across, down) => [{ x: x + width * across, y: y + height * down }];
    const screen = await this.#page.context().newCDPSession(this.#page);
    const touch = (type, touchPoints) => screen.send("Input.dispatchTouchEvent", { type, touchPoints });
    await touch("touchStart", at(0.2, 0.7));
    // As quick as a flourish: the next tap must not be taken for the end of a throw.
    for (const place of [at(0.35, 0.3), at(0.5, 0.7), at(0.65, 0.3), at(0.8, 0.6)]) await touch("touchMove", place);
    await touch("touchEnd", []);
    await screen.detach();
    await expect(pad.locator("path")).toHaveAttribute("d", /M [\d ]+(L [\d ]+){3,}/);
  }
}
