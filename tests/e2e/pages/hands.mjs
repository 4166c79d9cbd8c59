// The technician's hands: every contact with the glass and every typed character is counted.

export class Hands {
  constructor(page) {
    this.page = page;
    this.start();
  }

  /** Begins to count anew. */
  start() {
    this.contacts = 0;
    this.letters = 0;
    this.digits = 0;
  }

  /** One touch of the glass. A key that is held back is waited for, as a person waits. */
  async tap(locator) {
    await locator.tap();
    this.contacts += 1;
  }

  /** A field is touched once and typed into. */
  async type(locator, text) {
    await locator.tap();
    await locator.fill(text);
    this.contacts += 1;
    this.#count(text);
  }

  /** A field that has the focus already is typed into. */
  async typeOn(locator, text) {
    await locator.fill(text);
    this.#count(text);
  }

  /** A number on the pad: every digit is a contact of its own. */
  async pad(digits) {
    for (const digit of digits) {
      await this.tap(this.page.locator(".pad").getByRole("button", { name: digit, exact: true }));
      this.digits += 1;
    }
  }

  #count(text) {
    this.letters += [...text].filter((c) => /\p{L}/u.test(c)).length;
    this.digits += [...text].filter((c) => /\d/.test(c)).length;
  }
}
