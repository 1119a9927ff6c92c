import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { accessibilityFaultsOn } from "./accessibility-faults.ts";
import { closePages, goTo, LAPTOP, newPage, type OpenBar, openBar, sharedBrowser } from "./support.ts";

let bar: OpenBar;
let browser: Browser;
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar(), sharedBrowser()]);
}, 180_000);
afterAll(async () => {
  await closePages(browser);
  await bar?.close();
});

type Entry = { id: number; fact: Record<string, unknown>; history: { fact: Record<string, unknown> }[] };

async function entries(kind: string): Promise<Entry[]> {
  return (await (await fetch(`${bar.url}/api/entries/${kind}`)).json()) as Entry[];
}

/** Picks a name from a list by typing the beginning, as a person does. */
async function pick(page: Page, label: string, typed: string): Promise<void> {
  await page.getByRole("combobox", { name: label }).fill(typed);
  await page
    .getByRole("option", { name: new RegExp(`^${typed}`) })
    .first()
    .click();
}

/** A page on a Wednesday after the sample's last count, whatever day the test runs. */
async function openOn(viewport: { width: number; height: number }) {
  const opened = await newPage(browser, { viewport });
  await opened.page.clock.setFixedTime(new Date("2026-11-25T15:00:00Z"));
  return opened;
}

it("enters a delivery, corrects it with a reason, and keeps what it was before", async () => {
  const { page, faults } = await openOn(LAPTOP);
  await goTo(page, `${bar.url}/movements`);
  await page.getByRole("button", { name: "Enter a delivery" }).click();
  await page.getByLabel("Invoice").fill("LM-TEST-1");
  await pick(page, "Item", "Quillmere Vodka");
  await page.getByLabel("How many").fill("3");
  await page.getByLabel("Of", { exact: true }).selectOption("case");
  await page.getByLabel("Price of the line, USD").fill("630");
  expect(await accessibilityFaultsOn(page)).toEqual([]);
  await page.getByRole("button", { name: "Enter it" }).click();
  const row = page.locator("tbody tr", { hasText: "LM-TEST-1" });
  await row.waitFor();

  await row.getByRole("button", { name: "Correct Quillmere Vodka" }).click();
  const form = page.locator(".change-entry");
  expect(await form.getByRole("button", { name: "Save the correction" }).isDisabled()).toBe(true);
  await form.getByLabel("Why").fill("two cases came");
  await form.getByLabel("How many").fill("2");
  await form.getByRole("button", { name: "Save the correction" }).click();
  await page.getByText("Corrected: two cases came. Before: Quillmere Vodka, 3 cases of 1 L").waitFor();
  const entry = (await entries("deliveries")).find(({ fact }) => fact.invoice === "LM-TEST-1");
  expect(entry?.fact).toMatchObject({ quantity: 2, of: "case", pack: "1 L", priceTotalMinor: 63_000 });
  expect(entry?.history[0]?.fact).toMatchObject({ quantity: 3 });
  expect(faults).toEqual([]);
  await page.context().close();
}, 60_000);

it("warns when an invoice is entered a second time", async () => {
  const { page } = await openOn(LAPTOP);
  await goTo(page, `${bar.url}/movements`);
  await page.getByRole("button", { name: "Enter a delivery" }).click();
  await page.getByLabel("Invoice").fill("LM-40297");
  await page.getByText("This invoice was entered before").waitFor();
  await page.context().close();
}, 60_000);

it("enters the loss of a drink in serves, and takes it back with a reason", async () => {
  const { page } = await openOn(LAPTOP);
  await goTo(page, `${bar.url}/movements?kind=losses`);
  const before = (await entries("losses")).length;
  await page.getByRole("button", { name: "Enter a loss" }).click();
  await page.getByLabel("Kind", { exact: true }).selectOption("comp");
  await pick(page, "Item or drink", "Harbour Sour");
  await page.getByLabel("Serves").fill("2");
  await page.getByLabel("Note").fill("sent back");
  await page.getByRole("button", { name: "Enter it" }).click();
  const row = page.locator("tbody tr", { hasText: "comp, sent back" });
  await row.waitFor();
  expect((await entries("losses")).map(({ fact }) => fact)).toContainEqual(
    expect.objectContaining({ kind: "comp", what: "Harbour Sour", amount: 2, unit: "serve" }),
  );
  await row.getByRole("button", { name: "Take back Harbour Sour" }).click();
  await page.getByLabel("Why").fill("was paid after all");
  await page.getByRole("button", { name: "Take it back" }).click();
  await row.waitFor({ state: "detached" });
  expect(await entries("losses")).toHaveLength(before);
  await page.context().close();
}, 60_000);

it("enters a transfer in the unit its item is measured in", async () => {
  const { page } = await openOn(LAPTOP);
  await goTo(page, `${bar.url}/movements?kind=transfers`);
  await page.getByRole("button", { name: "Enter a transfer" }).click();
  await page.getByLabel("Place").fill("Roof bar");
  await pick(page, "Item", "Thornquay Bourbon");
  await page.getByLabel("Amount").fill("25.5");
  await page.getByRole("button", { name: "Enter it" }).click();
  await page.locator("tbody tr", { hasText: "to Roof bar" }).waitFor();
  expect((await entries("transfers"))[0]?.fact).toMatchObject({
    direction: "out",
    item: "Thornquay Bourbon",
    amount: 25.5,
    unit: "oz",
  });
  await page.context().close();
}, 60_000);
