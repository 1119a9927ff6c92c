import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { seriousFaultsOn } from "./serious-faults.ts";
import { goTo, LAPTOP, launchBrowser, newPage, type OpenBar, openBar, settled } from "./support.ts";

let bar: OpenBar;
let browser: Browser;
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar(), launchBrowser()]);
}, 180_000);
afterAll(async () => {
  await browser?.close();
  await bar?.close();
});

const TILL = [
  "Sold At;Product;Options;Units;Total;Receipt;Line",
  "2026-11-23 17:04:00;Lantern Daiq;;1;13.00;90001;1",
  "2026-11-23 17:05:00;Elder Spritz Lg;;2;32.00;90001;2",
  "yesterday;Lantern Daiq;;1;13.00;90003;1",
].join("\n");

async function choose(page: Page, name: string, text: string): Promise<void> {
  await page
    .getByLabel("Sales file of any till")
    .setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(text) });
  await page.locator(".preview h2", { hasText: name }).waitFor();
}

async function soldOn(date: string): Promise<number> {
  const days = (await (await fetch(`${bar.url}/api/sales/days`)).json()) as {
    date: string;
    quantity: number;
  }[];
  return days.find((day) => day.date === date)?.quantity ?? 0;
}

it("shows how a till's file is understood, reads it in on a word, asks what is unknown, and takes it back", async () => {
  const { page, faults } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/sales`);
  await choose(page, "monday.csv", TILL);
  expect(await page.locator(".columns-found").textContent()).toMatch(/Product\s*what was sold/);
  expect(await page.locator(".preview-sum").textContent()).toContain("2 new");
  expect(await page.locator(".preview .refused").textContent()).toContain("yesterday");
  expect(await soldOn("2026-11-23")).toBe(0);
  expect(await seriousFaultsOn(page)).toEqual([]);

  await page.getByRole("button", { name: "Read it in" }).click();
  await page.getByText("1 row could not be read").waitFor();
  expect(await soldOn("2026-11-23")).toBe(3);

  const unknown = page.locator(".unknown-names > li", { hasText: "Elder Spritz Lg" });
  await unknown.getByRole("button", { name: "Say what it is" }).click();
  await unknown.getByRole("button", { name: /^Elder Spritz/ }).click();
  await unknown.getByLabel("Serves of it").fill("1.5");
  await unknown.getByRole("button", { name: "Save the meaning" }).click();
  await unknown.waitFor({ state: "detached" });
  const { ringNames } = (await (await fetch(`${bar.url}/api/catalogue`)).json()) as {
    ringNames: { ringName: string }[];
  };
  expect(ringNames.find(({ ringName }) => ringName === "Elder Spritz Lg")).toMatchObject({
    soldAs: { kind: "drink", drink: "Elder Spritz" },
    serves: 1.5,
  });

  await page.getByRole("button", { name: "Take back monday.csv" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Take it back" }).click();
  await page.locator("tr", { hasText: "monday.csv" }).getByText("taken back").waitFor();
  expect(await soldOn("2026-11-23")).toBe(0);
  expect(faults).toEqual([]);
  await page.context().close();
}, 90_000);

it("asks instead of guessing when a file can be read two ways, and reads nothing in", async () => {
  const { page } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/sales`);
  const twoWays = ["Date,Item,Qty", "03/04/2026,Lantern Daiq,1", "05/06/2026,Lantern Daiq,2"].join("\n");
  await choose(page, "spring.csv", twoWays);
  await page.getByText("A question before it can be read").waitFor();
  expect(await page.getByRole("button", { name: "Read it in" }).isDisabled()).toBe(true);
  await page.context().close();
}, 60_000);

it("lets a modifier be known as changing nothing", async () => {
  const { page } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/sales`);
  const modifier = page.locator(".unknown-names > li", { hasText: "Table Favorite" });
  await modifier.getByRole("button", { name: "Say what it does" }).click();
  await modifier.getByRole("button", { name: "Save" }).click();
  await modifier.waitFor({ state: "detached" });
  await settled(page);
  await page.context().close();
}, 60_000);
