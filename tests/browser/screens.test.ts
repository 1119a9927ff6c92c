import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { SCREENS } from "./screens.ts";
import { goTo, LAPTOP, launchBrowser, newPage, type OpenBar, openBar, PHONE, TABLET } from "./support.ts";

const AXE = createRequire(import.meta.url).resolve("axe-core/axe.min.js");

let bar: OpenBar;
let browser: Browser;
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar(), launchBrowser()]);
}, 180_000);
afterAll(async () => {
  await browser?.close();
  await bar?.close();
});

describe.each([
  ["a phone", PHONE],
  ["a tablet", TABLET],
  ["a laptop", LAPTOP],
])("on %s", (_device, viewport) => {
  it.each(SCREENS)(
    "%s opens with its heading and title, logs nothing, asks nobody else, fits, and is for everybody, in light and in dark",
    async (path, heading) => {
      const { page, faults } = await newPage(browser, {
        viewport,
        colorScheme: "light",
        reducedMotion: "reduce",
      });
      await goTo(page, bar.url + path);
      expect(await page.locator("h1").allTextContents()).toEqual([expect.stringContaining(heading)]);
      expect(await page.title()).toContain("Ullage");
      expect(await overhang(page)).toBe(0);
      // Injected by the browser's own tools, as the page's security policy would not let it in.
      await page.evaluate(readFileSync(AXE, "utf8"));
      expect(await seriousFaults(page)).toEqual([]);
      await page.emulateMedia({ colorScheme: "dark" });
      expect(await seriousFaults(page)).toEqual([]);
      expect(faults).toEqual([]);
      await page.context().close();
    },
    60_000,
  );
});

/** Pixels by which the page is wider than its window. */
function overhang(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

async function seriousFaults(page: Page): Promise<string[]> {
  const results = (await page.evaluate("axe.run(document, { resultTypes: ['violations'] })")) as AxeResults;
  return results.violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(" ")}`));
}
