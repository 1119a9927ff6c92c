import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { beginWithPin, enrol } from "./people.ts";
import {
  closePages,
  goTo,
  newPage,
  type OpenBar,
  openBar,
  overhang,
  PHONE,
  settled,
  sharedBrowser,
  TABLET,
} from "./support.ts";

// A Friday before a busy weekend, on the bar's own tablet: each step goes on from what the one before left.
const FRIDAY = new Date("2026-11-27T14:00:00Z");

const MARA = { name: "Mara", role: "manager" } as const;
const TOMAS = { name: "Tomas", role: "prep" } as const;

let bar: OpenBar;
let browser: Browser;
let page: Page;
let faults: string[];
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar({ isSignedIn: false }), sharedBrowser()]);
  ({ page, faults } = await newPage(browser, { viewport: TABLET, hasTouch: true }));
  await page.clock.setFixedTime(FRIDAY);
  await page.addInitScript(() => {
    window.print = () => undefined;
  });
}, 180_000);
afterAll(async () => {
  await closePages(browser);
  await bar?.close();
});

it("signs the cook in with a PIN on a tablet of the bar, and shows what is the cook's", async () => {
  await enrol(page, bar, MARA);
  await beginWithPin(page, bar, TOMAS);
  expect(await page.locator(".shell-nav > ul > li > a").allTextContents()).toEqual(["This week", "Prep"]);
  await page.getByRole("region", { name: "Do this next" }).getByRole("link", { name: "Make the prep" }).tap();
}, 90_000);

it("plans a busy day: what to make in which order, what it takes, on one sheet of paper", async () => {
  await settled(page, "Prep, Fri, Nov 27");
  const order = await page.locator(".batch-name").allTextContents();
  // Ginger syrup is made of simple syrup, and what has to stand comes before what is pressed.
  expect(order.indexOf("Simple Syrup")).toBeLessThan(order.indexOf("Ginger Syrup"));
  expect(order.indexOf("House Almond Syrup")).toBeLessThan(order.indexOf("Lime Juice"));
  // By the spec's weights as much water as sugar.
  const [, sugar, water] =
    /White Sugar ([\d.]+).kg.*Water ([\d.]+).l/.exec(await textOf(line("Simple Syrup"))) ?? [];
  expect(Number(sugar)).toBeGreaterThan(0);
  expect(water).toBe(sugar);
  expect(await page.getByText("$").count()).toBe(0);
  await page.emulateMedia({ media: "print" });
  expect(await overhang(page)).toBe(0);
  await page.emulateMedia({ media: null });
  expect((await page.pdf({ format: "A4" })).toString("latin1").match(/\/Type \/Page\b/g)).toHaveLength(1);
}, 90_000);

it("logs a batch that is past its date as a loss, with one key", async () => {
  const old = page
    .getByRole("listitem")
    .filter({ has: page.getByRole("button", { name: "House Almond Syrup: thrown out" }) });
  const [, amount = ""] = /House Almond Syrup (\d+).ml.*use by Thu, Nov.26/.exec(await textOf(old)) ?? [];
  expect(Number(amount)).toBeGreaterThan(0);
  await old.getByRole("button").tap();
  await page.getByText("House Almond Syrup thrown out: recorded as a loss.").waitFor();
  await old.waitFor({ state: "detached" });
  const [loss] = await entries("losses");
  expect(loss).toMatchObject({
    kind: "expired",
    what: "House Almond Syrup",
    unit: "ml",
    by: "Tomas",
    note: "use by 2026-11-26",
  });
  expect(Math.round(loss?.amount ?? 0)).toBe(Number(amount));
}, 90_000);

