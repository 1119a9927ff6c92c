import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { CountRow } from "#engine/stock/movement.ts";
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

async function rowsOf(count: string): Promise<CountRow[]> {
  const answer = await fetch(`${bar.url}/api/counts/rows/${encodeURIComponent(count)}`);
  return (await answer.json()) as CountRow[];
}

type Shelf = { area: string; item: string; shelf: number };

async function shelfOf(area: string): Promise<string[]> {
  const { areas } = (await (await fetch(`${bar.url}/api/catalogue`)).json()) as { areas: Shelf[] };
  const own = areas.filter((shelf) => shelf.area === area);
  return own.sort((a, b) => a.shelf - b.shelf).map(({ item }) => item);
}

async function open(place: string, viewport = PHONE): Promise<Page> {
  const { page } = await newPage(browser, { viewport });
  await goTo(page, `${bar.url}/count?${place}`);
  return page;
}

it("makes a short list of the items a cause asks to count again", async () => {
  const page = await open("items=Quillmere+Vodka%2CLime+Juice");
  await page.getByText("A short count of Quillmere Vodka and Lime Juice").waitFor();
  await page.getByLabel("Name of the count").fill("Again");
  await page.getByRole("button", { name: "Begin counting" }).click();
  await page.getByText("A short count of chosen items").waitFor();
  await page.locator(".count-areas a").first().click();
  await page.locator(".item-name").waitFor();
  expect(["Quillmere Vodka", "Lime Juice"]).toContain(await page.locator(".item-name").textContent());
  await goTo(page, `${bar.url}/count?count=Again`);
  await page.getByRole("button", { name: "Count everything" }).click();
  await page.getByText("0 of 109 counted").waitFor();
  await page.context().close();
}, 60_000);

it("takes a sheet from paper with figures and Enter alone", async () => {
  const page = await open("count=Paper&step=paper", LAPTOP);
  await page.locator("input.paper-figure").first().waitFor();
  await page.keyboard.type("3.7.5");
  await page.keyboard.press("Enter");
  await page.keyboard.type("0");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Enter");
  await page.keyboard.type("2");
  await page.keyboard.press("Tab");
  await expect.poll(() => rowsOf("Paper")).toHaveLength(3);
  const rows = await rowsOf("Paper");
  expect(rows).toContainEqual(expect.objectContaining({ full: 3, parts: [0.7, 0.5] }));
  expect(rows).toContainEqual(expect.objectContaining({ full: 0, parts: [] }));
  await page.keyboard.type("2.55");
  await page.keyboard.press("Enter");
  await page.getByText("more than one figure after a point").waitFor();
  expect(await rowsOf("Paper")).toHaveLength(3);
  expect(await accessibilityFaultsOn(page)).toEqual([]);
  await page.context().close();
}, 60_000);

it("prints a sheet in shelf order without the expected figures", async () => {
  const page = await open("count=Print&step=sheet", LAPTOP);
  const first = page.locator("table.paper-sheet").first();
  await first.waitFor();
  const names = await first.locator("tbody th").allTextContents();
  expect([...new Set(names)]).toEqual(await shelfOf((await first.locator("caption").textContent()) ?? ""));
  for (const format of ["A4", "Letter"]) {
    const pdf = await page.pdf({ format });
    const pages = pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    expect(pages).toBeGreaterThanOrEqual(3);
    expect(pages).toBeLessThanOrEqual(8);
  }
  await page.context().close();
}, 60_000);

it("changes the shelf order by keyboard and by dragging, and the count walks that way", async () => {
  const before = await shelfOf("Front well");
  const page = await open("count=Order&area=Front+well&step=order");
  await page.getByRole("button", { name: new RegExp(`^Move ${before[0]};`) }).focus();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  await page.getByText(`${before[0]} is now 3 of 13.`).waitFor({ state: "attached" });
  const dragged = page.getByRole("button", { name: new RegExp(`^Move ${before[4]};`) });
  const from = await dragged.boundingBox();
  const to = await page.locator(".shelf-order li").first().boundingBox();
  if (from === null || to === null) throw new Error("The handles are not drawn.");
  await page.mouse.move(from.x + 10, from.y + 10);
  await page.mouse.down();
  await page.mouse.move(from.x + 10, to.y + to.height + 10, { steps: 8 });
  await page.mouse.move(from.x + 10, to.y + 10, { steps: 4 });
  await page.mouse.up();
  await page.getByRole("button", { name: "Save this order" }).click();
  await page.locator(".count-items").waitFor();
  const after = await shelfOf("Front well");
  expect(after).toEqual([before[4], before[1], before[2], before[0], before[3], ...before.slice(5)]);
  expect(await page.locator(".count-items li span:first-child").allTextContents()).toEqual(after);
  await page.context().close();
}, 60_000);

it("puts something found on a shelf there, known to the book or new, and counts it", async () => {
  const page = await open("count=Found&area=Front+well&step=found");
  await page.getByLabel("What it is").fill("Seacliff Aquavit");
  await page.getByLabel("Category").fill("spirit");
  await page.getByLabel("One holds, in ml").fill("700");
  await page.getByRole("button", { name: "Count it" }).click();
  await page.locator(".item-name", { hasText: "Seacliff Aquavit" }).waitFor();
  await page.keyboard.type("1.5");
  await page.keyboard.press("Enter");
  await expect.poll(() => rowsOf("Found")).toHaveLength(1);
  expect((await rowsOf("Found"))[0]).toMatchObject({ item: "Seacliff Aquavit", pack: "700 ml", full: 1 });
  expect((await shelfOf("Front well")).at(-1)).toBe("Seacliff Aquavit");
  await goTo(page, `${bar.url}/count?count=Found&area=Front+well&step=found`);
  await page.getByLabel("What it is").fill("lime juice");
  await page.getByRole("button", { name: "Count it" }).click();
  await page.locator(".item-name", { hasText: "Lime Juice" }).waitFor();
  expect((await shelfOf("Front well")).at(-1)).toBe("Lime Juice");
  await page.context().close();
}, 60_000);

it("finds by part of a name in any area, and says when a barcode was mistyped", async () => {
  const page = await open("count=Find&area=Front+well");
  await page.getByLabel("Find").fill("lime jui");
  await page.getByRole("link", { name: /Lime Juice, Prep fridge/ }).waitFor();
  await page.getByLabel("Find").fill("6291041500214");
  await page.getByText("The check digit does not fit").waitFor();
  await page.context().close();
}, 60_000);

it.each(["light", "dark"] as const)(
  "has no fault of accessibility around the count, in %s",
  async (colorScheme) => {
    const { page } = await newPage(browser, { viewport: PHONE, colorScheme });
    for (const step of ["sheet", "paper", "found", "order"]) {
      await goTo(page, `${bar.url}/count?count=Around&area=Cellar&step=${step}`);
      expect(await accessibilityFaultsOn(page)).toEqual([]);
      expect(
        await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        ),
      ).toBe(0);
    }
    await page.context().close();
  },
  60_000,
);
