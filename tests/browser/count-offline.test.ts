import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { CountRow } from "#engine/stock/movement.ts";
import { accessibilityFaultsOn } from "./accessibility-faults.ts";
import { enter } from "./shelf-walk.ts";
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

type Row = CountRow & { apart: CountRow[] };

async function rowsOf(count: string): Promise<Row[]> {
  const answer = await fetch(`${bar.url}/api/counts/rows/${encodeURIComponent(count)}`);
  return (await answer.json()) as Row[];
}

/** A phone of someone with initials, at a place of a count, with the screens kept on it. */
async function phoneOf(by: string, count: string, place: string): Promise<Page> {
  const { page } = await newPage(browser, { viewport: PHONE, hasTouch: true, serviceWorkers: "allow" });
  await page.addInitScript((name) => localStorage.setItem("ullage-counted-by", name), by);
  await goTo(page, `${bar.url}/count?count=${encodeURIComponent(count)}${place}`);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  return page;
}

const WELL = "&area=Front+well&item=Quillmere+Vodka";
const CELLAR = "&area=Cellar&item=Quillmere+Vodka";

it("merges two phones in different areas, one of them without signal the whole time", async () => {
  const above = await phoneOf("AB", "Two areas", WELL);
  const below = await phoneOf("CD", "Two areas", CELLAR);
  await below.context().setOffline(true);
  await enter(above, { typed: "2" });
  await enter(below, { typed: "5" });
  await enter(below, { typed: "6" });
  await expect.poll(() => rowsOf("Two areas")).toHaveLength(1);
  await below.context().setOffline(false);
  await expect.poll(() => rowsOf("Two areas"), { timeout: 15_000 }).toHaveLength(3);
  const rows = await rowsOf("Two areas");
  expect(rows.map(({ area, full, by }) => `${area} ${full} ${by}`).sort()).toEqual([
    "Cellar 5 CD",
    "Cellar 6 CD",
    "Front well 2 AB",
  ]);
  expect(rows.flatMap(({ apart }) => apart)).toEqual([]);
  await goTo(above, `${bar.url}/count?count=Two+areas`);
  await above.getByText("3 of 109 counted").waitFor();
  await Promise.all([above.context().close(), below.context().close()]);
}, 90_000);

it("loses nothing when two count the same shelf, and lets a person choose", async () => {
  const first = await phoneOf("AB", "Same shelf", WELL);
  const second = await phoneOf("CD", "Same shelf", WELL);
  await second.context().setOffline(true);
  await enter(first, { typed: "3.5" });
  await expect.poll(() => rowsOf("Same shelf")).toHaveLength(1);
  await enter(second, { typed: "2" });
  await second.context().setOffline(false);
  await expect.poll(async () => (await rowsOf("Same shelf"))[0]?.apart.length, { timeout: 15_000 }).toBe(1);
  const [row] = await rowsOf("Same shelf");
  expect(row).toMatchObject({ full: 2, by: "CD", apart: [{ full: 3, parts: [0.5], by: "AB" }] });
  await goTo(first, `${bar.url}/count?count=Same+shelf`);
  await first.getByRole("heading", { name: "Counted by two people" }).waitFor();
  expect(await accessibilityFaultsOn(first)).toEqual([]);
  await first.getByRole("button", { name: /3 full and one at 5\/10/ }).click();
  await first.getByRole("heading", { name: "Counted by two people" }).waitFor({ state: "detached" });
  await expect.poll(async () => (await rowsOf("Same shelf"))[0]?.apart).toEqual([]);
  expect((await rowsOf("Same shelf"))[0]).toMatchObject({ full: 3, parts: [0.5], by: "AB" });
  await Promise.all([first.context().close(), second.context().close()]);
}, 90_000);

it("takes a recount of one's own for what it is: nobody is asked to choose", async () => {
  const phone = await phoneOf("AB", "Own recount", WELL);
  await enter(phone, { typed: "3" });
  await expect.poll(() => rowsOf("Own recount")).toHaveLength(1);
  await phone.getByRole("link", { name: "Back" }).click();
  await phone.locator(".item-name", { hasText: "Quillmere Vodka" }).waitFor();
  await enter(phone, { typed: "4" });
  await expect.poll(async () => (await rowsOf("Own recount"))[0]?.full).toBe(4);
  expect((await rowsOf("Own recount"))[0]?.apart).toEqual([]);
  await phone.context().close();
}, 60_000);

it("keeps what the server had taken when the network is cut before it could say so", async () => {
  const phone = await phoneOf("AB", "Cut in sync", WELL);
  let sent = 0;
  // The entry arrives; its answer does not.
  await phone.context().route("**/api/counts/entries**", async (route) => {
    sent += 1;
    if (sent > 1) return route.continue();
    await route.fetch();
    return route.abort();
  });
  await enter(phone, { typed: "7" });
  await expect.poll(() => sent, { timeout: 20_000 }).toBe(2);
  await phone.getByText("waiting to send").waitFor({ state: "detached" });
  const rows = await rowsOf("Cut in sync");
  expect(rows).toHaveLength(1);
  expect(rows[0]).toMatchObject({ full: 7, apart: [] });
  await phone.context().close();
}, 60_000);

it("opens and counts on a network that takes what is asked and answers nothing, and sends it when there is a way out", async () => {
  const page = await phoneOf("AB", "No way out", CELLAR);
  bar.hold();
  try {
    await page.goto(`${bar.url}/count?count=No+way+out${CELLAR}`);
    await page.locator(".item-name").waitFor();
    await enter(page, { typed: "5" });
    await enter(page, { typed: "6" });
  } finally {
    bar.goOn();
  }
  await expect.poll(() => rowsOf("No way out"), { timeout: 40_000 }).toHaveLength(2);
  expect((await rowsOf("No way out")).map(({ full }) => full).sort()).toEqual([5, 6]);
  await page.context().close();
}, 90_000);

it("keeps every key: what was typed and not entered stands there after a reload without signal", async () => {
  const phone = await phoneOf("AB", "Every key", CELLAR);
  await phone.context().setOffline(true);
  await phone.keyboard.type("12.4");
  await phone.reload();
  await phone.locator(".item-name", { hasText: "Quillmere Vodka" }).waitFor();
  expect(await phone.locator(".figure input").first().inputValue()).toBe("12.4");
  await phone.keyboard.press("Enter");
  await phone.getByText("1 waiting to send").waitFor();
  await phone.context().setOffline(false);
  await expect.poll(() => rowsOf("Every key"), { timeout: 15_000 }).toHaveLength(1);
  expect((await rowsOf("Every key"))[0]).toMatchObject({ full: 12, parts: [0.4] });
  await phone.context().close();
}, 60_000);

it("counts a whole area without signal from the first load on", async () => {
  const phone = await phoneOf("AB", "Whole area", "");
  await phone.context().setOffline(true);
  await phone.getByRole("link", { name: /Front well/ }).click();
  const first = phone.locator(".item-name");
  await first.waitFor();
  for (let left = 13; left > 0; left -= 1) await enter(phone, { typed: "1" });
  await phone.getByText("13 of 109 counted").waitFor();
  await phone.context().setOffline(false);
  await expect.poll(() => rowsOf("Whole area"), { timeout: 20_000 }).toHaveLength(13);
  await phone.context().close();
}, 90_000);