it("scales a card to the jug at hand, times the work, and records what really came out, with a label that fits", async () => {
  await page.getByRole("link", { name: "Make it: Simple Syrup" }).tap();
  await settled(page, "Simple Syrup");
  await page.getByRole("button", { name: "Another amount" }).tap();
  await page.getByLabel("Make, ml").fill("3252");
  // The spec makes 1626 ml of 1000 g of sugar and 1000 ml of water, which weigh 998 g; this is twice that.
  await expect.poll(() => textOf(input("White Sugar"))).toBe("2000\u00a0g");
  expect(await textOf(input("Water"))).toMatch(/^1996.g \(2000.ml\)$/);

  await page.getByRole("button", { name: "Work, 15 min" }).tap();
  const timer = page.getByRole("timer", { name: "Timer, Simple Syrup" });
  await expect.poll(() => timer.textContent()).toBe("15:00");
  await page.clock.setFixedTime(new Date(FRIDAY.getTime() + 5 * 60_000));
  await expect.poll(() => timer.textContent()).toBe("10:00");

  await page.getByLabel("Really made, ml").fill("3100");
  await page.getByRole("button", { name: "As the card says" }).tap();
  await page.getByRole("button", { name: "Made it" }).tap();
  await page.getByText(/^Recorded: 3100.ml$/).waitFor();
  const [batch] = await entries("batches");
  expect(batch).toMatchObject({ prep: "Simple Syrup", made: 3100, unit: "ml", by: "Tomas" });
  await page.locator(".made-it").getByRole("button", { name: "Print the label" }).tap();
  const label = page.locator(".label");
  await label.waitFor({ state: "attached" });
  await page.emulateMedia({ media: "print" });
  expect(await textOf(label)).toMatch(/^Simple Syrup.*Made Fri.2026-11-27.*Use by Thu.2026-12-17/);
  expect(
    await label.evaluate(
      (paper) => paper.scrollHeight > paper.clientHeight || paper.scrollWidth > paper.clientWidth,
    ),
  ).toBe(false);
  await page.emulateMedia({ media: null });
  await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
  await page.locator(".made-it").getByRole("link", { name: "Back to the list" }).tap();
  await page
    .locator(".made-lines li", { hasText: "Simple Syrup" })
    .getByText(/^3,100.ml$/)
    .waitFor();
  await timer.waitFor();
}, 90_000);

it("finds it on hand, and less of what went in and of what was thrown out or spilled", async () => {
  await goTo(page, `${bar.url}/movements?kind=losses`);
  await page
    .getByRole("row", { name: /^House Almond Syrup.*expired, use by 2026-11-26.*Fri, Nov.27/ })
    .waitFor();
  await page.getByRole("button", { name: "Enter a loss" }).tap();
  await page.getByRole("combobox", { name: "Item or drink" }).tap();
  await page.keyboard.type("Simple Sy");
  await page.getByRole("option", { name: /^Simple Syrup/ }).waitFor();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await page.getByLabel("Amount").fill("500");
  await page.getByLabel("Unit").selectOption("ml");
  await page.getByRole("button", { name: "Enter it" }).tap();
  await page.getByRole("row", { name: /^Simple Syrup.*500.ml.*spill/ }).waitFor();
  await goTo(page, `${bar.url}/stock`);
  // Counted on Monday: 1820 ml of syrup and 13 kg of sugar. 1820 + 3100 − 500 = 4420 ml.
  expect(await onHand("Simple Syrup")).toMatch(/149\.5.oz on hand/);
  expect(await onHand("White Sugar")).toMatch(/11,000.g/);
  expect(await page.getByRole("columnheader", { name: "Value" }).count()).toBe(0);
}, 90_000);

it("says kindly on a phone which screens are not the cook's", async () => {
  await page.setViewportSize(PHONE);
  for (const path of ["count", "variance", "order", "history"]) {
    await page.goto(`${bar.url}/${path}`);
    await settled(page, "Not part of your role");
    await page.getByText("If you need something from it, ask the owner or a manager").waitFor();
    expect(await overhang(page)).toBe(0);
  }
  await page.getByRole("link", { name: "Go to this week" }).click();
  await settled(page, "This week");
  // Neither has the screen that was left asked for what the cook may not see.
  expect(faults).toEqual([]);
}, 90_000);

const line = (prep: string) =>
  page.locator(".batch-line", { has: page.getByText(prep, { exact: true }) }).first();
const input = (item: string) => page.locator(".card-inputs li", { hasText: item }).locator("strong");

async function textOf(place: Locator): Promise<string> {
  return (await place.textContent()) ?? "";
}

/** What the stock has of an item, in its unit. */
async function onHand(item: string): Promise<string> {
  return textOf(page.getByRole("row", { name: new RegExp(`^${item}`) }));
}

type Entry = { what?: string; kind?: string; prep?: string; made?: number; amount?: number; by: string };

/** What was entered, newest first. */
async function entries(kind: "losses" | "batches"): Promise<Entry[]> {
  const answer = await page.request.get(`${bar.url}/api/entries/${kind}`);
  return ((await answer.json()) as { fact: Entry }[]).map(({ fact }) => fact);
}
