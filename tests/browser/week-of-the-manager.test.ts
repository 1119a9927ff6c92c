import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { CountRow } from "#engine/stock/movement.ts";
import { BACK_BAR, CELLAR, entryLine, FRONT_WELL, journal, typedIn } from "./manager-week.ts";
import { type Network, networkTo } from "./network.ts";
import { beginWithPin, enrol, signIn } from "./people.ts";
import { walk } from "./shelf-walk.ts";
import {
  closePages,
  goTo,
  LAPTOP,
  newPage,
  type OpenBar,
  openBar,
  PHONE,
  settled,
  sharedBrowser,
} from "./support.ts";

// One week, step after step on one database: counted on Monday the 30th, a week after the sample bar's last count.
const MONDAY = new Date("2026-11-30T15:00:00Z");
const WEDNESDAY = new Date("2026-12-02T16:10:00Z");
const THURSDAY = new Date("2026-12-03T16:00:00Z");
const COUNT = "Count 2026-11-30";

const MARA = { name: "Mara", role: "manager" } as const;
const KIT = { name: "Kit", role: "counter" } as const;

let bar: OpenBar;
let browser: Browser;
let phone: Page;
let other: Page;
let networks: Map<Page, Network>;
let laptop: Page;
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar({ isSignedIn: false }), sharedBrowser()]);
  [phone, other] = await Promise.all([phoneOnMonday(), phoneOnMonday()]);
  networks = new Map([
    [phone, await networkTo(bar)],
    [other, await networkTo(bar)],
  ]);
}, 180_000);
afterAll(async () => {
  await closePages(browser);
  for (const network of networks?.values() ?? []) network.close();
  await bar?.close();
});

it("signs the manager in on a phone and a laptop, and somebody to count along on another phone of the bar's", async () => {
  await enrol(other, barFrom(other), MARA);
  await beginWithPin(other, barFrom(other), KIT);
  await signIn(phone, barFrom(phone), MARA);
  ({ page: laptop } = await newPage(browser, { viewport: LAPTOP }));
  await laptop.clock.setFixedTime(MONDAY);
  await signIn(laptop, bar, MARA);
  await phone
    .getByText("Nothing was entered after Mon, Nov 23, so all below is reckoned for that day")
    .waitFor();
}, 90_000);

it("counts on through a cut of the network and a reload without it: full ones, tenths, none, and one left out", async () => {
  await phone.getByRole("link", { name: "Count", exact: true }).first().click();
  await settled(phone, "Count");
  expect(await phone.getByLabel("Name of the count").inputValue()).toBe(COUNT);
  expect(await phone.getByLabel("Counted by").inputValue()).toBe("Mara");
  await phone.getByRole("button", { name: "Begin counting" }).click();
  await phone.getByRole("link", { name: /^Front well/ }).click();
  await phone.getByText("Front well, 0 of 13 counted").waitFor();
  await walk(phone, FRONT_WELL, 3);
  await expect.poll(rows).toHaveLength(3);

  await cut(phone);
  await walk(phone, FRONT_WELL, 4);
  await phone.getByText("4 waiting to send").waitFor();
  await phone.keyboard.type("0.10");
  await phone.reload();
  await phone.getByText("Front well, 7 of 13 counted").waitFor();
  await phone.getByText("4 waiting to send").waitFor();
  // What was typed and not entered yet stands there again.
  expect(await phone.locator(".item-name").textContent()).toBe("Tarwick Chilli Tincture");
  expect(await phone.locator(".figure input").first().inputValue()).toBe("0.10");
  await phone.keyboard.press("Enter");
  await phone.getByText("Front well, 8 of 13 counted").waitFor();
  await walk(phone, FRONT_WELL);
  await phone.getByText("12 of 109 counted").waitFor();
  expect(await rows()).toHaveLength(3);
}, 90_000);

it("counts the cellar on another phone meanwhile, out of signal too, and neither waits for the other", async () => {
  await goTo(other, `${barFrom(other).url}/count`);
  await other.getByRole("link", { name: new RegExp(`^${COUNT}`) }).click();
  await other.getByRole("link", { name: /^Cellar/ }).click();
  await other.getByText("Cellar, 0 of 28 counted").waitFor();
  await walk(other, CELLAR, 2);
  await expect.poll(rows).toHaveLength(5);
  await cut(other);
  await walk(other, CELLAR);
  await phone.getByRole("link", { name: /^Back bar/ }).click();
  await phone.locator(".item-name").waitFor();
  await walk(phone, BACK_BAR);
  await phone.getByText("36 of 109 counted").waitFor();
  expect(await rows()).toHaveLength(5);
}, 90_000);

