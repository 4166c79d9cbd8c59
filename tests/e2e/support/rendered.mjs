// Sheets of paper as pictures, and what a reader of QR symbols that is not ours finds on them.
import { fileURLToPath } from "node:url";

const ORIGIN = "https://paper.invalid";
const modules = (path) => fileURLToPath(new URL(`../node_modules/${path}`, import.meta.url));
const PDF = modules("pdfjs-dist/legacy/build/pdf.mjs");
const WORKER = modules("pdfjs-dist/legacy/build/pdf.worker.mjs");
const READER = modules("jsqr/dist/jsQR.js");

/** A page of its own, with the libraries and nothing of the app. */
async function bench(context) {
  const page = await context.newPage();
  await page.route(`${ORIGIN}/**`, (route) => {
    const name = new URL(route.request().url()).pathname;
    if (name === "/pdf.mjs") return route.fulfill({ path: PDF, contentType: "text/javascript" });
    if (name === "/worker.mjs") return route.fulfill({ path: WORKER, contentType: "text/javascript" });
    return route.fulfill({ body: "<!doctype html><title>Bench</title>", contentType: "text/html" });
  });
  await page.goto(`${ORIGIN}/`);
  await page.addScriptTag({ path: READER });
  return page;
}

/** The page as it would be printed, its first sheets as PNG at so many dots an inch, with their QR text. */
export async function rendered(page, { dpi = 200, most = 2, ...options } = {}) {
  const pdf = await page.pdf({ preferCSSPageSize: true, ...options });
  const table = await bench(page.context());
  const sheets = await table.evaluate(async ({ base64, scale, most }) => {
    const { getDocument, GlobalWorkerOptions } = await import("/pdf.mjs");
    GlobalWorkerOptions.workerSrc = "/worker.mjs";
    const data = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const file = await getDocument({ data }).promise;
    const sheets = [];
    for (let number = 1; number <= Math.min(most, file.numPages); number += 1) {
      const sheet = await file.getPage(number);
      const viewport = sheet.getViewport({ scale });
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [Math.ceil(viewport.width), Math.ceil(viewport.height)];
      const canvasContext = canvas.getContext("2d", { willReadFrequently: true });
      await sheet.render({ canvasContext, viewport }).promise;
      // A camera is held over the code, not over the whole sheet with all its drawings.
      const [wide, high] = [canvas.width, canvas.height];
      const views = [
        [0, 0, wide, high],
        [0, high / 2, wide, high / 2],
        [0, 0, wide, high / 2],
        [wide / 2, high / 2, wide / 2, high / 2],
      ].map((view) => view.map(Math.floor));
      const read = (view) => {
        const { data, width, height } = canvasContext.getImageData(...view);
        return window.jsQR(data, width, height, { inversionAttempts: "dontInvert" });
      };
      const code = views.reduce((found, view) => found ?? read(view), null);
      const side = code && Math.hypot(
        code.location.topRightCorner.x - code.location.topLeftCorner.x,
        code.location.topRightCorner.y - code.location.topLeftCorner.y,
      );
      sheets.push({
        png: canvas.toDataURL("image/png").split(",")[1],
        code: code && code.data,
        modules: code && 17 + 4 * code.version,
        mm: code && (side / scale / 72) * 25.4,
      });
    }
    return sheets;
  }, { base64: pdf.toString("base64"), scale: dpi / 72, most });
  await table.close();
  return sheets.map(({ png, ...sheet }) => ({ ...sheet, png: Buffer.from(png, "base64") }));
}

/** What a reader that is not ours finds in these symbols, as a camera would see them on a screen. */
export async function symbolsRead(page, symbols) {
  const drawn = await symbols.locator("svg").evaluateAll((all) => all.map((svg) => new XMLSerializer().serializeToString(svg)));
  const table = await bench(page.context());
  const texts = await table.evaluate(async (drawn) => {
    const read = async (svg) => {
      const image = new Image(720, 720);
      image.src = `data:image/svg+xml,${encodeURIComponent(svg.replace("<svg", '<svg width="720" height="720" color="#000"'))}`;
      await image.decode();
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [720, 720];
      const pen = canvas.getContext("2d");
      pen.fillStyle = "#fff";
      pen.fillRect(0, 0, 720, 720);
      pen.drawImage(image, 0, 0, 720, 720);
      return window.jsQR(pen.getImageData(0, 0, 720, 720).data, 720, 720)?.data ?? null;
    };
    return Promise.all(drawn.map(read));
  }, drawn);
  await table.close();
  return texts;
}

/** Gives a page the reader of symbols that many phones have built in, with jsQR behind it. */
export async function withBarcodeDetector(context) {
  await context.addInitScript({ path: READER });
  await context.addInitScript(() => {
    window.BarcodeDetector = class {
      async detect(bitmap) {
        const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
        const pen = canvas.getContext("2d");
        pen.drawImage(bitmap, 0, 0);
        const { data, width, height } = pen.getImageData(0, 0, bitmap.width, bitmap.height);
        const code = window.jsQR(data, width, height);
        return code ? [{ rawValue: code.data, format: "qr_code" }] : [];
      }
    };
  });
}
