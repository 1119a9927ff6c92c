import { readFileSync } from "node:fs";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
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

it.each(["A4", "Letter"])(
  "prints the owner's report on one page of %s",
  async (format) => {
    const { page } = await newPage(browser, { viewport: LAPTOP });
    for (const search of ["", "?count=2026-09-28"]) {
      await goTo(page, `${bar.url}/report${search}`);
      await page.getByRole("heading", { name: "Where it is" }).waitFor();
      const pdf = await page.pdf({ format, preferCSSPageSize: false });
      expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
    }
    await page.context().close();
  },
  90_000,
);

it("says on the owner's report that a variance is no accusation, and gives it as a file", async () => {
  const { page } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/report`);
  await page.getByText("A variance is no accusation").waitFor();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "CSV" }).click(),
  ]);
  const text = readFileSync(await download.path(), "utf8");
  expect(text).toContain("Cost by the specs");
  expect(text).toContain("no accusation");
  expect(text).toContain("A delivery of Orrindel Orange Liqueur was not entered: 2 containers.");
  await page.context().close();
}, 60_000);

it("settles a cause from the screen: the book is corrected, the cause is gone, and it can be taken back", async () => {
  const { page } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/variance`);
  const sentence = page.getByText("A delivery of Orrindel Orange Liqueur was not entered");
  await sentence.first().waitFor();
  await page.getByRole("button", { name: "This was it: Orrindel Orange Liqueur" }).first().click();
  await page.getByRole("heading", { name: "Settled" }).waitFor();
  const open = page.locator(".causes").getByText("A delivery of Orrindel Orange Liqueur was not entered");
  await expect.poll(() => open.count(), { timeout: 20_000 }).toBe(0);
  await page.getByRole("button", { name: "Take back: Orrindel Orange Liqueur" }).click();
  await expect.poll(() => open.count(), { timeout: 20_000 }).toBe(1);
  await page.context().close();
}, 90_000);
