// The quickest way into a state: a practice job that is walked, or a file that is opened.
import { expect } from "@playwright/test";
import { unfold } from "./unfold.mjs";

/** What a list answers that is all right: what was not is put right by a touch of its row. */
const ALL = (quick) => quick.all();

/** The key of a list. */
const LIST = /^(Yes to (all|the other) .*|Save the answers)$/;

/** What an uneventful job answers at each screen, by its name on the screen. Where one screen tells
 * several steps together that is the name of the first; on a low screen each stands alone. */
const USUAL = {
  "The ground": ALL,
  "The right car": "Same car",
  "Odometer": (quick) => quick.number("81204", "Save the odometer"),
  "Warning lights": "No lights",
  "Key, box and car": ALL,
  "Inspection approval": (quick) => quick.inspection(),
  "Pre-drive check": ALL,
  "Photo: as found": (quick) => quick.notDone("No time"),
  "Photo: what stays": (quick) => quick.notDone("No time"),
  "Photo: what went wrong": (quick) => quick.notDone("No time"),
  "Test drive": "Back and parked",
  "Rises with speed": (quick) => quick.signs("rise with road speed", "gentle swerve", "coasting in neutral"),
  "Full lock": (quick) => quick.signs(),
  "Gentle swerve": "Steering right",
  "Coasting": "Yes",
  "Road surface": "No",
  "Light brake": "No",
  "Shake": "No",
  "Pulse": "No",
  "Heat: this hub": (quick) => quick.number("97", "Save temperature"),
  "Heat: other side": (quick) => quick.number("95", "Save temperature"),
  "Hold the car": "Held and chocked",
  "Jack and jack stand": (quick) => quick.pictured(ALL),
  "Photo: jack stand": (quick) => quick.notDone("No time"),
  "Shove": "It stands firm",
  "Lug nuts tight": "All tight",
  "Rock: 12 and 6": "Nothing",
  "Rock: 9 and 3": "Nothing",
  "Push and pull": "Nothing",
  "Brake held": "The play is gone",
  "Spin by hand": "Smooth and quiet",
  "Compare other side": "Both the same",
  "Loosen lug nuts": /^(It stands firm|Loosened, on the stand)$/,
  "Shove again": "It stands firm",
  "Wheel off": "Wheel is off",
  "Caliper up": /^(Tight, not touched|Caliper is tied up)$/,
  "Axle nut as found": "Tight, not touched",
  "Clean for the dial": /^(Set up as shown|Clean and dry)$/,
  "Dial setup": "Set up as shown",
  "Base on the knuckle": "It does not move",
  "Set the base again": "It does not move",
  "Push, pull, read": (quick) => quick.round("0"),
  "Decision": /^(Save the decision|Show the customer|Take a second set)$/,
  "Customer's answer": "Verbal approval",
  "Loosen axle nut": /^(It stands firm|Nut is loose)$/,
  "Axle nut off": (quick) => quick.pictured(/^(Brake|Nut) is off$/),
  "Brake off": (quick) => quick.pictured("Brake is off"),
  "Photo: sensor wire": (quick) => quick.notDone("No time"),
  "Free sensor wire": /^(Hub is out|Wire is free)$/,
  "Hub out": "Hub is out",
  "New next to old": (quick) => quick.pictured(ALL),
  "Photo: old and new": (quick) => quick.notDone("No time"),
  "Clean the seat": /^(Wire is clipped in|Seat is bright)$/,
  "Install the hub": "In, bolts by hand",
  "Sensor wire back": "Wire is clipped in",
  "Hub bolts": /clicked$|°$/,
  "Rotor on": /^(Bolts in by hand|Rotor sits flat)$/,
  "Bracket on": "Bolts in by hand",
  "Bracket bolts": /clicked$/,
  "Caliper on": /^(Pedal is firm|Caliper is on)$/,
  "Pump the pedal": "Pedal is firm",
  "Axle nut on": /clicked$|^Seated by hand$/,
  "Axle nut": /clicked$/,
  "Caliper up again": "Caliper is tied up",
  "Spin the hub": "Smooth and quiet",
  "Wheel off again": "Off, on the stand",
  "Caliper down": /clicked$|^Caliper is on$/,
  "Guide pin bolts": /clicked$/,
  "Stake the nut": /^(Pedal is firm|Nut is staked)$/,
  "Wheel on": /^(On its wheels|All nuts are snug)$/,
  "Lower": "On its wheels",
  "Lug nuts": /clicked$/,
  "Pedal first": "Pedal is firm",
  "Lights and sensor": "No lights",
  "Before it moves": ALL,
  "Road test again": ALL,
  "Before and after": "Continue",
  "Nothing left behind": ALL,
  "Re-torque due": (quick) => quick.due(),
  "Signature": (quick) => quick.sign("Save the signature"),
  "Report and file": "Handed over",
};

