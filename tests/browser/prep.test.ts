import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { seriousFaultsOn } from "./serious-faults.ts";
import { goTo, launchBrowser, newPage, type OpenBar, openBar } from "./support.ts";

const BENCH = { width: 820, height: 1180 };
const DAY = "2026-11-23";

let bar: OpenBar;
let browser: Browser;
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar(), launchBrowser()]);
}, 180_000);
afterAll(async () => {
  await browser?.close();
  await bar?.close();
});

type Entry = { fact: { prep?: string; what?: string; made?: number; kind?: string; at: string } };

async function entries(kind: "losses" | "batches"): Promise<Entry[]> {
  return (await (await fetch(`${bar.url}/api/entries/${kind}`)).json()) as Entry[];
}

async function openPlan(): Promise<Page> {
  const { page } = await newPage(browser, { viewport: BENCH, hasTouch: true });
  await goTo(page, `${bar.url}/prep?date=${DAY}`);
  return page;
}

it("lists the day's batches in working order, with what each takes", async () => {
  const page = await openPlan();
  const names = await page.locator(".batch-name").allTextContents();
  // Ginger syrup is made of simple syrup, so simple syrup comes first.
  expect(names.indexOf("Simple Syrup")).toBeGreaterThanOrEqual(0);
  expect(names.indexOf("Simple Syrup")).toBeLessThan(names.indexOf("Ginger Syrup"));
  const simple = page.locator(".batch-line", { hasText: "Simple Syrup" }).first();
  expect(await simple.textContent()).toMatch(/White Sugar [\d.]+ kg/);
  expect(await seriousFaultsOn(page)).toEqual([]);
  await page.context().close();
}, 60_000);

it("records with one key that a prep past its date was thrown out, and takes it back", async () => {
  const page = await openPlan();
  const before = (await entries("losses")).length;
  await page.getByRole("button", { name: "Ginger Syrup: thrown out" }).tap();
  await page.getByText("recorded as a loss").waitFor();
  const after = await entries("losses");
  expect(after).toHaveLength(before + 1);
  expect(after.map(({ fact }) => fact)).toContainEqual(
    expect.objectContaining({ kind: "expired", what: "Ginger Syrup", unit: "ml" }),
  );
  await page.getByRole("button", { name: "Undo" }).tap();
  await page.getByText("counts as there again").waitFor();
  expect(await entries("losses")).toHaveLength(before);
  await page.context().close();
}, 60_000);

it("scales a batch card to the amount wanted and records what was really made", async () => {
  const { page, faults } = await newPage(browser, { viewport: BENCH });
  await goTo(page, `${bar.url}/prep/Simple%20Syrup?date=${DAY}`);
  const sugar = page.locator(".card-inputs li", { hasText: "White Sugar" }).locator("strong");
  await page.getByLabel(/Amount wanted/).fill("3252");
  // The sample's spec: 1000 g sugar and 1000 ml water make 1626 ml, 50 °Brix by weight; twice that here.
  await expect.poll(() => sugar.textContent()).toBe("2000 g");
  expect(await page.locator(".card-targets").textContent()).toContain("50.0 °Brix");
  expect(await page.locator(".card-allergens").textContent()).toContain("local food code");
  expect(await seriousFaultsOn(page)).toEqual([]);
  const before = (await entries("batches")).length;
  await page.getByLabel(/Really made/).fill("3100");
  await page.getByRole("button", { name: "Made it" }).click();
  await page.getByText("Recorded: 3100 ml").waitFor();
  expect((await entries("batches")).map(({ fact }) => fact)).toContainEqual(
    expect.objectContaining({ prep: "Simple Syrup", made: 3100 }),
  );
  await page.getByRole("button", { name: "Take it back" }).click();
  await page.getByRole("button", { name: "Made it" }).waitFor();
  expect(await entries("batches")).toHaveLength(before);
  expect(faults).toEqual([]);
  await page.context().close();
}, 60_000);

it("counts down on a timer and says when time is up", async () => {
  const { page } = await newPage(browser, { viewport: BENCH });
  await page.clock.install();
  await goTo(page, `${bar.url}/prep/Simple%20Syrup?date=${DAY}`);
  await page.getByRole("button", { name: "1 min", exact: true }).click();
  await page.clock.runFor(30_000);
  expect(await page.getByRole("timer").textContent()).toBe("00:30");
  await page.clock.runFor(31_000);
  await page.getByText("Time is up").waitFor();
  await page.context().close();
}, 60_000);

it("prints a label for each batch: made, use by, allergens, room for initials", async () => {
  const page = await openPlan();
  await page.evaluate(() => {
    window.print = () => undefined;
  });
  const batches = await page.locator(".batch-name").count();
  await page.getByRole("button", { name: "Print labels" }).click();
  await expect.poll(() => page.locator(".label").count()).toBe(batches);
  const label = await page.locator(".label", { hasText: "House Almond Syrup" }).textContent();
  for (const part of ["Made Mon 2026-11-23", "Use by", "almonds", "Initials"]) expect(label).toContain(part);
  await page.emulateMedia({ media: "print" });
  expect(await page.locator("#root").isVisible()).toBe(false);
  expect(await page.locator(".label").first().isVisible()).toBe(true);
  await page.context().close();
}, 60_000);

it("says what to stir into a syrup that measured off target, and prints labels of the size this device keeps", async () => {
  const { page } = await newPage(browser, { viewport: BENCH });
  await goTo(page, `${bar.url}/prep/Simple%20Syrup?date=${DAY}&make=1626`);
  // 1998 g at 48 °Bx hold 959 g of sugar; x more make half of all: x = 1998 × 2 ÷ 50 = 80 g.
  await page.getByLabel("I measured, °Brix").fill("48");
  expect(await page.locator(".correction-answer").textContent()).toMatch(/^Stir in 8[0-3] g of sugar/);
  await goTo(page, `${bar.url}/prep?date=${DAY}`);
  await page.getByText("Labels: size and date line").click();
  await page.getByLabel("Printed on").selectOption("roll-62");
  await page.getByLabel("Line on how days are counted").fill("The day after making is day 1");
  await page.evaluate(() => {
    window.print = () => undefined;
  });
  await page.getByRole("button", { name: "Print labels" }).click();
  await page.locator(".labels-roll-62 .label").first().waitFor({ state: "attached" });
  expect(await page.locator(".label").first().textContent()).toContain("The day after making is day 1");
  await page.context().close();
}, 60_000);

it("writes a new syrup from a ratio in one form and weighs making it against buying it", async () => {
  const { page, faults } = await newPage(browser, { viewport: BENCH });
  await goTo(page, `${bar.url}/specs`);
  await page.getByRole("button", { name: "New syrup" }).click();
  await page.getByLabel("Name of the syrup").fill("Bench Rich Syrup");
  await page.getByLabel("Sweetener : water").fill("2:1");
  await page.getByLabel("Keeps, days").fill("21");
  expect(await page.locator(".new-spec").textContent()).toContain("66.7 °Brix");
  expect(await page.locator(".syrup-caution").textContent()).toContain("crystallise");
  expect(await seriousFaultsOn(page)).toEqual([]);
  await page.getByRole("button", { name: "Save the syrup" }).click();
  await page.getByRole("heading", { name: "Bench Rich Syrup" }).waitFor();
  await page.getByLabel(/An hour of work/).fill("16");
  await page.getByLabel(/Bought,/).fill("1");
  await page.getByText(/Buying saves/).waitFor();
  expect(faults).toEqual([]);
  await page.context().close();
}, 60_000);
