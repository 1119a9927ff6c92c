import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
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

it("changes a quantity, places the order after asking once, and then counts it as on the way", async () => {
  const { page, faults } = await newPage(browser, { viewport: LAPTOP });
  await goTo(page, `${bar.url}/order`);
  const section = page.locator(".supplier").first();
  const supplier = (await section.locator("h2").first().textContent()) ?? "";
  const item =
    (await section
      .locator("tbody th")
      .first()
      .evaluate((cell) => cell.firstChild?.textContent)) ?? "";
  const quantity = section.locator("tbody input").first();
  const suggested = Number(await quantity.inputValue());
  await quantity.fill(String(suggested + 2));
  expect(await section.textContent()).toContain(`suggested ${suggested}`);
  await section.getByRole("button", { name: /Place order/ }).click();
  const dialog = page.getByRole("dialog");
  expect(await dialog.textContent()).toContain("does not send it");
  await dialog.getByRole("button", { name: "Place order" }).click();
  await page
    .getByRole("status")
    .filter({ hasText: `Order to ${supplier} recorded` })
    .waitFor();
  const onTheWay = page.locator("section", { hasText: "On the way" }).locator("tbody tr", { hasText: item });
  await onTheWay.first().waitFor();
  expect(faults).toEqual([]);
  await page.context().close();
}, 60_000);

it("leaves nothing placed when the question is answered with not yet", async () => {
  const { page } = await newPage(browser, { viewport: PHONE, hasTouch: true });
  await goTo(page, `${bar.url}/order`);
  const before = await openOrders();
  await page
    .getByRole("button", { name: /Place order/ })
    .first()
    .click();
  await page.getByRole("button", { name: "Not yet" }).click();
  await page.getByRole("dialog").waitFor({ state: "hidden" });
  expect(await openOrders()).toEqual(before);
  await page.context().close();
}, 60_000);

async function openOrders(): Promise<unknown> {
  return (await fetch(`${bar.url}/api/orders`)).json();
}

it.each([
  ["a phone", PHONE],
  ["a laptop", LAPTOP],
])(
  "sets a par by hand on %s, says first what that changes, and gives it back",
  async (_, viewport) => {
    const { page, faults } = await newPage(browser, { viewport });
    await goTo(page, `${bar.url}/order/pars`);
    const chosen = page.locator("button.par-item").first();
    const item = (await chosen.textContent()) ?? "";
    await chosen.click();
    const form = page.getByRole("region", { name: `Par of ${item}` });
    const set = form.getByRole("button", { name: "Set par" });
    await form.getByLabel(/^Par,/).fill("40");
    await form.getByText("chance to run out before the delivery after the next, against").waitFor();
    await form.getByText("more on the shelf when filled up").waitFor();
    // Nobody remembers in three months why a par was set, so it takes a reason.
    expect(await set.isDisabled()).toBe(true);
    await form.getByLabel("Why").fill("a party every week");
    expect(await accessibilityFaultsOn(page)).toEqual([]);
    await set.click();
    await page.getByText("1 par set by hand").waitFor();
    await page.locator("tr", { hasText: item }).filter({ hasText: "a party every week" }).first().waitFor();
    await page.locator("button.par-item", { hasText: item }).first().click();
    await form.getByRole("button", { name: "Back to computed" }).click();
    await page.getByText("All pars are computed").waitFor();
    expect(faults).toEqual([]);
    await page.context().close();
  },
  60_000,
);
