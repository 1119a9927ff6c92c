import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import {
  closePages,
  goTo,
  newPage,
  type OpenBar,
  openBar,
  PHONE,
  settled,
  sharedBrowser,
} from "./support.ts";

let bar: OpenBar;
let browser: Browser;
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar(), sharedBrowser()]);
}, 180_000);
afterAll(async () => {
  await closePages(browser);
  await bar?.close();
});

/** Words that no German sentence has; names of bottles and of preps have none of them. */
const ENGLISH = /\b(the|and|is|are|not|with|from|until|what|nothing|by)\b/i;

it("speaks the language chosen on the device, what the server says included, and takes the device's at first", async () => {
  const { page } = await newPage(browser, { viewport: PHONE, locale: "en-GB" });
  await goTo(page, `${bar.url}/`);
  await page.getByRole("button", { name: "More" }).click();
  await page.getByRole("button", { name: "Deutsch" }).click();
  await page.getByRole("heading", { name: "Diese Woche" }).waitFor();
  expect(await page.locator("html").getAttribute("lang")).toBe("de");
  for (const [path, heading] of [
    ["/", "Diese Woche"],
    ["/variance", "Abweichung"],
    ["/order", "Bestellen"],
    ["/stock", "Bestand"],
    ["/forecast", "Prognose"],
  ] as const) {
    await goTo(page, bar.url + path);
    await settled(page);
    expect(await page.getByRole("heading", { level: 1 }).textContent()).toContain(heading);
    // biome-ignore lint/performance/useDomNodeTextContent: the lines as they are read, without what is hidden
    const lines = (await page.locator("main").innerText()).split("\n");
    expect(
      lines.filter((line) => ENGLISH.test(line)),
      path,
    ).toEqual([]);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wide, path).toBeLessThanOrEqual(0);
  }
  await page.getByRole("button", { name: "Mehr" }).click();
  await page.getByRole("button", { name: "English" }).click();
  await page.locator("html[lang=en]").waitFor();
  await page.context().close();

  const german = await newPage(browser, { viewport: PHONE, locale: "de-AT" });
  await goTo(german.page, `${bar.url}/count`);
  expect(await german.page.locator("html").getAttribute("lang")).toBe("de");
  await german.page.context().close();
}, 90_000);
