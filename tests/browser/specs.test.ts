import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { accessibilityFaultsOn } from "./accessibility-faults.ts";
import { closePages, goTo, LAPTOP, newPage, type OpenBar, openBar, PHONE, sharedBrowser } from "./support.ts";

let bar: OpenBar;
let browser: Browser;
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar(), sharedBrowser()]);
}, 180_000);
afterAll(async () => {
  await closePages(browser);
  await bar?.close();
});

/** A page on a Wednesday after the sample's last count, whatever day the test runs. */
async function openOn(viewport: { width: number; height: number }) {
  const opened = await newPage(browser, { viewport });
  await opened.page.clock.setFixedTime(new Date("2026-11-25T15:00:00Z"));
  return opened;
}

it("reads a spec as it is typed, points at the word it does not know, and saves only what it understands", async () => {
  const { page, faults } = await openOn(LAPTOP);
  await goTo(page, `${bar.url}/specs/Tideline%20Margarita`);
  await page.getByRole("button", { name: "Write a new version" }).click();
  const text = page.getByLabel("One line an ingredient, as on a spec card");
  const before = await text.inputValue();
  await text.fill(`${before}\n1/2 oz lemmon juice`);
  await page.locator(".reading mark", { hasText: "lemmon juice" }).waitFor();
  expect(await page.locator(".reading-why").textContent()).toContain("Lemon Juice");
  const save = page.getByRole("button", { name: "Save the new version" });
  expect(await save.isDisabled()).toBe(true);
  expect(await accessibilityFaultsOn(page)).toEqual([]);

  await text.fill(`${before}\n½ oz lemon juice, fresh`);
  await page.getByText("All understood").waitFor();
  await page.getByLabel("Holds from").fill("2026-11-20");
  await save.click();
  await page.getByText("Fri, Nov 20 in force").waitFor();
  const { specs } = (await (await fetch(`${bar.url}/api/catalogue`)).json()) as {
    specs: { makes: string; from: string; item: string; amount: number; unit: string }[];
  };
  expect(specs).toContainEqual(
    expect.objectContaining({
      makes: "Tideline Margarita",
      from: "2026-11-20",
      item: "Lemon Juice",
      amount: 0.5,
      unit: "oz",
    }),
  );
  expect(await page.locator(".version").count()).toBe(3);
  expect(faults).toEqual([]);
  await page.context().close();
}, 60_000);

it("changes a drink's price, and its cost of price follows", async () => {
  const { page } = await openOn(LAPTOP);
  await goTo(page, `${bar.url}/specs/Harbour%20Sour`);
  const fact = (name: string) => page.locator(".facts > div", { hasText: name }).locator("dd");
  await page.getByRole("button", { name: "Change the facts" }).click();
  await page.getByLabel("Price, USD").fill("28");
  await page.getByRole("button", { name: "Save the facts" }).click();
  await expect.poll(() => fact("Price").first().textContent(), { timeout: 10_000 }).toBe("$28.00");
  const costText = await page
    .locator(".facts dt", { hasText: /^Cost$/ })
    .locator("+ dd")
    .textContent();
  const cost = Number(costText?.slice(1));
  await expect
    .poll(async () => Number.parseFloat((await fact("Cost of price").textContent()) ?? ""))
    .toBeCloseTo((cost / 28) * 100, 0);
  await page.context().close();
}, 60_000);

it("shows the allergens of what goes in, with the caution to check the labels", async () => {
  const { page } = await openOn(PHONE);
  await goTo(page, `${bar.url}/specs/Almond%20Reef`);
  const allergens = await page.locator(".spec-allergens").textContent();
  expect(allergens).toContain("almonds");
  expect(allergens).toContain("Check the labels");
  await page.context().close();
}, 60_000);

it("begins a new drink from its name to its first spec", async () => {
  const { page } = await openOn(LAPTOP);
  await goTo(page, `${bar.url}/specs`);
  await page.getByRole("button", { name: "New drink" }).click();
  await page.getByLabel("Name").fill("Tarred Rope");
  await page.getByLabel("Price, USD").fill("12.50");
  await page.getByRole("button", { name: "Write its spec" }).click();
  await page.locator("h1", { hasText: "Tarred Rope" }).waitFor();
  await page.getByRole("button", { name: "Write its spec" }).click();
  await page
    .getByLabel("One line an ingredient, as on a spec card")
    .fill("2 oz Thornquay Bourbon\n1/4 oz simple syrup");
  await page.getByText("All understood").waitFor();
  await page.getByRole("button", { name: "Save the new version" }).click();
  await page.locator(".spec-lines", { hasText: "Thornquay Bourbon" }).waitFor();
  await page.context().close();
}, 60_000);
