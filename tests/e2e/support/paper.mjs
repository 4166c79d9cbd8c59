// What a page says on paper.
import { getDocument, VerbosityLevel } from "pdfjs-dist/legacy/build/pdf.mjs";

/** Prints the page as it would be printed; gives the text of each sheet. */
export async function printed(page) {
  const data = new Uint8Array(await page.pdf({ preferCSSPageSize: true }));
  const file = await getDocument({ data, verbosity: VerbosityLevel.ERRORS }).promise;
  const sheets = [];
  for (let number = 1; number <= file.numPages; number += 1) {
    const { items } = await (await file.getPage(number)).getTextContent();
    sheets.push(items.map(({ str, hasEOL }) => str + (hasEOL ? "\n" : "")).join(""));
  }
  return sheets;
}
