import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
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
  [bar, browser] = await Promise.all([openBar(), sharedBrowser()]);
}, 180_000);
afterAll(async () => {
  await closePages(browser);
  await bar?.close();
});

/** Words that no German sentence has; of names only the bar's own has one of them. */
const ENGLISH = /\b(the(?! Harbour Lantern)|and|is|are|not|with|from|until|what|nothing|by)\b/i;

/** Words that the book has for units, parts, allergens and categories, which a German screen says in German. */
const CODES =
  /\b(each|serves?|dash|barspoon|skin|flesh|shaken|stirred|built|cubed|egg|almonds|barley|sulphites|spirit|produce|syrup)\b/;

/** As a day stands in a sheet; a count may be called so, and a file. */
const SHEET_DAY = /(?<!Zählung(?:en)? (?:\S+ und )?|orders-|register-|journal-|^)\b\d{4}-\d\d-\d\d\b/;

it("speaks the language chosen on the device, what the server says included, and takes the device's at first", async () => {
  const { page } = await newPage(browser, { viewport: PHONE, locale: "en-GB" });
  await goTo(page, `${bar.url}/`);
  await page.getByRole("button", { name: "More" }).click();
  await page.getByRole("button", { name: "Deutsch" }).click();
  await page.getByRole("heading", { name: "Diese Woche" }).waitFor();
  expect(await page.locator("html").getAttribute("lang")).toBe("de");
  await page.evaluate(() =>
    fetch("/api/losses", {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({
        at: "2026-11-24T12:00:00Z",
        kind: "waste",
        what: "Lime",
        amount: 2,
        unit: "each",
        by: "Ines",
        note: "",
      }),
    }),
  );
  for (const [path, heading] of [
    ["/", "Diese Woche"],
    ["/variance", "Abweichung"],
    ["/order", "Bestellen"],
    ["/stock", "Bestand"],
    ["/forecast", "Prognose"],
    ["/prep", "Vorbereitung"],
    ["/specs/Harbour%20Sour", "Harbour Sour"],
    ["/specs/Lime%20Juice", "Lime Juice"],
    ["/history", "Verlauf"],
  ] as const) {
    await goTo(page, bar.url + path);
    await settled(page);
    expect(await page.getByRole("heading", { level: 1 }).textContent()).toContain(heading);
    // biome-ignore lint/performance/useDomNodeTextContent: the lines as they are read, without what is hidden
    const lines = (await page.locator("main").innerText()).split("\n");
    expect(
      lines.filter((line) => [ENGLISH, CODES, SHEET_DAY].some((pattern) => pattern.test(line))),
      path,
    ).toEqual([]);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wide, path).toBeLessThanOrEqual(0);
  }
  await page.getByText("Abfall, 2 Lime, am 24.11.2026").first().waitFor();

  await goTo(page, `${bar.url}/specs/Harbour%20Sour`);
  await page.getByText("Ei.", { exact: true }).waitFor();
  await page.getByRole("button", { name: "Neue Fassung schreiben" }).click();
  await page.getByText("Alles verstanden.").waitFor();
  expect(await page.getByLabel("Eine Zeile je Zutat").inputValue()).toContain(
    "0,75 oz Lemon Juice\n0,75 oz Simple Syrup\n0,75 oz Egg White\n2 Spritzer Tarwick Aromatic Bitters",
  );
  await page.getByRole("button", { name: "Mehr" }).click();
  await page.getByRole("button", { name: "English" }).click();
  await page.locator("html[lang=en]").waitFor();
  await page.context().close();

  const german = await newPage(browser, { viewport: PHONE, locale: "de-AT" });
  await goTo(german.page, `${bar.url}/count`);
  expect(await german.page.locator("html").getAttribute("lang")).toBe("de");
  await german.page.context().close();
}, 150_000);
