import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
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

it("closes a week, reopens it with a reason, and undoes by one key what was done last", async () => {
  const { page, faults } = await newPage(browser, { viewport: PHONE });
  await goTo(page, `${bar.url}/history`);
  await page.getByRole("button", { name: /^Close the week to/ }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Close the week" }).click();
  await page.getByText(/Closed up to .*, with the count/).waitFor();

  const refused = await page.evaluate(async () => {
    const loss = {
      at: "2026-11-20T12:00:00Z",
      kind: "spill",
      what: "Quillmere Vodka",
      amount: 30,
      unit: "ml",
    };
    const send = (body: object) =>
      fetch("/api/losses", {
        method: "POST",
        headers: { "content-type": "application/json" },
        body: JSON.stringify({ ...body, by: "Ines", note: "" }),
      });
    const answer = (await (await send(loss)).json()) as { problems: { message: string }[] };
    await send({ ...loss, at: "2026-11-24T12:00:00Z" });
    return answer.problems[0]?.message;
  });
  expect(refused).toContain("is closed; nothing was changed");

  await page.getByRole("button", { name: /^Reopen the week/ }).click();
  await page.getByLabel(/^Why the week/).fill("invoice Q-130 came late");
  await page.getByRole("button", { name: "Reopen it" }).click();
  await page.getByText("Why: invoice Q-130 came late").waitFor();

  await page.getByText("Loss entered", { exact: true }).waitFor();
  await page.keyboard.press("Control+z");
  await page
    .getByRole("status")
    .getByText(/Undone: spill, 30 ml Quillmere Vodka/)
    .waitFor();
  await page.getByText(/undone by no\./).waitFor();

  await page.getByRole("textbox", { name: "About" }).fill("quillmere vodka");
  await page.getByRole("button", { name: "Show", exact: true }).click();
  await expect.poll(() => page.locator(".act").count()).toBe(2);
  expect(faults.filter((fault) => !fault.includes("422"))).toEqual([]);
  await page.context().close();
}, 60_000);
