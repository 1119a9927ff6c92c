import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { accessibilityFaultsOn } from "./accessibility-faults.ts";
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
  await page.getByText("Columns, and how they were taken").click();
  expect(await page.getByLabel("Product", { exact: true }).inputValue()).toBe("item");
  expect(await page.locator(".preview .figures").textContent()).toMatch(/New2Known before0Refused1/);
  expect(await page.locator(".preview .refused").textContent()).toContain("yesterday");
  expect(await soldOn("2026-11-23")).toBe(0);
  expect(await accessibilityFaultsOn(page)).toEqual([]);

  await page.getByRole("button", { name: "Read it in" }).click();
  await page.getByRole("heading", { name: "monday.csv is in" }).waitFor();
  await page.getByText("1 row could not be read").waitFor();
  expect(await page.locator(".explanation").textContent()).toContain("What moved");
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

  await page.locator(".imports").getByRole("button", { name: "Take back monday.csv" }).click();
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

it("is put right by hand where a column was taken wrongly, and the next file like it is read the same way", async () => {
  const { page } = await newPage(browser, { viewport: PHONE });
  await goTo(page, `${bar.url}/sales`);
  const rows = ["Rung;Kind of drink;Count of it;Paid", "2026-11-24 18:00;Lantern Daiq;2;26.00"];
  await choose(page, "odd 2026-11-24.csv", rows.join("\n"));
  await page.getByText("A question before it can be read").waitFor();
  expect(await accessibilityFaultsOn(page)).toEqual([]);
  await page.getByLabel("Rung", { exact: true }).selectOption("when");
  await page.getByLabel("Kind of drink", { exact: true }).selectOption("item");
  await page.getByLabel("Count of it", { exact: true }).selectOption("quantity");
  await page.getByLabel("Paid", { exact: true }).selectOption("net");
  await page.getByRole("button", { name: "Look again" }).click();
  await page.locator(".figures", { hasText: "Lines read1" }).waitFor();
  expect(await page.getByLabel("Files called").inputValue()).toBe("odd *.csv");
  await page.getByRole("button", { name: "Read it in" }).click();
  await page.getByRole("heading", { name: "odd 2026-11-24.csv is in" }).waitFor();
  expect(await soldOn("2026-11-24")).toBe(2);
  const next = [rows[0], "2026-11-25 18:00;Lantern Daiq;3;39.00"];
  await choose(page, "odd 2026-11-25.csv", next.join("\n"));
  await page.getByRole("button", { name: "Read it in" }).click();
  await page.getByRole("heading", { name: "odd 2026-11-25.csv is in" }).waitFor();
  expect(await soldOn("2026-11-25")).toBe(3);
  await page.context().close();
}, 90_000);

it("accepts a likely meaning with one key, many above a score, and takes them back", async () => {
  const { page } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/sales`);
  const rows = ["LANTERN  DAIQUIRI.", "HH Elder Spritz", "Elder Sprits"].map(
    (name, at) => `2026-11-26 18:0${at}:00;${name};1;13.00`,
  );
  await choose(page, "names.csv", ["Sold At;Product;Units;Total", ...rows].join("\n"));
  await page.getByRole("button", { name: "Read it in" }).click();
  await page.getByRole("heading", { name: "names.csv is in" }).waitFor();
  const typo = page.locator(".unknown-names > li", { hasText: "Elder Sprits" });
  await typo.focus();
  await page.keyboard.press("a");
  await typo.waitFor({ state: "detached" });
  await page.getByRole("button", { name: "Undo" }).click();
  await typo.waitFor();
  await page.getByLabel("From a score of").selectOption("96");
  await page.getByRole("button", { name: /^Accept \d+ likely meaning/ }).click();
  expect(await page.getByRole("dialog").textContent()).toContain("HH Elder Spritz means Elder Spritz");
  await page.getByRole("button", { name: "Accept them" }).click();
  await page.locator(".unknown-names > li", { hasText: "HH Elder Spritz" }).waitFor({ state: "detached" });
  expect(await typo.count()).toBe(1);
  await page.getByText(/^Meanings given/).click();
  const known = page.locator(".known-names tr", { hasText: "HH Elder Spritz" });
  expect(await known.textContent()).toMatch(/Elder Spritz1\$13\.00\w{3}, \w{3}\s\d/);
  await known.getByRole("button", { name: "Take back HH Elder Spritz" }).click();
  expect(await page.getByRole("dialog").textContent()).toContain("1 sold under it");
  await page.getByRole("button", { name: "Take it back" }).click();
  await page.locator(".unknown-names > li", { hasText: "HH Elder Spritz" }).waitFor();
  expect(await accessibilityFaultsOn(page)).toEqual([]);
  await page.context().close();
}, 90_000);

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
