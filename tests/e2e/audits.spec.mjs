// Every screen is heard by axe, and every control on a driveway screen is measured.
import { test, expect } from "./support/fixtures.mjs";
import { serious } from "./support/audit.mjs";
import { sampleText } from "./support/jobs.mjs";
import { Quick, file } from "./pages/quick.mjs";

/** CSS px of a primary key, of any other control, and between two of them, by the size of the screen. */
const LARGE = { viewport: { width: 390, height: 844 }, primary: [125, 96], other: [96, 72], gap: 16 };
const SMALL = { viewport: { width: 320, height: 568 }, primary: [112, 80], other: [80, 64], gap: 12 };

/** What on this screen is smaller, nearer or farther out than it may be, one line each. */
function measure(page, rules) {
  return page.evaluate(({ primary, other, gap }) => {
    const wrong = [];
    const main = document.querySelector("main");
    const named = (it) => `"${(it.getAttribute("aria-label") ?? it.textContent).trim().replace(/\s+/g, " ").slice(0, 40)}"`;
    const size = (box) => `${box.width.toFixed(1)} × ${box.height.toFixed(1)}`;
    const scroller = (it) => {
      for (let up = it.parentElement; up; up = up.parentElement) {
        if (/auto|scroll/.test(getComputedStyle(up).overflowY)) return up;
      }
      return document.documentElement;
    };
    const found = [...main.querySelectorAll("button, a[href], input, textarea, select, summary, [role=button]")]
      // The finger meets the label; the file field lies invisible inside it.
      .map((it) => (it.type === "file" ? it.closest("label") : it))
      // What is folded away has a box, but nobody can touch it.
      .filter((it) => it.getClientRects().length > 0 && it.checkVisibility());
    const controls = found.map((it) => {
      const box = it.getBoundingClientRect();
      const within = scroller(it);
      const seen = within === document.documentElement
        ? { top: 0, bottom: innerHeight } : within.getBoundingClientRect();
      return { it, box, within, whole: box.top >= seen.top - 0.5 && box.bottom <= seen.bottom + 0.5 };
    });
    for (const { it, box } of controls) {
      const first = it.classList.contains("key--primary");
      const [width, height] = first ? primary : other;
      // Half a device pixel is lost where a third of the screen is no whole number.
      if (box.width < width - 0.5 || box.height < height - 0.5) wrong.push(`${named(it)} is ${size(box)}`);
      if (box.left < -0.5 || box.right > innerWidth + 0.5) wrong.push(`${named(it)} reaches beyond the screen`);
    }
    for (const [place, one] of controls.entries()) {
      for (const two of controls.slice(place + 1)) {
        if (one.within !== two.within && !(one.whole && two.whole)) continue;
        const across = Math.max(one.box.left, two.box.left) - Math.min(one.box.right, two.box.right);
        const along = Math.max(one.box.top, two.box.top) - Math.min(one.box.bottom, two.box.bottom);
        const apart = Math.max(across, along);
        if (apart < gap - 0.5) wrong.push(`${named(one.it)} and ${named(two.it)} are ${apart.toFixed(1)} apart`);
      }
    }
    const first = controls.find(({ it }) => it.classList.contains("key--primary"));
    if (first) {
      const { top, bottom } = first.box;
      if (!first.whole || top < 0 || bottom > innerHeight) wrong.push(`the primary key ${named(first.it)} must be scrolled to`);
    }
    // The main key is the lowest of the keys of a step, so that a thumb finds it where it was.
    const keys = first?.it.closest("fieldset.step__keys");
    if (keys) {
      const lowest = Math.max(...controls.filter(({ it }) => keys.contains(it)).map(({ box }) => box.bottom));
      if (first.box.bottom < lowest - 0.5) wrong.push(`a key lies below the main key ${named(first.it)}`);
    }
    // A picture is whole or not there, and the strip never grows.
    for (const picture of main.querySelectorAll(".step__thing > .step__picture svg")) {
      const [box, frame] = [picture, picture.closest(".step__thing")].map((it) => it.getBoundingClientRect());
      if (box.height > 0 && box.bottom > frame.bottom + 0.5) wrong.push("a picture is cut off");
    }
    const strip = main.querySelector(".strip")?.getBoundingClientRect().height;
    if (strip > other[1] + 8) wrong.push(`the strip is ${strip} high`);
    for (const it of [document.scrollingElement, main, ...main.querySelectorAll("section, fieldset, nav, header")]) {
      if (it.scrollWidth > it.clientWidth + 1 && it.clientWidth > 0) wrong.push(`<${it.localName} class="${it.className}"> scrolls sideways by ${it.scrollWidth - it.clientWidth}`);
    }
    return wrong;
  }, rules);
}

/** Whether a screen is one of the desk, where fingers are bare. */
const isDesk = (label) => /^(Prep: |$)|^Hand over: Report/.test(label);

