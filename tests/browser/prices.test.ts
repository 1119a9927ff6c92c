import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { accessibilityFaultsOn } from "./accessibility-faults.ts";
import { closePages, goTo, newPage, type OpenBar, openBar, PHONE, sharedBrowser } from "./support.ts";

let bar: OpenBar;
let browser: Browser;
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar(), sharedBrowser()]);
}, 180_000);
afterAll(async () => {
  await closePages(browser);
  await bar?.close();
});

const LIST = `Longmole Spirits, from November
Art. No;Product;Size;Price;Alc
SPIRITS;;;;
LM-101;Quillmere Vodka;12 x 1 L;225,60 €;40 %
;Saltmarsh Rum;6 x 0,7 L;99,60 €;40
;No size;about a litre;12,00;
`;

it("takes a supplier's list over on a phone: asks what a price pays for, shows what changes, writes it at once", async () => {
  const { page, faults } = await newPage(browser, { viewport: PHONE });
  await goTo(page, `${bar.url}/prices`);
  await page.getByLabel("Supplier").fill("Longmole Spirits");
  const file = { name: "list.csv", mimeType: "text/csv", buffer: Buffer.from(LIST) };
  await page.getByLabel("The list").setInputFiles(file);
  await page.getByRole("button", { name: "For a case" }).click();
  // 225.60 for twelve of 1 L: 18.80 each, where the sample bar paid 17.50.
  await page.getByText("$17.50 → $18.80").waitFor();
  expect(await page.getByLabel("Category of Saltmarsh Rum").inputValue()).toBe("spirit");
  await page.getByText("1 line could not be read").click();
  await page.getByText("Row 6: “No size” has no size that can be read").waitFor();
  expect(await accessibilityFaultsOn(page)).toEqual([]);
  await page.getByRole("button", { name: "Take over 2 lines" }).click();
  await page.getByText("2 prices of Longmole Spirits taken over.").waitFor();
  const { packs, items } = (await (await fetch(`${bar.url}/api/catalogue`)).json()) as {
    items: { name: string; abv: number }[];
    packs: { item: string; price: number; pricePer: string; perCase: number }[];
  };
  expect(items).toContainEqual(
    expect.objectContaining({ name: "Saltmarsh Rum", category: "spirit", abv: 40 }),
  );
  expect(packs).toContainEqual(
    expect.objectContaining({ item: "Saltmarsh Rum", price: 99.6, pricePer: "case", perCase: 6 }),
  );
  expect(faults).toEqual([]);
  await page.context().close();
}, 60_000);
