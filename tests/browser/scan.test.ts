import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { writeBarcodeVideo } from "./barcode-video.ts";
import { goTo, launchBrowser, newPage, type OpenBar, openBar, PHONE } from "./support.ts";

/** A number for use inside a company (GS1 General Specifications: prefix 20), check digit 5. */
const EAN = "2000000000015";

let bar: OpenBar;
let browser: Browser;
beforeAll(async () => {
  const film = join(mkdtempSync(join(tmpdir(), "ullage-")), "label.y4m");
  writeBarcodeVideo(film, EAN);
  const camera = [
    "--use-fake-ui-for-media-stream",
    "--use-fake-device-for-media-stream",
    `--use-file-for-fake-video-capture=${film}`,
  ];
  [bar, browser] = await Promise.all([openBar(), launchBrowser(...camera)]);
}, 180_000);
afterAll(async () => {
  await browser?.close();
  await bar?.close();
});

it("finds the bottle whose barcode is held before the camera, in a browser without a reader of its own", async () => {
  const pack = await fetch(`${bar.url}/api/catalogue`).then(async (answer) => {
    const { packs } = (await answer.json()) as { packs: { item: string }[] };
    return packs.find(({ item }) => item === "Quillmere Vodka");
  });
  const posted = await fetch(`${bar.url}/api/packs`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ ...pack, gtin: EAN }),
  });
  expect(posted.status).toBeLessThan(300);
  const { page } = await newPage(browser, { viewport: PHONE });
  await goTo(page, `${bar.url}/count?count=By+barcode&area=Front+well`);
  expect(await page.evaluate(() => "BarcodeDetector" in globalThis)).toBe(false);
  await page.getByRole("button", { name: "Scan a barcode" }).click();
  await expect.poll(() => page.getByLabel("Find").inputValue(), { timeout: 20_000 }).toBe(EAN);
  await page
    .getByRole("link", { name: /Quillmere Vodka/ })
    .first()
    .waitFor();
  await page.context().close();
}, 60_000);
