import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { closePages, goTo, LAPTOP, newPage, type OpenBar, openBar, sharedBrowser } from "./support.ts";

let bar: OpenBar;
let browser: Browser;
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar({ book: null }), sharedBrowser()]);
}, 180_000);
afterAll(async () => {
  await closePages(browser);
  await bar?.close();
});

it.each(["/", "/variance", "/stock"])("teaches three ways in at %s while there is no venue", async (path) => {
  const { page } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, bar.url + path);
  const text = await page.locator("main").textContent();
  for (const command of ["ullage -- demo", "ullage -- load my-bar", "ullage -- sales week.csv"]) {
    expect(text).toContain(command);
  }
  await page.context().close();
});