/** Walks a practice job from Site to its end and audits what it meets. */
async function walkThrough(app, rules) {
  const quick = new Quick(app);
  const wrong = [];
  const look = async (label) => {
    await quick.unfold();
    await app.waitForFunction(() => !document.querySelector("fieldset:disabled"));
    for (const fault of await serious(app)) wrong.push(`${label}: axe: ${fault}`);
    if (!isDesk(label)) for (const fault of await measure(app, rules)) wrong.push(`${label}: ${fault}`);
  };
  await quick.practice();
  await panels(quick, look);
  const round = { "Push, pull, read": (it) => pad(it, look) };
  const answers = {
    ...round,
    "Spin by hand": "Rough and noisy",
    "Rock: 12 and 6": "Just felt",
  };
  await quick.walk("Hand over: Report and file", answers, look);
  await quick.finish("Finished");
  await look("Hand over: Ended");
  expect([...new Set(wrong)]).toEqual([]);
}

/** A round with the pad open: the second way of the same screen. */
async function pad(quick, look) {
  await quick.main.getByTitle("Number pad").tap();
  await look("Measure: number pad");
  const before = (await quick.label()).startsWith("Measure");
  await quick.type(before ? "6" : "0");
  await quick.key(/^Save \d/).tap();
}

/** What opens over a step. */
async function panels(quick, look) {
  // A panel covers the key that brings on the screen what lies below: that is seen before.
  await quick.unfold();
  await quick.key("Not done").tap();
  await look("Panel: not done");
  await quick.key("Close").tap();
  for (const name of ["More", "Note", "It won't go", "Why"]) {
    await quick.key("More").tap();
    if (name !== "More") await quick.key(name).tap();
    await look(`Panel: ${name}`);
    await quick.key("Close").tap();
  }
}

test("at 390 × 844 every screen of a job is sound to axe, and every control is large enough", async ({ app }) => {
  test.setTimeout(300_000);
  await app.setViewportSize(LARGE.viewport);
  await walkThrough(app, LARGE);
});

test("at 320 × 568 every screen of a job is sound to axe, and nothing is cut off", async ({ app }) => {
  test.setTimeout(300_000);
  await app.setViewportSize(SMALL.viewport);
  await walkThrough(app, SMALL);
});

/** What of these is cut off by the frame in which it scrolls, or by the screen. */
function cutOff(page, selector) {
  return page.evaluate((wanted) => [...document.querySelectorAll(wanted)].filter((it) => {
    const box = it.getBoundingClientRect();
    const frame = it.closest(".step__thing, .customer__say").getBoundingClientRect();
    return box.height === 0 || box.top < frame.top - 0.5 || box.bottom > frame.bottom + 0.5;
  }).map((it) => it.textContent), selector);
}

test("at 320 × 568 a number pad with its number and the box for a name stand whole", async ({ app }) => {
  test.setTimeout(120_000);
  await app.setViewportSize(SMALL.viewport);
  const quick = new Quick(app);
  const PAD = ".pad__number output, .pad__key";
  await quick.practice();
  await quick.goTo("Odometer");
  await expect(app.locator(PAD)).toHaveCount(12);
  expect(await cutOff(app, PAD)).toEqual([]);
  await app.goBack();
  await app.goBack();
  await quick.walk("Measure: Push, pull, read");
  await quick.main.getByTitle("Number pad").tap();
  await quick.type("6");
  await expect(app.locator(PAD)).toHaveCount(13);
  expect(await cutOff(app, PAD)).toEqual([]);
  await quick.key("Save 6").tap();
  await quick.walk("Decide: Decision", { "Push, pull, read": (it) => it.round("6") });
  await quick.key("Show the customer").tap();
  await expect(quick.main.getByRole("img", { name: "Signature" })).toBeVisible();
  // What it signs is read before, the reasons too.
  await quick.unfold();
  await expect.poll(() => cutOff(app, ".sign")).toEqual([]);
});

test("the screens of the desk are sound to axe and do not scroll sideways", async ({ app }) => {
  const quick = new Quick(app);
  await app.setViewportSize(SMALL.viewport);
  await quick.take([file("job.json", sampleText("replaced-hub"))]);
  const job = await quick.main.getByRole("link", { name: "Open the job" }).getAttribute("href");
  const here = job.replace("/where", "");
  for (const place of ["#/", "#/new", "#/shop-lists", "#/book", "#/settings", "#/import", job, `${here}/loose`, `${here}/bill`, `${here}/report`, `${here}/notes`]) {
    await app.evaluate((hash) => { location.hash = hash; }, place);
    await expect(quick.main.getByRole("heading", { level: 1 })).toBeVisible();
    expect(await serious(app), place).toEqual([]);
    const beyond = await app.evaluate(() => document.scrollingElement.scrollWidth - innerWidth);
    expect(beyond, place).toBeLessThanOrEqual(0);
  }
});
