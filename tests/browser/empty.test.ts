import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { goTo, LAPTOP, launchBrowser, newPage, type OpenBar, openBar } from "./support.ts";

let bar: OpenBar;
let browser: Browser;
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar({ book: null }), launchBrowser()]);
}, 180_000);
afterAll(async () => {
  await browser?.close();
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