export class Quick {
  constructor(page) {
    this.page = page;
    this.main = page.getByRole("main");
  }

  key(name) {
    return this.main.getByRole("button", { name, exact: typeof name === "string" });
  }

  way(name) {
    return this.main.getByRole("link", { name, exact: true });
  }

  alert(text) {
    return this.main.getByRole("alert").filter({ hasText: text });
  }

  /** Home, New job, Practice job: an invented car that is packed already. */
  async practice() {
    await this.way("New job").tap();
    await this.key("Practice job").tap();
    await this.isAt("Site: The ground");
  }

  /** On home: shows the ended jobs and the ways to all that is no job. */
  async ended() {
    const more = this.key(/^(Ended jobs and more|More)$/);
    await more.tap();
    await expect(more).toHaveAttribute("aria-expanded", "true");
  }

  /** Opens files on the import screen; gives what it says of the last one. A long file needs its
   * time, in milliseconds. */
  async take(files, timeout) {
    await this.page.evaluate(() => { location.hash = "#/import"; });
    const outcomes = this.main.getByRole("status").getByRole("listitem");
    const known = await outcomes.count();
    await this.page.getByLabel("Import a file").setInputFiles(files);
    await expect(outcomes).toHaveCount(known + files.length, { timeout });
    return outcomes.last();
  }

  /** Opens the file of one job and goes to its next step. */
  async open(text) {
    await (await this.take([file("job.json", text)])).getByRole("link", { name: "Open the job" }).tap();
    await this.way("Resume").tap();
    await expect(this.main).toHaveAttribute("aria-label", /: /);
  }

  /** Goes to any step of the job by its name, from the list of all steps. */
  async goTo(step) {
    await this.key("More").tap();
    await this.way("All steps").tap();
    await this.main.getByRole("listitem").getByRole("link").filter({ hasText: step }).first().tap();
    await expect(this.main).toHaveAttribute("aria-label", new RegExp(`: ${step}$`));
  }

