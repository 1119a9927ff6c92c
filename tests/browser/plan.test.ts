import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import {
  closePages,
  goTo,
  LAPTOP,
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

it("tries a party of 120 on the order, and takes it out again", async () => {
  const { page, faults } = await newPage(browser, { viewport: PHONE, hasTouch: true });
  await goTo(page, `${bar.url}/plan`);
  const before = bar.ullage("order", "--json");
  await page.getByRole("button", { name: "Add" }).click();
  const serves = page.locator("dl div", { hasText: "Serves" }).first();
  await serves.waitFor();
  expect(await serves.textContent()).toContain("+360");
  await page.getByRole("button", { name: /^Take out: A party of 120/ }).click();
  await serves.waitFor({ state: "detached" });
  expect(bar.ullage("order", "--json")).toBe(before);
  expect(faults).toEqual([]);
  await page.context().close();
}, 90_000);

it("shows by a slider what safety costs, to the keys as to the finger", async () => {
  const { page, faults } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/plan`);
  const level = page.getByLabel("Service level", { exact: true });
  const told = page.locator("output");
  expect(await told.textContent()).toMatch(/^95\.0\s%: \d+ item-nights? out/);
  await level.press("End");
  expect(await told.textContent()).toMatch(/^99\.9\s%: \d+ item-nights? out/);
  expect(faults).toEqual([]);
  await page.context().close();
}, 90_000);

it("sets forecast against fact for one drink, and checks an order that has come", async () => {
  const { page, faults } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/forecast`);
  await page.getByRole("combobox", { name: "Of" }).fill("Squall");
  await page.getByRole("option", { name: "Squall" }).click();
  await page.locator("figcaption", { hasText: "Squall, serves a day" }).waitFor();
  await page.goto(`${bar.url}/order/check/PO-787`);
  await settled(page, "Order PO-787");
  expect(await page.locator("main table").first().textContent()).toContain("Paper Straw");
  expect(faults).toEqual([]);
  await page.context().close();
}, 90_000);
