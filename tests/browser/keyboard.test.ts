import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import {
  closePages,
  goTo,
  LAPTOP,
  newPage,
  type OpenBar,
  openBar,
  settled,
  sharedBrowser,
} from "./support.ts";

/** A day of the sample bar that has much to make. */
const FRIDAY = "2026-11-27";

let bar: OpenBar;
let browser: Browser;
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar(), sharedBrowser()]);
}, 180_000);
afterAll(async () => {
  await closePages(browser);
  await bar?.close();
});

it("lets someone without a mouse skip the navigation, as the first thing on every screen", async () => {
  const { page } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/variance`);
  await page.keyboard.press("Tab");
  expect(await focusedText(page)).toBe("Skip to the page");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Tab");
  expect(await page.evaluate(() => document.querySelector("main")?.contains(document.activeElement))).toBe(
    true,
  );
  await page.context().close();
});

it("moves the focus to the heading of a screen chosen from the keyboard, and shows where it is", async () => {
  const { page } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, bar.url);
  await tabTo(page, "Stock");
  expect(await outlineWidth(page)).toBeGreaterThanOrEqual(2);
  await page.keyboard.press("Enter");
  await settled(page, "Stock");
  await page.waitForFunction(() => document.activeElement?.matches("h1") === true);
  expect(await focusedText(page)).toBe("Stock");
  await page.context().close();
});

it("walks from the largest doubt to its ledger and back with keys alone", async () => {
  const { page } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/variance`);
  const item = (await page.locator("tbody th a").first().textContent()) ?? "";
  await tabTo(page, item);
  await page.keyboard.press("Enter");
  await settled(page, item);
  expect(await page.locator(".ledger").textContent()).toContain("Unexplained");
  await tabTo(page, "All items");
  await page.keyboard.press("Enter");
  await settled(page, "Variance");
  await page.context().close();
});

it("sorts a table from its head with the keyboard and says which way it is sorted", async () => {
  const { page } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/stock`);
  await tabTo(page, "Value");
  await page.keyboard.press("Enter");
  const head = page.locator("th", { hasText: "Value" }).first();
  expect(await head.getAttribute("aria-sort")).toBe("descending");
  await page.keyboard.press("Space");
  expect(await head.getAttribute("aria-sort")).toBe("ascending");
  await page.context().close();
});

it("changes a unit and a threshold by keys, keeps what is typed over a fault, and shows what another saved meanwhile", async () => {
  expect(bar.ullage("variance", "--json")).toContain('"chase"');
  const { page } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/me`);
  await tabTo(page, "House settings");
  await page.keyboard.press("Enter");
  await settled(page, "House settings");
  await tabToField(page, "Amounts are shown in");
  await page.keyboard.type("ml");
  await tabToField(page, "Chase nothing below, USD");
  await page.keyboard.type("none");
  await page.keyboard.press("Enter");
  await page.getByText("This is no number").waitFor();
  await page.keyboard.press("Control+a");
  await page.keyboard.type("99999");
  await page.reload();
  await settled(page, "House settings");
  await tabToField(page, "Chase nothing below, USD");
  const settingsRoute = "**/api/venue/settings";
  await page.route(settingsRoute, (route) => route.fulfill({ status: 500, json: {} }));
  await page.keyboard.press("Enter");
  await page.getByRole("alert").waitFor();
  await page.unroute(settingsRoute);
  const read = await page.request.get(`${bar.url}/api/venue`);
  const was = await read.json();
  const now = { ...was, name: "The Tin Gull", show: "cl" };
  await page.request.post(`${bar.url}/api/venue/settings`, {
    data: { was, now },
    headers: { origin: bar.url },
  });
  await tabTo(page, "Save settings");
  await page.keyboard.press("Enter");
  await page.getByText("Somebody else set this to cl meanwhile.").waitFor();
  expect(await page.getByLabel("Name of the bar").inputValue()).toBe("The Tin Gull");
  expect(await page.getByLabel("Chase nothing below, USD").inputValue()).toBe("99999");
  await tabTo(page, "Save settings");
  await page.keyboard.press("Enter");
  await page.getByText("Saved. Amounts are shown in: cl → ml; Chase nothing below").waitFor();
  await goTo(page, `${bar.url}/variance`);
  expect(await page.locator("tbody .verdict-chase").count()).toBe(0);
  expect(await page.locator("tbody .verdict-watch").count()).toBeGreaterThan(0);
  await goTo(page, `${bar.url}/stock`);
  expect(await page.locator("tbody").textContent()).toMatch(/\d\sml/);
  await page.context().close();
}, 60_000);

