import { readFileSync } from "node:fs";
import Papa from "papaparse";
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

it("gives the variance as a file that says the same as the command line", async () => {
  const { page } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/variance`);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "CSV" }).click(),
  ]);
  const { data } = Papa.parse<Record<string, string>>(
    readFileSync(await download.path(), "utf8").replace(/^\uFEFF/, ""),
    { header: true },
  );
  const reported: { items: { item: string; cost: number | null }[] } = JSON.parse(
    bar.ullage("variance", "--json"),
  );
  expect(data.map((row) => [row.Item, row["At cost"]])).toEqual(
    reported.items.map(({ item, cost }) => [item, cost === null ? "" : String(cost)]),
  );
  await page.context().close();
}, 60_000);

it("narrows the stock to what is typed and to an area, and counts the rows aloud", async () => {
  const { page } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/stock`);
  await page.getByLabel("Filter").fill("gin");
  const names = await page.locator("tbody th").allTextContents();
  expect(names.length).toBeGreaterThan(0);
  expect(names.every((name) => /gin/i.test(name))).toBe(true);
  expect(await page.locator(".table-count").textContent()).toContain(`${names.length} of `);
  await page.getByLabel("Filter").fill("no such thing");
  await page.getByText("No row has").waitFor();
  await page.context().close();
}, 60_000);

it("folds the stock to two lines an item on a phone and still lets one choose the order", async () => {
  const { page } = await newPage(browser, { viewport: PHONE, hasTouch: true });
  await goTo(page, `${bar.url}/stock`);
  await page.getByLabel("Order by").selectOption({ label: "Value, largest first" });
  const first = page.locator("tbody tr").first();
  const height = (await first.boundingBox())?.height ?? 0;
  expect(height).toBeGreaterThan(40);
  expect(height).toBeLessThan(110);
  await page.context().close();
}, 60_000);

it("keeps the look a person chose, paper or dim bar, over a reload", async () => {
  const { page } = await newPage(browser, { viewport: LAPTOP, colorScheme: "light" });
  await goTo(page, bar.url);
  const ground = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const paper = await ground();
  await page.getByRole("button", { name: "Look: as the device" }).click();
  await page.getByRole("button", { name: "Look: paper" }).click();
  const dim = await ground();
  expect(dim).not.toBe(paper);
  await page.reload();
  await settled(page);
  expect(await ground()).toBe(dim);
  await page.context().close();
}, 60_000);
