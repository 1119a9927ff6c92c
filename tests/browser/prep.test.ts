import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { accessibilityFaultsOn } from "./accessibility-faults.ts";
import { closePages, goTo, newPage, type OpenBar, openBar, settled, sharedBrowser } from "./support.ts";

const BENCH = { width: 820, height: 1180 };
const DAY = "2026-11-23";

let bar: OpenBar;
let browser: Browser;
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar(), sharedBrowser()]);
}, 180_000);
afterAll(async () => {
  await closePages(browser);
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
  expect(await simple.textContent()).toMatch(/White Sugar [\d.]+\skg/);
  expect(await accessibilityFaultsOn(page)).toEqual([]);
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

const FRIDAY = "2026-11-27";
const MADE_IN_WALK = 3;

/** Keys that a wet thumb would miss: what is pressed on a bench screen is at least 44 px high (WCAG 2.5.5). */
async function smallKeysOn(page: Page): Promise<string[]> {
  return page
    .locator("main :is(button, a.button, input:not([type=checkbox]), select):visible")
    .evaluateAll((keys) =>
      keys
        .filter((key) => key.getBoundingClientRect().height < 43.5)
        .map((key) => key.outerHTML.slice(0, 120)),
    );
}

it("leads a cook through Friday's list on a tablet: throw out, make, record, label, and back to what is left", async () => {
  const { page, faults } = await newPage(browser, { viewport: BENCH, hasTouch: true });
  await page.addInitScript(() => {
    window.print = () => setTimeout(() => window.dispatchEvent(new Event("afterprint")));
  });
  await goTo(page, `${bar.url}/prep?date=${FRIDAY}`);
  expect(await smallKeysOn(page)).toEqual([]);
  await page
    .getByRole("button", { name: /: thrown out$/ })
    .first()
    .tap();
  await page.getByText("recorded as a loss").waitFor();
  const keys = page.getByRole("link", { name: /^Make it: / });
  const listed = await keys.count();
  for (let made = 0; made < MADE_IN_WALK; made += 1) {
    const prep = (await keys.first().getAttribute("aria-label"))?.replace(/^Make it: /, "") ?? "";
    await keys.first().tap();
    await settled(page, prep);
    expect(await smallKeysOn(page)).toEqual([]);
    if (made === 0) await page.getByLabel("Made by").fill("Ines");
    await page.getByRole("button", { name: "Made it" }).tap();
    await page.getByText(/^Recorded: /).waitFor();
    await page
      .locator(".made-it")
      .getByRole("button", { name: /^Print/ })
      .tap();
    await page.locator(".made-it").getByRole("link", { name: "Back to the list" }).tap();
    await settled(page, "Prep");
    await page.locator(".made-lines", { hasText: prep }).waitFor();
    expect(await page.locator(".batch-name", { hasText: new RegExp(`^${prep}$`) }).count()).toBe(0);
  }
  expect(await keys.count()).toBe(listed - MADE_IN_WALK);
  // The name is kept on the device, so that it is typed once a shift.
  expect((await entries("batches")).slice(0, MADE_IN_WALK).map(({ fact }) => fact)).toEqual(
    Array.from({ length: MADE_IN_WALK }, () => expect.objectContaining({ by: "Ines" })),
  );
  await page
    .locator(".made-lines")
    .getByRole("button", { name: /take it back$/ })
    .first()
    .tap();
  await page.getByText("The batch is taken back.").waitFor();
  await expect.poll(() => keys.count(), { timeout: 10_000 }).toBe(listed - MADE_IN_WALK + 1);
  expect(faults).toEqual([]);
  await page.context().close();
}, 60_000);

it("scales a card to what there is of one input, mends a syrup off target, and records what really went in", async () => {
  const { page, faults } = await newPage(browser, { viewport: { width: 1180, height: 820 } });
  await goTo(page, `${bar.url}/prep/Simple%20Syrup?date=${DAY}`);
  const sugar = page.locator(".card-inputs li", { hasText: "White Sugar" }).locator("strong");
  await page.getByRole("button", { name: "What I have" }).click();
  await page.getByLabel("I have", { exact: true }).selectOption("White Sugar");
  await page.getByLabel(/How much of it/).fill("1.4 kg");
  await expect.poll(() => sugar.textContent()).toBe("1400\u00a0g");
  await page.getByRole("button", { name: "Another amount" }).click();
  await page.getByLabel(/^Make,/).fill("1626");
  // The sample's spec: 1000 g sugar and 1000 ml water make 1626 ml, 50 °Brix by weight.
  await expect.poll(() => sugar.textContent()).toBe("1000\u00a0g");
  expect(await page.locator(".card-targets").textContent()).toContain("50.0 °Brix");
  expect(await page.locator(".card-allergens").textContent()).toContain("local food code");
  // 1998 g at 48 °Bx hold 959 g of sugar; x more make half of all: x = 1998 × 2 ÷ 50 = 80 g.
  await page.getByLabel("I measured, °Brix").fill("48");
  expect(await page.locator(".correction-answer").textContent()).toMatch(/^Stir in 8[0-3]\sg of White Sugar/);
  expect(await accessibilityFaultsOn(page)).toEqual([]);
  await page.getByRole("button", { name: "Something else went in" }).click();
  await page.getByLabel(/^White Sugar used/).fill("1.1 kg");
  await page.getByRole("button", { name: "Made it" }).click();
  await page.getByText(/Recorded: 1626\sml/).waitFor();
  expect((await entries("batches")).map(({ fact }) => fact)).toContainEqual(
    expect.objectContaining({
      prep: "Simple Syrup",
      inputs: [{ item: "White Sugar", amount: 1100, unit: "g" }],
    }),
  );
  const before = (await entries("batches")).length;
  await page.getByRole("button", { name: "Take it back" }).click();
  await page.getByRole("button", { name: "Made it" }).waitFor();
  expect(await entries("batches")).toHaveLength(before - 1);
  expect(faults).toEqual([]);
  await page.context().close();
}, 60_000);

it("counts down on a timer, runs on while the list is open, and says when time is up", async () => {
  const { page } = await newPage(browser, { viewport: BENCH });
  await page.clock.install();
  await goTo(page, `${bar.url}/prep/Simple%20Syrup?date=${DAY}`);
  await page.getByRole("button", { name: "1 min", exact: true }).click();
  await page.clock.runFor(30_000);
  expect(await page.getByRole("timer").textContent()).toBe("00:30");
  await page.getByRole("link", { name: "Back to the list" }).first().click();
  await page.getByRole("timer").waitFor();
  await page.clock.runFor(31_000);
  await page.getByText("Time is up").waitFor();
  expect(await page.title()).toBe("Time is up: Simple Syrup");
  await page.context().close();
}, 60_000);

/** Every allergen that EU Regulation 1169/2011, Annex II, names, twice: no label of the trade is longer. */
const ALLERGENS =
  "cereals containing gluten, crustaceans, eggs, fish, peanuts, soybeans, milk, nuts (almonds, hazelnuts, walnuts, " +
  "cashews, pecans, Brazil nuts, pistachios, macadamias), celery, mustard, sesame, sulphur dioxide and sulphites, lupin, molluscs";
const LONGEST = `Contains: ${ALLERGENS}. May contain: ${ALLERGENS}. Check before serving.`;

it("prints labels of every size with nothing cut off, however long the allergens, and the list on one page", async () => {
  const { page } = await newPage(browser, { viewport: BENCH });
  await page.route("**/api/reports/prep/card?*", async (route) => {
    const response = await route.fetch();
    const card = (await response.json()) as { labels: { lines: string[]; allergens: string }[] };
    for (const label of card.labels) {
      label.lines = label.lines.map((line) => (line === label.allergens ? LONGEST : line));
      label.allergens = LONGEST;
    }
    await route.fulfill({ response, json: card });
  });
  await goTo(page, `${bar.url}/prep?date=${FRIDAY}`);
  for (const format of ["A4", "Letter"]) {
    expect((await page.pdf({ format })).toString("latin1").match(/\/Type \/Page\b/g)).toHaveLength(1);
  }
  await page.evaluate(() => {
    window.print = () => undefined;
  });
  const stocks = await page
    .locator("details.label-settings option")
    .evaluateAll((options) => options.map((option) => (option as HTMLOptionElement).value));
  expect(stocks.length).toBeGreaterThan(3);
  await page.getByText("Labels: size and date line").click();
  await page.getByLabel("Line on how days are counted").fill("The day after making is day 1");
  for (const stock of stocks) {
    await page.getByLabel("Printed on").selectOption(stock);
    await page.getByRole("button", { name: "Print all labels" }).click();
    await page.locator(`.labels-${stock} .label`).first().waitFor({ state: "attached" });
    await page.emulateMedia({ media: "print" });
    expect(await page.locator("#root").isVisible()).toBe(false);
    const labels = await page.locator(".label").evaluateAll((all) =>
      all.map((label) => ({
        isCut: label.scrollHeight > label.clientHeight || label.scrollWidth > label.clientWidth,
        sizePt: Number.parseFloat((label as HTMLElement).style.fontSize),
        text: label.textContent ?? "",
      })),
    );
    expect(labels.filter(({ isCut, sizePt }) => isCut || sizePt < 7)).toEqual([]);
    const text = labels
      .map((label) => label.text)
      .join("")
      .replaceAll(/… (?:more on label \d+)?/g, "");
    for (const part of ["Made Fri\u00a02026-11-27", "Use by", "Initials", "The day after making is day 1"]) {
      expect(text).toContain(part);
    }
    // The last of the long text is on paper, too.
    expect(text.match(/Check before serving/g)?.length).toBeGreaterThan(9);
    await page.emulateMedia({ media: null });
    await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
    await page.locator(".label").first().waitFor({ state: "detached" });
  }
  await page.context().close();
}, 60_000);

it("writes any new prep in one form, saves it whole, and weighs making it against buying it", async () => {
  const { page, faults } = await newPage(browser, { viewport: BENCH });
  await goTo(page, `${bar.url}/specs`);
  await page.getByRole("button", { name: "New prep" }).click();
  await page.getByLabel("Name", { exact: true }).fill("Bench Rich Syrup");
  await page.getByLabel("Sweetener : water").fill("2:1");
  await page.getByLabel("Keeps, days").fill("21");
  const preview = page.locator(".new-prep-preview");
  await preview.getByText("66.7 °Brix").waitFor();
  expect(await preview.textContent()).toContain("crystallise");
  expect(await preview.textContent()).toMatch(/Batch \d{6}-1/);
  expect(await accessibilityFaultsOn(page)).toEqual([]);
  // The same form, another kind: what is steeped says how strong it is on its label.
  await page.getByLabel("It is", { exact: true }).selectOption("infusion");
  await page.locator(".new-prep textarea").fill("1000 ml Cinderpalm Blanco Agave\n10 g red chilli");
  await page.getByLabel("The spec yields").fill("950");
  await preview.getByText(/about 4\d\s%\svol/).waitFor();
  await page.getByLabel("Name", { exact: true }).fill("Bench Infusion");
  await page.getByRole("button", { name: "Save the prep" }).click();
  await page.getByRole("heading", { name: "Bench Infusion" }).waitFor();
  await page.getByLabel(/An hour of work/).fill("16");
  await page.getByLabel(/Bought,/).fill("1");
  await page.getByText(/Buying saves/).waitFor();
  expect(faults).toEqual([]);
  await page.context().close();
}, 60_000);