it("loses nothing when the network goes again in the middle of sending: what was typed is what the server has", async () => {
  let sent = 0;
  let isCut = false;
  // Five entries arrive; the answer to the fifth does not, and then there is no network at all.
  await phone.context().route(ENTRIES, async (route) => {
    sent += 1;
    const answer = await route.fetch();
    if (sent < 5) return route.fulfill({ response: answer });
    await route.abort();
    await cut(phone);
    isCut = true;
  });
  await mend(other);
  await mend(phone);
  await expect.poll(() => isCut, { timeout: 20_000 }).toBe(true);
  await phone.getByText("29 waiting to send").waitFor();
  await phone.context().unroute(ENTRIES);
  await mend(phone);
  await expect.poll(async () => (await rows()).length, { timeout: 30_000 }).toBe(64);
  const found = await rows();
  expect(found.flatMap(({ apart }) => apart)).toEqual([]);
  expect(found.map(entryLine).sort()).toEqual(
    [
      ...typedIn("Front well", FRONT_WELL, MARA.name),
      ...typedIn("Back bar", BACK_BAR, MARA.name),
      ...typedIn("Cellar", CELLAR, KIT.name),
    ].sort(),
  );
  const vodka = found.filter(({ item }) => item === "Quillmere Vodka");
  expect(vodka.map(({ area, full, parts }) => [area, full, parts]).sort()).toEqual([
    ["Cellar", 3, []],
    ["Front well", 1, [0.4]],
  ]);
}, 90_000);

it("lists what is missing before the end, and ends in a variance that first asks for the sales", async () => {
  await phone.getByRole("link", { name: "What is missing, and finish" }).click();
  // 109 places, of which 13 + 24 + 28 were walked by and one was left out.
  await settled(phone, "45 not counted");
  const well = phone.locator("section", { has: phone.getByRole("heading", { name: "Front well 1" }) });
  expect(await well.getByRole("link").allTextContents()).toEqual(["Nutfieldry Almond Syrup"]);
  for (const rest of ["Prep fridge 14", "Walk-in 17", "Dry store 13"]) {
    expect(await phone.getByRole("heading", { name: rest }).count()).toBe(1);
  }
  await phone.getByRole("button", { name: "Finish without 45, show the variance" }).click();
  await settled(phone, "Variance");
  await phone
    .getByText("Sales are in only up to Sun, Nov 22; 7 days before the closing count have none")
    .waitFor();
}, 90_000);

it("brings in the week's sales on a laptop", async () => {
  await goTo(laptop, bar.url);
  const next = laptop.getByRole("region", { name: "Do this next" });
  await next.getByText("7 days are missing after Sun, Nov 22.").waitFor();
  await next.getByRole("link", { name: "Bring in the sales" }).click();
  await settled(laptop, "Sales");
  const name = "14-journal-2026-11-23.csv";
  const buffer = Buffer.from(journal());
  await laptop.getByLabel("Sales file of any till").setInputFiles({ name, mimeType: "text/csv", buffer });
  await laptop.locator(".preview h2", { hasText: name }).waitFor();
  const figures = await laptop.locator(".preview .figures").textContent();
  expect(figures).toContain("Lines read28New28Known before0Refused0");
  expect(figures).toContain("100% of what was sold");
  await laptop.getByRole("button", { name: "Read it in" }).click();
  await laptop.getByRole("heading", { name: `${name} is in` }).waitFor();
  // 42 mules and 28 vodka sodas of 2 oz each.
  expect(await rowOf("Quillmere Vodka")).toContain("140.0");
}, 90_000);