  /** The report of the open job, as it stands on the screen. */
  async report() {
    await this.page.evaluate(() => { location.hash = location.hash.replace(/^(#\/job\/[^/]+).*$/, "$1/report"); });
    const report = this.page.getByRole("article");
    await expect(report).toBeVisible();
    return report;
  }

  async isAt(label) {
    await expect(this.main).toHaveAttribute("aria-label", label);
  }

  async label() {
    return (await this.main.getAttribute("aria-label")) ?? "";
  }

  /** Walks on until a step of this label is on the screen. `answers` differ from the usual ones. */
  async walk(until, answers = {}, look = async () => {}) {
    // A job that was just opened is being read.
    await expect(this.main).toHaveAttribute("aria-label", /: /);
    for (;;) {
      const label = await this.label();
      await look(label);
      if (label === until) return;
      await this.step(answers);
    }
  }

  /** Answers what is on the screen and waits for the next thing to do. */
  async step(answers = {}) {
    const label = await this.label();
    const name = label.replace(/^[^:]*: /, "");
    const answer = answers[label] ?? answers[name] ?? USUAL[name];
    if (!answer) throw new Error(`Nothing is known to answer at "${label}".`);
    await this.unfold();
    await this.goOn(() => (typeof answer === "function" ? answer(this) : this.key(answer).tap()));
  }

  /** Brings on the screen what lies below its edge: until then no key answers. */
  async unfold() {
    await unfold(this.page);
  }

  /** Does something and waits until the screen shows another thing to do. */
  async goOn(act) {
    const was = await this.#thing();
    await act();
    await expect.poll(() => this.#thing()).not.toBe(was);
  }

  async number(digits, keep) {
    for (const digit of digits) await this.key(digit).tap();
    await this.key(keep).tap();
  }

  /** One round, typed on the pad. */
  async round(number) {
    await this.main.getByTitle("Number pad").tap();
    await this.type(number);
    await this.key(/^Save \d/).tap();
  }

  async type(number) {
    for (const sign of number) await this.key(/\d/.test(sign) ? sign : "Decimal mark").tap();
  }

  async notDone(because) {
    await this.key("Not done").tap();
    await this.key(because).tap();
  }

  /** The yes to the inspection, without a price where none was given. */
  async inspection() {
    const without = this.key("Ask without a price");
    if (await without.count()) await without.tap();
    await this.key("Verbal approval").tap();
  }

  /** Where a picture is asked for too there is no time for it. */
  async pictured(alone) {
    const list = alone === ALL;
    const key = this.key(list ? LIST : alone);
    if (!(await key.count())) {
      await this.notDone("No time");
      await expect(key).toBeVisible();
      await this.unfold();
    }
    await (list ? this.all() : key.tap());
  }

  /** Every row of a list is yes: what was not is touched until it is, and one key answers the rest. */
  async all() {
    const wrong = this.page.locator(".checks__row:is([data-answer=no], [data-answer=not_done])");
    while (await wrong.count()) await wrong.first().tap();
    await this.key(LIST).tap();
  }

  /** The date of the re-torque, with the signature where both are on the screen. */
  async due() {
    if (await this.key("Save the date").count()) await this.key("Save the date").tap();
    else await this.sign("Save the signature");
  }

  /** The list of the signs of the road: a tap on each that was noticed, and no to the rest. */
  async signs(...noticed) {
    const alone = this.key(noticed.length ? "Yes" : "No");
    if (await alone.count()) {
      await alone.tap();
      return;
    }
    for (const sign of noticed) await this.key(new RegExp(sign)).tap();
    await this.key(/^No to /).tap();
  }

  async sign(keep) {
    await this.draw();
    await this.key(keep).tap();
  }

  /** A stroke in the box for a name. */
  async draw() {
    const pad = this.main.getByRole("img", { name: "Signature" });
    await pad.scrollIntoViewIfNeeded();
    const { x, y, width, height } = await pad.boundingBox();
    const { mouse } = this.page;
    await mouse.move(x + width * 0.2, y + height * 0.7);
    await mouse.down();
    await mouse.move(x + width * 0.5, y + height * 0.3);
    await mouse.move(x + width * 0.8, y + height * 0.7);
    await mouse.up();
  }

  /** Hands over and ends with the one ending that the app proposes. */
  async finish(ending) {
    await this.walk("Hand over: Report and file");
    if (await this.key("Handed over").count()) await this.walk("Hand over: End of the job");
    await expect(this.main.getByRole("heading", { name: ending, exact: true })).toBeVisible();
    await this.key(new RegExp(`^(Export and end|End the job here): ${ending}$`)).tap();
    await expect(this.main).toContainText("The job has ended.");
  }

  /** From any step: More, then the end. */
  async endHere() {
    await this.key("More").tap();
    await this.way("End the job here").tap();
    await this.isAt("Hand over: End of the job");
    await this.unfold();
    await this.cannotPicture("No time");
  }

  /** Why there is no picture of a car that is left unfinished, where one is asked for. */
  async cannotPicture(because) {
    const cannot = this.main.getByText("Cannot, because…", { exact: true });
    if (!(await cannot.count())) return;
    await cannot.tap();
    await this.key(because).tap();
    await expect(cannot).toHaveCount(0);
  }

  /** The step with what is next in it: its round, or the fastener that its key names. */
  #thing() {
    return this.main.evaluate((main) => {
      const text = [...main.querySelectorAll("section, fieldset")].map((part) => part.textContent).join(" ");
      const inStep = text.match(/Cycle \d of \d|[^.:]* \d? ?clicked|\w+ \d: \d+°|Start again at\s1/g);
      return `${main.getAttribute("aria-label")} ${inStep}`;
    });
  }
}

/** A file as a person would choose it. */
export function file(name, text) {
  return { name, mimeType: "application/json", buffer: Buffer.from(text) };
}
