// The first start: who works here, for which shop, with which torque wrenches.
import { expect } from "@playwright/test";

/** An invented technician with two wrenches; ranges in lb-ft. */
export const VAN = {
  technician: "R. Okafor",
  shop: "Fernbrook Mobile Hubs",
  wrenches: [["Short", "10", "80"], ["Long", "40", "250"]],
};

export class First {
  constructor(page) {
    this.page = page;
    this.main = page.getByRole("main");
    this.title = page.getByRole("heading", { name: "Before the first job" });
  }

  key(name) {
    return this.main.getByRole("button", { name, exact: true });
  }

  field(label) {
    return this.page.getByLabel(label, { exact: true });
  }

  /** Names technician and shop. */
  async names({ technician, shop }) {
    await this.field("Technician's name").fill(technician);
    await this.field("Shop's name").fill(shop);
  }

  /** Types a wrench into the form, which stands open. */
  async wrench([name, low, high], unit = "lb-ft") {
    await this.field("Name of the wrench").fill(name);
    await this.field("Lowest marked torque").fill(low);
    await this.field("Highest marked torque").fill(high);
    await this.key(unit).tap();
  }

  /** Answers everything and begins. */
  async answer(van) {
    await this.names(van);
    for (const wrench of van.wrenches) {
      await this.wrench(wrench);
      await this.key("Save").tap();
      await expect(this.main.getByRole("listitem").filter({ hasText: wrench[0] })).toBeVisible();
    }
    await this.key("Save and start").tap();
    await expect(this.title).toHaveCount(0);
  }

  /** Puts it off: then no wrench is known. */
  async later() {
    await this.key("Not now").tap();
    await expect(this.title).toHaveCount(0);
  }
}