it("changes a quantity and places an order with keys alone", async () => {
  const { page, faults } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/order`);
  const section = page.locator("section", { has: page.getByRole("button", { name: /Place order/ }) }).first();
  const supplier = (await section.getByRole("heading").first().textContent()) ?? "";
  const quantity = section.locator("tbody input").first();
  const suggested = Number(await quantity.inputValue());
  await tabOnto(page, quantity);
  await page.keyboard.press("Control+a");
  await page.keyboard.type(String(suggested + 2));
  expect(await section.textContent()).toContain(`suggested ${suggested}`);
  await tabOnto(page, section.getByRole("button", { name: /Place order/ }));
  await page.keyboard.press("Enter");
  const dialog = page.getByRole("dialog");
  await dialog.waitFor();
  await tabOnto(page, dialog.getByRole("button", { name: "Place order" }));
  await page.keyboard.press("Enter");
  await page
    .getByRole("status")
    .filter({ hasText: `Order to ${supplier} recorded` })
    .waitFor();
  await page.locator("section", { hasText: "On the way" }).locator("tbody tr").first().waitFor();
  await page.waitForFunction(() => document.activeElement !== document.body);
  expect(faults).toEqual([]);
  await page.context().close();
}, 60_000);

it("makes the first batch of the day and goes back to what is left with keys alone", async () => {
  const { page, faults } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/prep?date=${FRIDAY}`);
  const keys = page.getByRole("link", { name: /^Make it: / });
  const listed = await keys.count();
  const prep = (await keys.first().getAttribute("aria-label"))?.replace(/^Make it: /, "") ?? "";
  await tabOnto(page, keys.first());
  await page.keyboard.press("Enter");
  await settled(page, prep);
  await tabOnto(page, page.getByLabel("Made by"));
  await page.keyboard.type("Ines");
  await tabOnto(page, page.getByRole("button", { name: "Made it" }));
  await page.keyboard.press("Enter");
  await page.getByText(/^Recorded: /).waitFor();
  await tabOnto(page, page.locator(".made-it").getByRole("link", { name: "Back to the list" }));
  await page.keyboard.press("Enter");
  await settled(page, "Prep");
  expect(await keys.count()).toBe(listed - 1);
  expect(await page.getByRole("link", { name: `Make it: ${prep}` }).count()).toBe(0);
  expect(faults).toEqual([]);
  await page.context().close();
}, 60_000);

/** Presses Tab until the field of that label has the focus. */
function tabToField(page: Page, label: string): Promise<void> {
  return tabOnto(page, page.getByLabel(label));
}

/** Presses Tab until it has the focus. */
async function tabOnto(page: Page, place: Locator): Promise<void> {
  for (let press = 0; press < 200; press += 1) {
    if (await place.evaluate((it) => it === document.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`No press of Tab reached ${place}.`);
}

/** Presses Tab until the control of that name has the focus, as a person would. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let press = 0; press < 200; press += 1) {
    if ((await focusedText(page)) === name) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`No press of Tab reached "${name}".`);
}

function focusedText(page: Page): Promise<string> {
  return page.evaluate(() => document.activeElement?.textContent?.trim() ?? "");
}

function outlineWidth(page: Page): Promise<number> {
  return page.evaluate(() =>
    Number.parseFloat(getComputedStyle(document.activeElement ?? document.body).outlineWidth),
  );
}
