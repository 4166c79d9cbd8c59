// What a page says on paper.
import { getDocument, VerbosityLevel } from "pdfjs-dist/legacy/build/pdf.mjs";

/** Prints the page as it would be printed; gives the text of each sheet. */
export async function printed(page, options = {}) {
  return (await sheets(page, options)).map(({ text }) => text);
}

/** Prints the page on paper of a format ("A4", "Letter"); gives each sheet's text and size in points. */
export async function sheets(page, options = {}) {
  const data = new Uint8Array(await page.pdf({ preferCSSPageSize: true, ...options }));
  const file = await getDocument({ data, verbosity: VerbosityLevel.ERRORS }).promise;
  const all = [];
  for (let number = 1; number <= file.numPages; number += 1) {
    const sheet = await file.getPage(number);
    const { width, height } = sheet.getViewport({ scale: 1 });
    const { items } = await sheet.getTextContent();
    all.push({ width, height, text: items.map(({ str, hasEOL }) => str + (hasEOL ? "\n" : "")).join("") });
  }
  return all;
}
