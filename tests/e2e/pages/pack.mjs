// Pack as a technician does it: one verb for what the hands do on each of its screens.
//
// Fields that are focused by the screen itself are not tapped, so that a counter of contacts
// counts what a person would touch.
import { expect } from "@playwright/test";
import { unfold } from "./unfold.mjs";

/** The steps that ask for a card, in the order in which they come. */
export const CARDS = [
  "Spec: axle nut", "Spec: hub bolts", "Spec: bracket bolts", "Spec: guide pin bolts", "Spec: lug nuts", "Spec: play limit",
];

export class Pack {
  constructor(page) {
    this.page = page;
  }

  /** The job list with its one large key, then a start at home. */
  async begin() {
    await this.page.getByRole("link", { name: "New job" }).tap();
    await this.page.getByRole("button", { name: "Start at home" }).tap();
    await this.at("Booking message");
  }

  /** Waits until a step is on the screen and its keys are no longer held. */
  async at(step) {
    await expect(this.#main(step)).toBeVisible();
    await unfold(this.page);
    await expect(this.page.locator("fieldset").last()).toBeEnabled();
  }

  /** The screen of a step: it is named by its phase and its name. */
  #main(step) {
    return this.page.getByRole("main", { name: new RegExp(`: ${step}$`) });
  }

  /** The name of the step that is on the screen. */
  async step() {
    const name = await this.page.getByRole("main").getAttribute("aria-label");
    return name.slice(name.indexOf(": ") + 2);
  }

  key(name) {
    return this.page.getByRole("button", { name, exact: true });
  }

  /** Types into a field, which is tapped first unless the screen has put the cursor there. */
  async type(label, text) {
    const field = this.page.getByLabel(label, { exact: true });
    if (!(await field.evaluate((it) => it === document.activeElement))) await field.tap();
    await field.press("ControlOrMeta+a");
    await this.page.keyboard.insertText(text);
  }

  /** Pastes the booking message and keeps it. */
  async paste(message) {
    await this.at("Booking message");
    const field = this.page.getByLabel("Paste the message here");
    await expect(field).toBeFocused();
    await this.page.keyboard.insertText(message);
    await this.key("Save the message").tap();
    await this.at("Vehicle");
  }

  /** What was found in the message: the text beside a label. */
  found(label) {
    const row = this.page.locator(".found__row").filter({ has: this.page.getByText(label, { exact: true }) });
    return row.locator("b");
  }

  /** Names the family where it is a new one, and keeps the vehicle as it stands. */
  async keepVehicle(family) {
    await this.at("Vehicle");
    if (family) {
      await expect(this.page.getByLabel("Vehicle and years")).toBeFocused();
      await this.page.keyboard.insertText(family);
    }
    await this.key("Facts are right").tap();
    await this.at("Corners");
  }

  /** Takes a family whose cards are kept, and keeps the vehicle. */
  async knownFamily(family) {
    await this.at("Vehicle");
    await this.key(family).tap();
    await this.key("Facts are right").tap();
    await this.at("Corners");
  }

  /** Taps corners on the drawing, in the order of work, and keeps them. */
  async corners(...names) {
    await this.at("Corners");
    for (const name of names) await this.page.getByRole("button", { name }).tap();
    await this.key("These corners").tap();
    await this.at(CARDS[0]);
  }

  /** The document of the first card; the later ones carry it over. */
  async source({ document, page, who }) {
    await this.type("Document", document);
    if (page) await this.type("Page or procedure", page);
    if (who) await this.type("Looked up by", who);
  }

  /** Keeps a picture of the page: a file instead of the camera. */
  async picture(path) {
    await this.page.getByLabel("Take a photo").setInputFiles(path);
    await expect(this.page.getByText("A photo of the page is saved.")).toBeVisible();
  }

  /** Types a value, chooses its unit where another is chosen, and keeps the card. */
  async card(value, unit, { angle, position, source } = {}) {
    const step = await this.step();
    await this.at(step);
    await this.type("Value", value);
    if (unit && (await this.key(unit).getAttribute("aria-pressed")) !== "true") await this.key(unit).tap();
    if (angle) {
      await this.key("Then an angle").tap();
      await expect(this.page.getByLabel("Angle after the torque, degrees")).toBeFocused();
      await this.page.keyboard.insertText(angle);
    }
    if (position) await this.key(position).tap();
    if (source) await this.source(source);
    await this.key("Save the spec").tap();
    await this.#goneFrom(step);
  }

  /** Says of a card of the book that it was looked up again today. */
  async lookedUpAgain() {
    const step = await this.step();
    await this.key("Looked up again today").tap();
    await this.#goneFrom(step);
  }

  /** Takes a card of the book without looking it up. */
  async notLookedUpAgain() {
    const step = await this.step();
    await this.key("Not looked up again").tap();
    await this.#goneFrom(step);
  }

  /** Says that nothing was found, and why. */
  async notFound(reason = "Not in the document") {
    const step = await this.step();
    await this.key("Not found").tap();
    await this.key(reason).tap();
    await this.#goneFrom(step);
  }

  /** Types the two amounts where they are new, and keeps the price. */
  async price(repair, refit) {
    await this.at("Price");
    if (repair) {
      await expect(this.page.getByLabel(/^Full repair/)).toBeFocused();
      await this.page.keyboard.insertText(repair);
    }
    if (refit) {
      await this.page.getByLabel(/^Inspection and reassembly/).tap();
      await this.page.keyboard.insertText(refit);
    }
    await this.key("Save the price").tap();
    await this.at("Kit");
  }

  /** Taps what is missing and says that the rest is on board. */
  async kit(...missing) {
    await this.at("Kit");
    for (const item of missing) await this.page.getByRole("button", { name: item }).tap();
    await this.key("The rest is in the van").tap();
    await this.at("Before leaving");
  }

  /** The lines under a heading of the last look. */
  ready(heading) {
    return this.page.locator(".ready__part").filter({ has: this.page.getByRole("heading", { name: heading }) });
  }

  /** Leaves for the car. */
  async leave() {
    await this.at("Before leaving");
    await this.key("Ready to leave").tap();
    await this.#goneFrom("Before leaving");
  }

  async #goneFrom(step) {
    await expect(this.#main(step)).toHaveCount(0);
  }
}
