import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { CountRow } from "#engine/stock/movement.ts";
import { accessibilityFaultsOn } from "./accessibility-faults.ts";
import { beginWithPin, linkIn, PASSWORD, PIN } from "./people.ts";
import {
  closePages,
  goTo,
  newPage,
  type OpenBar,
  openBar,
  PHONE,
  settled,
  sharedBrowser,
} from "./support.ts";

let bar: OpenBar;
let browser: Browser;
let phone: Page;
let office: Page;
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar({ isSignedIn: false }), sharedBrowser()]);
  ({ page: phone } = await newPage(browser, { viewport: PHONE, hasTouch: true, colorScheme: "dark" }));
  ({ page: office } = await newPage(browser));
}, 180_000);
afterAll(async () => {
  await closePages(browser);
  await bar?.close();
});

async function signOut(page: Page): Promise<void> {
  await page.goto(`${bar.url}/me`);
  await page.getByRole("button", { name: "Sign out", exact: true }).click();
  await settled(page, "Sign in");
}

async function tap(page: Page, digits: string): Promise<void> {
  for (const digit of digits) await page.getByRole("button", { name: digit, exact: true }).click();
  await page.getByRole("button", { name: "OK" }).click();
}

it("makes the first owner by the link in the terminal, who enrols the bar's phone and invites a counter", async () => {
  await phone.goto(bar.url);
  await settled(phone, "Nobody owns this book yet");
  await expect.poll(() => linkIn(bar.printed())).toContain("/welcome#");
  await phone.goto(linkIn(bar.printed()));
  await settled(phone, "Welcome, owner");
  expect(await accessibilityFaultsOn(phone)).toEqual([]);
  await phone.getByLabel("Your name").fill("Ines");
  await phone.getByLabel("New password").fill("short");
  await phone.getByRole("button", { name: "Set the password" }).click();
  await phone.getByText("take at least 10").waitFor();
  await phone.getByLabel("New password").fill(PASSWORD);
  await phone.getByRole("button", { name: "Set the password" }).click();
  await settled(phone, "This week");
  expect(phone.url()).not.toContain("#");
  await phone.getByRole("link", { name: "Signed in as Ines" }).click();
  await phone.getByRole("link", { name: "People and devices" }).click();
  await phone.getByLabel("Name of this device").fill("Bar phone");
  await phone.getByRole("button", { name: "Enrol this device" }).click();
  await phone.getByText("this device, enrolled by Ines").waitFor();
  await phone.getByLabel("Name of somebody new").fill("Kit");
  await phone.getByRole("button", { name: "Add and make a link" }).click();
  const link = await phone.getByRole("textbox", { name: "Link for Kit" }).inputValue();
  expect(await accessibilityFaultsOn(phone)).toEqual([]);
  await signOut(phone);
  await phone.goto(linkIn(link));
  await settled(phone, "Welcome, Kit");
  await phone.getByLabel("New PIN").fill(PIN);
  await phone.getByRole("button", { name: "Set the PIN" }).click();
  await settled(phone, "This week");
}, 60_000);

it("shows who counts neither costs nor what the role cannot do", async () => {
  expect(await phone.locator(".shell-nav > ul > li > a").allTextContents()).toEqual([
    "This week",
    "Count",
    "Prep",
  ]);
  await phone.goto(`${bar.url}/stock`);
  await settled(phone, "Stock");
  expect(await phone.locator("thead").textContent()).not.toContain("Value");
  expect(await phone.getByText("€").count()).toBe(0);
  for (const path of ["variance", "order/pars", "sales"]) {
    await phone.goto(`${bar.url}/${path}`);
    await settled(phone, "Not part of your role");
    expect(await phone.locator("main").getByRole("button").count()).toBe(0);
  }
}, 60_000);

it("asks on the bar's phone for a name and a PIN, by thumb or by keyboard, and says when it is wrong", async () => {
  await signOut(phone);
  await phone.getByText("Kit", { exact: true }).waitFor();
  expect(await accessibilityFaultsOn(phone)).toEqual([]);
  await tap(phone, "1357");
  await phone.getByText("That PIN is wrong.").waitFor();
  expect(await phone.getByLabel("PIN of Kit").last().inputValue()).toBe("");
  await phone.keyboard.type(PIN);
  await phone.keyboard.press("Enter");
  await settled(phone, "This week");
}, 60_000);

it("asks everywhere else for a name and a password, and names nobody", async () => {
  await office.goto(`${bar.url}/order`);
  await settled(office, "Sign in");
  expect(await office.getByText("Kit").count()).toBe(0);
  await office.getByLabel("Name").fill("Ines");
  await office.getByLabel("Password").fill("not it, not at all");
  await office.keyboard.press("Enter");
  await office.getByText("The name or the password is wrong.").waitFor();
  expect(await accessibilityFaultsOn(office)).toEqual([]);
  await office.getByLabel("Password").fill(PASSWORD);
  await office.keyboard.press("Enter");
  await settled(office, "Order");
}, 60_000);

it("lets a count go on when its session ends, and sends it after the next sign-in as it was counted", async () => {
  await phone.goto(`${bar.url}/count?count=Cut+short&area=Cellar&item=Quillmere+Vodka`);
  await phone.locator(".item-name", { hasText: "Quillmere Vodka" }).waitFor();
  // The owner signs Kit out everywhere, from the office.
  await office.goto(`${bar.url}/people`);
  await office.getByRole("button", { name: "Sign out everywhere: Kit" }).click();
  await office.getByRole("button", { name: "Sign out everywhere: Kit" }).waitFor({ state: "detached" });
  await phone.keyboard.type("5");
  await phone.keyboard.press("Enter");
  if (await phone.getByText("Please look again").isVisible()) await phone.keyboard.press("Enter");
  await phone.getByText("You are signed out. Count on").waitFor();
  const next = phone.locator(".item-name");
  expect(await next.textContent()).not.toContain("Quillmere Vodka");
  await phone.getByRole("button", { name: "Sign in to send", exact: true }).click();
  await phone.getByText("1 entry of Cut short is kept on this device").waitFor();
  await tap(phone, PIN);
  await next.waitFor();
  await phone.getByText("You are signed out").waitFor({ state: "detached" });
  const rows = () =>
    office.evaluate(async () => (await (await fetch("/api/counts/rows/Cut%20short")).json()) as CountRow[]);
  await expect
    .poll(async () => (await rows()).map(({ item, full, by }) => `${item} ${full} ${by}`))
    .toEqual(["Quillmere Vodka 5 Kit"]);
}, 60_000);

it("counts on a phone that several use under the name of whoever is signed in, also in a count that is gone on with", async () => {
  const countedBy = async () => {
    await goTo(phone, `${bar.url}/count`);
    return phone.getByLabel("Counted by").inputValue();
  };
  await countedBy();
  await phone.getByLabel("Counted by").fill("Kit B.");
  await phone.getByRole("link", { name: /^Cut short/ }).click();
  await settled(phone, "Cut short");
  expect(await countedBy()).toBe("Kit B.");
  // The session ends by itself; what is said of Noa must not be what was said of Kit.
  await phone.context().clearCookies({ name: /session/ });
  await beginWithPin(phone, bar, { name: "Noa", role: "counter" });
  expect(await countedBy()).toBe("Noa");
  await signOut(phone);
  const kept = await phone.evaluate(() => Object.keys(localStorage));
  expect(kept.filter((key) => /counted|entered/.test(key))).toEqual([]);
}, 60_000);