it("sees what is missing and why, and settles one cause where it stands", async () => {
  await laptop.getByRole("link", { name: "Variance" }).first().click();
  await settled(laptop, "Variance");
  expect(await laptop.getByText("Bring in the sales first").count()).toBe(0);
  // 7 × (6 × 13 + 4 × 10 + 5 × 11 + 3 × 15).
  expect(await laptop.locator(".totals-line").textContent()).toContain("Sales$1,526");
  // 9.2 L a week ago less 4.4 L now; 2 oz are 59.15 ml. A full bottle of rum less than a week ago, and none sold.
  expect(await rowOf("Quillmere Vodka")).toMatch(/162.3\soz.*140.0\soz.*\+22.3\soz/);
  expect(await rowOf("Oarlock White Rum")).toMatch(/Chase33.8\soz0\soz0\soz\+33.8\soz/);
  const poured = laptop.locator(".cause", { hasText: "Quillmere Vodka was poured over the spec" });
  expect(await poured.textContent()).toContain("Measure ten pours");
  const broke = laptop.locator(".cause", {
    hasText: "Oarlock White Rum broke and was not recorded: 1 container.",
  });
  await broke.getByText("If so: enters 1 × 1 L of Oarlock White Rum as broken.").waitFor();
  await broke.getByRole("button", { name: "This was it: Oarlock White Rum" }).click();
  await laptop.locator(".settled li", { hasText: "It was this: Oarlock White Rum broke" }).waitFor();
  await expect.poll(() => broke.count(), { timeout: 20_000 }).toBe(0);
  expect(await rowOf("Oarlock White Rum")).toMatch(/Quiet33.8\soz0\soz33.8\soz0\soz/);
}, 90_000);

it("orders by it, with one quantity changed by hand", async () => {
  await laptop.getByRole("link", { name: "Order", exact: true }).first().click();
  await settled(laptop, "Order");
  const quantity = laptop.getByLabel("Containers of Quillmere Vodka to order");
  const suggested = await quantity.inputValue();
  await quantity.fill("14");
  const section = laptop.locator(".supplier", { hasText: "Longmole Spirits" });
  // 14 bottles at $17.50.
  expect(await rowOf("Quillmere Vodka")).toContain(`suggested ${suggested}`);
  expect(await rowOf("Quillmere Vodka")).toContain("$245.00");
  await section.getByRole("button", { name: /^Place order/ }).click();
  const dialog = laptop.getByRole("dialog", { name: "Place the order to Longmole Spirits?" });
  expect(await dialog.getByLabel("Expected on").inputValue()).toBe("2026-12-02");
  expect(await dialog.textContent()).toContain("Quillmere Vodka 14");
  await dialog.getByRole("button", { name: "Place order" }).click();
  await laptop.getByText("Order to Longmole Spirits recorded").waitFor();
  const onTheWay = laptop.locator("section", { has: laptop.getByRole("heading", { name: "On the way" }) });
  // 14 L in ounces.
  await onTheWay.getByRole("row", { name: /^Quillmere Vodka.*Wed, Dec 2.*473.4/ }).waitFor();
}, 90_000);

it("lays the delivery to the order on Wednesday: two bottles short, and dearer", async () => {
  await laptop.clock.setFixedTime(WEDNESDAY);
  await goTo(laptop, `${bar.url}/movements`);
  await laptop.getByRole("button", { name: "Enter a delivery" }).click();
  await laptop.getByLabel("Invoice").fill("LM-40310");
  await laptop.getByRole("button", { name: /^Fill in what is on order/ }).click();
  // Left over from another order, and not in this delivery either.
  await laptop.getByRole("button", { name: "Remove the line of Orrindel Orange Liqueur" }).click();
  const vodka = laptop.getByRole("listitem").filter({
    has: laptop.getByRole("button", { name: "Remove the line of Quillmere Vodka" }),
  });
  expect(await vodka.getByLabel("How many").inputValue()).toBe("14");
  await vodka.getByLabel("How many").fill("12");
  await vodka.getByLabel("Price of the line, USD").fill("216");
  await laptop.getByRole("button", { name: "Enter it" }).click();
  expect(await laptop.getByRole("row", { name: /^Quillmere Vodka.*LM-40310/ }).textContent()).toContain(
    "$216.00",
  );
  await laptop.getByRole("link", { name: "Order", exact: true }).first().click();
  await settled(laptop, "Order");
  const late = laptop.getByRole("row", { name: /^Quillmere Vodka.*Wed, Dec 2.*67.6/ });
  await late.getByRole("link").click();
  await settled(laptop, "Order Longmole Spirits 2026-11-30 10:00");
  await laptop.getByText("Came with invoice LM-40310.").waitFor();
  // $18.00 a bottle instead of $17.50, twelve times.
  expect(await rowOf("Quillmere Vodka")).toMatch(
    /^Quillmere Vodka1 L14122 still to come, due Wed, Dec\s2\$17.50\$18.00\$6.00$/,
  );
}, 90_000);

