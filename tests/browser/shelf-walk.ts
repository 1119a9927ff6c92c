import { readFileSync } from "node:fs";
import Papa from "papaparse";
import type { Page } from "playwright-core";
import { expect } from "vitest";

/** What stands somewhere, as a person enters it: figures with open ones in tenths, grams on the scale, none, or left out. */
export type Found = { typed: string } | { grams: string } | "none" | "skip";

type CountSheetRow = Record<"count" | "area" | "item" | "full" | "part" | "gross_g" | "amount", string>;

/** What a count of the sample bar found in an area, by item: the same figures, to be entered again. */
export function foundBefore(count: string, area: string): Map<string, Found> {
  const sheet = readFileSync(new URL("../../sample-sales/counts.csv", import.meta.url), "utf8");
  const { data } = Papa.parse<CountSheetRow>(sheet, { header: true, skipEmptyLines: true });
  const rows = data.filter((row) => row.count === count && row.area === area);
  return new Map(rows.map((row) => [row.item, foundIn(row)]));
}

function foundIn({ full, part, gross_g, amount }: CountSheetRow): Found {
  if (gross_g !== "") return { grams: gross_g.replaceAll(";", "+") };
  if (amount !== "") return { typed: amount };
  const tenths = part
    .split(";")
    .filter(Boolean)
    .map((share) => Math.round(Number(share) * 10));
  return { typed: [full, ...tenths].join(".") };
}

/** Enters what stands there for the item that is shown, and goes on to the next, looking again where the count asks for it. */
export async function enter(page: Page, found: Found): Promise<void> {
  const itemNow = async () => (await page.locator(".item-name").allTextContents()).join();
  const before = await itemNow();
  // By key, as a tap so soon after the last entry is taken for its second half.
  if (found === "none") await page.getByRole("button", { name: "None" }).press("Enter");
  else if (found === "skip") await page.getByRole("button", { name: "Skip" }).press("Enter");
  else if ("grams" in found) await weigh(page, found.grams);
  else {
    await page.keyboard.type(found.typed);
    await page.keyboard.press("Enter");
  }
  const again = page.getByText("Please look again");
  await expect.poll(async () => (await again.isVisible()) || (await itemNow()) !== before).toBe(true);
  if (!(await again.isVisible())) return;
  await page.keyboard.press("Enter");
  await expect.poll(itemNow).not.toBe(before);
}

async function weigh(page: Page, grams: string): Promise<void> {
  await page.getByRole("button", { name: "On the scale" }).click();
  await page.keyboard.type("0");
  await page.getByLabel("Open ones on the scale").fill(grams);
  await page.keyboard.press("Enter");
}

/** Enters what stands there for item after item of an area, from the one shown to the end of the shelf, or only so many. */
export async function walk(page: Page, found: ReadonlyMap<string, Found>, most = Number.POSITIVE_INFINITY) {
  for (let entered = 0; entered < most; entered += 1) {
    const [item] = await page.locator(".item-name").allTextContents();
    if (item === undefined) return;
    const there = found.get(item);
    if (there === undefined) throw new Error(`Nothing was said about ${item}.`);
    await enter(page, there);
  }
}
