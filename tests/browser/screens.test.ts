import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { accessibilityFaultsOn, OF_COLOUR } from "./accessibility-faults.ts";
import { SCREENS } from "./screens.ts";
import {
  closePages,
  goTo,
  LAPTOP,
  newPage,
  type OpenBar,
  openBar,
  overhang,
  PHONE,
  settled,
  sharedBrowser,
  TABLET,
} from "./support.ts";

let bar: OpenBar;
let browser: Browser;
let page: Page;
let faults: string[];
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar(), sharedBrowser()]);
  // One page for all: what every screen loads is asked for and compiled once.
  ({ page, faults } = await newPage(browser, { viewport: PHONE, reducedMotion: "reduce" }));
}, 180_000);
afterAll(async () => {
  await closePages(browser);
  await bar?.close();
});

it.each(SCREENS)(
  "%s opens with its heading and title, logs nothing, asks nobody else, fits a phone, a tablet and a laptop, and is for everybody there, in light and in dark",
  async (path, heading) => {
    faults.length = 0;
    await page.setViewportSize(PHONE);
    await goTo(page, bar.url + path);
    expect(await page.locator("h1").allTextContents()).toEqual([expect.stringContaining(heading)]);
    expect(await page.title()).toContain("Ullage");
    for (const viewport of [PHONE, TABLET, LAPTOP]) {
      await page.setViewportSize(viewport);
      await drawn(page);
      expect(await overhang(page), `${viewport.width} px`).toBe(0);
      // Each width and each palette is seen by all rules; what a palette cannot change at a width is looked at once.
      for (const colorScheme of ["light", "dark"] as const) {
        const rules = (colorScheme === "dark") === (viewport === TABLET) ? undefined : OF_COLOUR;
        await page.emulateMedia({ colorScheme });
        expect(await accessibilityFaultsOn(page, rules), `${viewport.width} px, ${colorScheme}`).toEqual([]);
      }
    }
    expect(faults).toEqual([]);
  },
  120_000,
);

it("are all the addresses that the program knows, but for the door that the tests of signing in go through", () => {
  const known = readFileSync(new URL("../../web/routes.tsx", import.meta.url), "utf8").matchAll(
    /path: "([^"]+)"/g,
  );
  const seen = SCREENS.map(([path]) => path);
  const isSeen = (route: string) => {
    const like = new RegExp(`^${route.replace(/\$\w+/g, "[^/]+")}$`);
    return seen.some((path) => like.test(path));
  };
  const unseen = [...known].map(([, route]) => route as string).filter((route) => !isSeen(route));
  expect(unseen).toEqual(["/welcome"]);
});

/** Waits for the frame after next, in which charts stand in their new width. */
async function drawn(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
  );
  await settled(page);
}