it("says on Thursday, with the first thing entered that day, that the two bottles are late", async () => {
  await laptop.clock.setFixedTime(THURSDAY);
  await goTo(laptop, `${bar.url}/movements?kind=losses`);
  await laptop.getByRole("button", { name: "Enter a loss" }).click();
  await laptop.getByLabel("Kind", { exact: true }).selectOption("comp");
  await laptop.getByRole("combobox", { name: "Item or drink" }).fill("Harbour Sour");
  await laptop.getByRole("option", { name: /^Harbour Sour/ }).click();
  await laptop.getByLabel("Serves").fill("1");
  await laptop.getByRole("button", { name: "Enter it" }).click();
  await laptop.getByRole("row", { name: /^Harbour Sour.*comp.*Thu, Dec 3/ }).waitFor();
  await laptop.getByRole("link", { name: "Order", exact: true }).first().click();
  const late =
    "Quillmere Vodka: 2 of 14 × 1 L still to come from Longmole Spirits, due Wed, Dec 2, 1 day late";
  await laptop.getByRole("listitem").filter({ hasText: late }).getByRole("link").click();
  await settled(laptop, "Order Longmole Spirits 2026-11-30 10:00");
  expect(await rowOf("Quillmere Vodka")).toContain("1412short, 1 day late");
}, 90_000);

it("gives all of it out again as plain sheets", () => {
  const folder = join(mkdtempSync(join(tmpdir(), "ullage-")), "book");
  bar.ullage("export", folder);
  const sheet = (name: string) =>
    readFileSync(join(folder, `${name}.csv`), "utf8")
      .trim()
      .split("\r\n");
  const counted = sheet("counts").filter((line) => line.startsWith(COUNT));
  expect(counted).toHaveLength(64);
  expect(counted).toContain(`${COUNT},2026-11-30 10:00,Front well,Quillmere Vodka,1 L,1,0.4,,,,Mara`);
  expect(counted).toContain(`${COUNT},2026-11-30 10:00,Cellar,Oarlock White Rum,1 L,5,,,,,Kit`);
  expect(counted).toContain(`${COUNT},2026-11-30 10:00,Back bar,Saltglass Strong Gin,750 ml,0,,592,,,Mara`);
  expect(sheet("losses").filter((line) => line.includes("breakage,Oarlock White Rum,1000,ml"))).toHaveLength(
    1,
  );
  expect(sheet("deliveries").filter((line) => line.includes("LM-40310,Quillmere Vodka,1 L,12"))).toHaveLength(
    1,
  );
  rmSync(dirname(folder), { recursive: true });
});

const ENTRIES = "**/api/counts/entries**";

/** The bar as a phone reaches it. */
function barFrom(page: Page): OpenBar & Network {
  const network = networks.get(page);
  if (network === undefined) throw new Error("This phone has no network.");
  return { ...bar, ...network, close: bar.close };
}

async function cut(page: Page): Promise<void> {
  barFrom(page).cut();
  await page.context().setOffline(true);
}

async function mend(page: Page): Promise<void> {
  barFrom(page).mend();
  await page.context().setOffline(false);
}

async function phoneOnMonday(): Promise<Page> {
  const { page } = await newPage(browser, { viewport: PHONE, hasTouch: true, serviceWorkers: "allow" });
  await page.clock.setFixedTime(MONDAY);
  return page;
}

/** What the server has of the count, whatever becomes of the phones' network. */
async function rows(): Promise<(CountRow & { apart: CountRow[] })[]> {
  const answer = await laptop.request.get(`${bar.url}/api/counts/rows/${encodeURIComponent(COUNT)}`);
  return answer.json();
}

/** A row of a table of the laptop's screen, by what stands in front. */
async function rowOf(item: string): Promise<string> {
  return (
    (await laptop
      .getByRole("row", { name: new RegExp(`^${item}`) })
      .first()
      .textContent()) ?? ""
  );
}
