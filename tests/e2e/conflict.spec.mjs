// Two phones recorded one thing differently: it is named, the more careful value counts, and a key
// settles it; invoice numbers that cannot be right are named in the shop.
import { expect, test } from "./support/fixtures.mjs";
import { another, before, fileOf, sampleEntries } from "./support/jobs.mjs";
import { Quick, file } from "./pages/quick.mjs";

const isFirstPull = ({ reading }) => reading?.side === "pull" && reading.round === 1 && reading.when === "before";

/** The sample up to its decision, its first pull as another phone read it too: 1 thou beside 6.3. */
function differing() {
  const entries = before(sampleEntries("replaced-hub"), ({ decided }) => decided);
  const pull = entries.find(({ what }) => isFirstPull(what));
  const other = {
    ...pull, id: pull.id.replace(/.{12}$/, "0123456789ab"), by: "J. Marsh", device: "van-7", n: 9,
    what: { reading: { ...pull.what.reading, divisions: "1" } },
  };
  return [...entries, other];
}

test("a reading that two phones took differently is named at import, on home and in the shop", async ({ app }) => {
  const quick = new Quick(app);
  await quick.take([file("job.json", fileOf(differing()))]);
  await expect(quick.alert("Jobs with values that two phones recorded differently")).toBeVisible();
  await app.evaluate(() => { location.hash = "#/"; });
  await expect(quick.main).toContainText("Recorded differently on two phones: 1");
  await app.evaluate(() => { location.hash = "#/shop-lists"; });
  await expect(quick.main.getByRole("heading", { name: "Recorded differently (1)" })).toBeVisible();
});

for (const [chosen, other] of [["6.3", "1"], ["1", "6.3"]]) {
  test(`of 6.3 and 1 a key chooses ${chosen}, and page one says both until then`, async ({ app }) => {
    const quick = new Quick(app);
    await quick.open(fileOf(differing()));
    await expect(quick.alert("Recorded differently on two phones: 1")).toBeVisible();
    const report = await quick.report();
    const notice = report.getByRole("region", { name: "For the customer" }).getByRole("note");
    await expect(notice).toContainText("no one has chosen yet");
    for (const words of [chosen, other, "R. Okafor", "J. Marsh", "van-7"]) await expect(notice).toContainText(words);
    await app.evaluate(() => { location.hash = location.hash.replace("/report", "/notes"); });
    await expect(quick.main.getByRole("listitem").filter({ hasText: "counts now" })).toContainText("6.3");
    const keys = quick.main.getByRole("button", { name: /^Take: / });
    await expect(keys).toHaveCount(2);
    await keys.filter({ hasText: `: ${chosen} divisions` }).tap();
    await expect(keys).toHaveCount(0);
    const settled = await quick.report();
    await expect(settled.getByRole("region", { name: "For the customer" })).not.toContainText("no one has chosen yet");
  });
}

/** The finished sample as another job, with an invoice under this number. */
function numbered(place, number) {
  const entries = another(sampleEntries("replaced-hub"), place);
  const last = entries.at(-1);
  const invoice = {
    ...last, id: last.id.replace(/.{12}$/, "0123456789ab"), n: last.n + 1, after: [last.id],
    what: { invoice: { number, currency: "USD", parts: [] } },
  };
  return [...entries, invoice];
}

test("the shop names a number that two jobs have, and numbers that none has", async ({ app }) => {
  const quick = new Quick(app);
  const jobs = [[1, "N0001"], [2, "N0001"], [3, "N0004"]];
  await quick.take(jobs.map(([place, number]) => file(`${place}.json`, fileOf(numbered(place, number)))));
  await expect(quick.main).toContainText("Number N0001 stands on more than one document");
  await app.evaluate(() => { location.hash = "#/shop-lists"; });
  await expect(quick.main).toContainText("Number N0001 stands on more than one document");
  await expect(quick.main).toContainText("Numbers N0002 to N0003 are on no document here.");
});
