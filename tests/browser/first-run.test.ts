import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { accessibilityFaultsOn } from "./accessibility-faults.ts";
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
  [bar, browser] = await Promise.all([openBar({ book: null }), sharedBrowser()]);
}, 180_000);
afterAll(async () => {
  await closePages(browser);
  await bar?.close();
});

it("leads from an empty database to a first count on the phone, keeping what is half done", async () => {
  const { page } = await newPage(browser, { viewport: PHONE, timezoneId: "Europe/Lisbon" });
  await goTo(page, bar.url);
  expect(await accessibilityFaultsOn(page)).toEqual([]);
  await page.getByLabel("Name of the bar").fill("The Tin Heron");
  await page.getByLabel("Currency").fill("xxq");
  await page.reload();
  await settled(page);
  expect(await page.getByLabel("Name of the bar").inputValue()).toBe("The Tin Heron");
  await page.getByRole("button", { name: "Open the book" }).click();
  await page.getByText("no currency of ISO 4217").waitFor();
  expect(await page.evaluate(() => document.activeElement?.getAttribute("aria-invalid"))).toBe("true");
  await page.getByLabel("Currency").fill("eur");
  await page.getByRole("button", { name: "Open the book" }).click();
  await settled(page, "This week");
  await page.getByRole("heading", { name: "To begin with" }).waitFor();
  expect(await accessibilityFaultsOn(page)).toEqual([]);
  await page.getByRole("link", { name: "Put what you have on its shelves" }).click();
  await page.getByLabel("Where it stands").fill("Back bar");
  await page.getByLabel("What it is").fill("Seacliff Aquavit");
  await page.getByLabel("Category").fill("spirit");
  await page.getByLabel("One holds, in ml").fill("700");
  await page.getByRole("button", { name: "Count it" }).click();
  await page.locator(".item-name", { hasText: "Seacliff Aquavit" }).waitFor();
  await page.keyboard.type("2.5");
  await page.keyboard.press("Enter");
  await page.getByText("All counted.").waitFor();
  await expect
    .poll(async () => (await (await fetch(`${bar.url}/api/counts`)).json()) as unknown[])
    .toHaveLength(1);
  await goTo(page, bar.url);
  const steps = page.locator(".begin-book li");
  await steps.first().waitFor();
  expect(await steps.locator("[aria-label='Done:']").count()).toBe(2);
  // A spec names what the book does not have: it is taken in from there, and what was typed waits.
  await goTo(page, `${bar.url}/specs`);
  await page.getByRole("button", { name: "New drink" }).click();
  await page.keyboard.type("Heron Sour");
  await page.keyboard.press("Enter");
  await settled(page, "Heron Sour");
  await page.getByRole("button", { name: "Write its spec" }).click();
  const spec = page.getByLabel("One line an ingredient");
  await spec.fill("5 cl Seacliff Aquavit\n2 cl lemon cordial");
  await page.getByText("1 of 2 lines not understood.").waitFor();
  await page.reload();
  await settled(page, "Heron Sour");
  await page.getByRole("button", { name: "Write its spec" }).click();
  await page.getByRole("button", { name: "Add “lemon cordial” to the book" }).click();
  await page.getByLabel("Category of lemon cordial").selectOption("mixer");
  await page.getByLabel("One bottle or pack holds, ml").fill("500");
  expect(await accessibilityFaultsOn(page)).toEqual([]);
  await page.getByRole("button", { name: "Add it" }).click();
  await page.getByText("All understood.").waitFor();
  await page.getByRole("button", { name: "Save the new version" }).click();
  await page.getByText("in force").waitFor();
  await goTo(page, `${bar.url}/variance`);
  await page.getByText("It takes two counts").waitFor();
  await goTo(page, `${bar.url}/prices`);
  await page.getByRole("button", { name: "New supplier" }).click();
  await page.keyboard.type("Fern Produce");
  await page.getByRole("button", { name: "Save" }).click();
  await page.getByText("Monday by 15:00, arrives Wednesday at 11:00.").waitFor();
  await page.context().close();
}, 90_000);
