import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { CountRow } from "#engine/stock/movement.ts";
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

async function rowsOf(count: string): Promise<CountRow[]> {
  const answer = await fetch(`${bar.url}/api/counts/rows/${encodeURIComponent(count)}`);
  return (await answer.json()) as CountRow[];
}

async function beginOnPhone(name: string, place = ""): Promise<{ page: Page; faults: string[] }> {
  const opened = await newPage(browser, { viewport: PHONE, hasTouch: true });
  await goTo(opened.page, `${bar.url}/count?count=${encodeURIComponent(name)}${place}`);
  return opened;
}

const itemName = (page: Page) => page.locator(".item-name").textContent();

it("counts with the keyboard alone: a name, an area, figures and Enter", async () => {
  const { page, faults } = await newPage(browser, { viewport: PHONE });
  await goTo(page, `${bar.url}/count`);
  await page.getByLabel("Name of the count").fill("By keyboard");
  await page.keyboard.press("Tab");
  await page.keyboard.type("MK");
  await page.keyboard.press("Enter");
  await page.getByText("0 of 109 counted").waitFor();
  await page.keyboard.press("Enter");
  await page.getByText("Front well, 0 of 13 counted").waitFor();
  const first = await itemName(page);
  await page.keyboard.type("1.7.5");
  await page.keyboard.press("Enter");
  await page.getByText("Front well, 1 of 13 counted").waitFor();
  await expect.poll(() => rowsOf("By keyboard")).toHaveLength(1);
  expect((await rowsOf("By keyboard"))[0]).toMatchObject({
    item: first,
    area: "Front well",
    full: 1,
    parts: [0.7, 0.5],
    by: "MK",
  });
  expect(faults).toEqual([]);
  await page.context().close();
}, 60_000);

it("counts with one thumb: number keys, a stepper and a row of tenths", async () => {
  const { page } = await beginOnPhone("By thumb", "&area=Front+well&item=Quillmere+Vodka");
  await page.getByRole("button", { name: "3", exact: true }).tap();
  await page.getByRole("button", { name: "One more" }).tap();
  await page.getByRole("button", { name: "Open at 6 tenths" }).tap();
  await page.getByRole("button", { name: "another open one" }).tap();
  // Held, a key says half a tenth more.
  await page.getByRole("button", { name: "Open at 2 tenths" }).click({ delay: 600 });
  await page.getByText("one at 2½/10, of 1 L").waitFor();
  await page.getByRole("button", { name: "Next" }).tap();
  await page.getByText("1 of 13 counted").waitFor();
  await expect.poll(() => rowsOf("By thumb")).toHaveLength(1);
  expect((await rowsOf("By thumb"))[0]).toMatchObject({ pack: "1 L", full: 4, parts: [0.6, 0.25] });
  await page.context().close();
}, 60_000);

it("keeps every key of the count at least 24 px wide and the number keys thumb-sized", async () => {
  const { page } = await beginOnPhone("Sizes", "&area=Front+well&item=Quillmere+Vodka");
  // WCAG 2.2, 2.5.8 Target Size (Minimum): 24 by 24 CSS px.
  for (const box of await Promise.all((await page.locator(".level").all()).map((key) => key.boundingBox()))) {
    expect(box?.width).toBeGreaterThanOrEqual(24);
    expect(box?.height).toBeGreaterThanOrEqual(44);
  }
  // WCAG 2.2, 2.5.5 Target Size (Enhanced): 44 by 44 CSS px.
  for (const box of await Promise.all((await page.locator(".key").all()).map((key) => key.boundingBox()))) {
    expect(box?.width).toBeGreaterThanOrEqual(44);
    expect(box?.height).toBeGreaterThanOrEqual(44);
  }
  await page.context().close();
}, 60_000);

it("takes None as nothing there and Skip as not counted, and lists the skipped before the end", async () => {
  const { page } = await beginOnPhone("None and skip", "&area=Front+well&item=Quillmere+Vodka");
  const none = await page.getByRole("button", { name: "None" }).boundingBox();
  if (none === null) throw new Error("The keys are not drawn.");
  // A double tap is one entry: its second tap falls on the next item and is not meant for it.
  await page.touchscreen.tap(none.x + 9, none.y + 9);
  await page.touchscreen.tap(none.x + 9, none.y + 9);
  await page.getByText("1 of 13 counted").waitFor();
  await page.waitForTimeout(400);
  const skipped = await itemName(page);
  await page.getByRole("button", { name: "Skip" }).tap();
  await expect.poll(() => itemName(page)).not.toBe(skipped);
  await expect.poll(() => rowsOf("None and skip")).toHaveLength(1);
  expect((await rowsOf("None and skip"))[0]).toMatchObject({ item: "Quillmere Vodka", full: 0, parts: [] });
  await goTo(page, `${bar.url}/count?count=None+and+skip&step=review`);
  expect(await page.locator("h1").textContent()).toBe("108 not counted");
  const missing = page.locator("section", { hasText: "Front well" }).getByRole("link");
  expect(await missing.allTextContents()).toContain(skipped);
  expect(await missing.allTextContents()).not.toContain("Quillmere Vodka");
  await page.context().close();
}, 60_000);

it("does not take an empty figure for none", async () => {
  const { page } = await beginOnPhone("Empty", "&area=Front+well&item=Quillmere+Vodka");
  await page.getByRole("button", { name: "Next" }).tap();
  await page.getByText("to leave it uncounted, press Skip").waitFor();
  expect(await rowsOf("Empty")).toEqual([]);
  await page.context().close();
}, 60_000);

