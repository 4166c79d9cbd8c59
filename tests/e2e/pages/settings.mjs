// The settings, in sections that open one by one.

/** Goes to the settings and opens a section by its title. */
export async function settings(page, title) {
  await page.evaluate(() => { location.hash = "#/settings"; });
  const heading = page.getByRole("heading", { name: title, exact: true });
  const part = page.locator("details.settings__part").filter({ has: heading });
  await heading.waitFor();
  if (!(await part.evaluate((it) => it.open))) await heading.tap();
}