it("loses nothing in a dead spot: entries wait on the device, outlive a reload, and are sent when there is signal", async () => {
  const { page } = await beginOnPhone("Cellar", "&area=Cellar&item=Quillmere+Vodka");
  await page.route("**/api/counts/entries**", (route) => route.abort());
  for (const figure of ["7", "8"]) {
    const before = await itemName(page);
    await page.keyboard.type(figure);
    await page.keyboard.press("Enter");
    await expect.poll(() => itemName(page)).not.toBe(before);
  }
  await page.getByText("2 waiting to send").waitFor();
  await page.reload();
  await page.getByText("2 waiting to send").waitFor();
  expect(await rowsOf("Cellar")).toEqual([]);
  await page.unroute("**/api/counts/entries**");
  await page.getByText("2 waiting to send").click();
  await page.getByText("2 waiting to send").waitFor({ state: "detached" });
  expect((await rowsOf("Cellar")).map(({ full }) => full).sort()).toEqual([7, 8]);
  await page.context().close();
}, 60_000);

it("goes on counting after a reload in the cellar, and sends all of it above ground", async () => {
  const { page } = await newPage(browser, { viewport: PHONE, serviceWorkers: "allow" });
  await goTo(page, `${bar.url}/count?count=Below&area=Cellar&item=Quillmere+Vodka`);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await page.keyboard.type("5");
  await page.keyboard.press("Enter");
  await page.getByText("Cellar, 1 of 28 counted").waitFor();
  await expect.poll(() => rowsOf("Below")).toHaveLength(1);
  await page.context().setOffline(true);
  await page.reload();
  await page.getByText("Cellar, 1 of 28 counted").waitFor();
  await page.keyboard.type("6");
  await page.keyboard.press("Enter");
  await page.getByText("Cellar, 2 of 28 counted").waitFor();
  await page.getByText("1 waiting to send").waitFor();
  await page.context().setOffline(false);
  await page.getByText("1 waiting to send").waitFor({ state: "detached" });
  await expect.poll(() => rowsOf("Below")).toHaveLength(2);
  await page.context().close();
}, 60_000);

it("hides the expected figure until something is entered, then asks once to look again", async () => {
  const { page } = await beginOnPhone("Look again", "&area=Prep+fridge&item=Lime+Juice");
  expect(await page.locator("main").textContent()).not.toContain("expects");
  await page.keyboard.type("9000");
  await page.keyboard.press("Enter");
  await page.getByText("Please look again").waitFor();
  expect(await itemName(page)).toBe("Lime Juice");
  await page.keyboard.press("Enter");
  await expect.poll(() => itemName(page)).not.toBe("Lime Juice");
  await goTo(page, `${bar.url}/count?count=Look+again&area=Prep+fridge`);
  await page.getByRole("link", { name: /^Lime Juice/ }).click();
  await page.locator(".item-entry").waitFor();
  await page.keyboard.press("Enter");
  await expect.poll(() => page.locator(".item-name").textContent()).not.toBe("Lime Juice");
  await page.context().close();
}, 60_000);

it("keeps each pack of an item as an entry of its own", async () => {
  const { page } = await beginOnPhone("Packs", "&area=Front+well&item=Wickerlamp+Dry+Gin");
  await page.keyboard.type("2");
  await page.getByRole("button", { name: "750 ml" }).tap();
  await page.keyboard.type("1.4");
  await page.getByRole("button", { name: "Next" }).tap();
  await expect.poll(() => rowsOf("Packs")).toHaveLength(2);
  const rows = await rowsOf("Packs");
  expect(rows.find(({ pack }) => pack === "1 L")).toMatchObject({ full: 2, parts: [] });
  expect(rows.find(({ pack }) => pack === "750 ml")).toMatchObject({ full: 1, parts: [0.4] });
  await page.context().close();
}, 60_000);

it("lets a later way of counting replace the earlier, so that nothing counts twice", async () => {
  const { page } = await beginOnPhone("Ways", "&area=Front+well&item=Quillmere+Vodka");
  await page.keyboard.type("2");
  await page.keyboard.press("Enter");
  await page.getByText("1 of 13 counted").waitFor();
  await page.getByRole("link", { name: "Back" }).click();
  await page.getByRole("button", { name: "As an amount" }).click();
  await page.getByRole("button", { name: "ml", exact: true }).click();
  await page.getByLabel("Amount in ml").fill("1500");
  await page.keyboard.press("Enter");
  await expect.poll(() => rowsOf("Ways")).toHaveLength(2);
  const rows = await rowsOf("Ways");
  expect(rows.find(({ pack }) => pack === "1 L")).toMatchObject({ full: 0, parts: [] });
  expect(rows.find(({ pack }) => pack === null)).toMatchObject({ amount: 1500, unit: "ml" });
  await page.context().close();
}, 60_000);

it.each(["light", "dark"] as const)(
  "has no fault of accessibility while counting, in %s",
  async (colorScheme) => {
    const { page } = await newPage(browser, { viewport: PHONE, colorScheme });
    for (const place of ["", "&area=Cellar", "&area=Front+well&item=Wickerlamp+Dry+Gin", "&step=review"]) {
      await goTo(page, `${bar.url}/count?count=Access${place}`);
      expect(await accessibilityFaultsOn(page)).toEqual([]);
    }
    await page.context().close();
  },
  60_000,
);
