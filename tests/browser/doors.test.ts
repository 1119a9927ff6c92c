import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { closePages, goTo, newPage, type OpenBar, openBar, sharedBrowser } from "#tests/browser/support.ts";

let bar: OpenBar;
let browser: Browser;
beforeAll(async () => {
  [bar, browser] = await Promise.all([openBar(), sharedBrowser()]);
}, 120_000);
afterAll(async () => {
  await closePages(browser);
  await bar?.close();
});

it("the page as built holds no script and no style of its own, on any screen, and the browser refuses nothing of ours", {
  timeout: 120_000,
}, async () => {
  const { page, faults } = await newPage(browser);
  for (const path of ["/", "/variance", "/forecast", "/sales", "/me"]) {
    await goTo(page, bar.url + path);
    const found = await page.evaluate(() => ({
      scripts: document.querySelectorAll("script:not([src])").length,
      handlers: [...document.querySelectorAll("*")].filter((one) =>
        [...one.attributes].some(({ name }) => /^on/i.test(name)),
      ).length,
    }));
    expect(found, path).toEqual({ scripts: 0, handlers: 0 });
  }
  // A style or script that the policy refuses is logged as an error.
  expect(faults).toEqual([]);
});

it("a script or style that somebody got into the page is not run", { timeout: 60_000 }, async () => {
  const { page } = await newPage(browser);
  await goTo(page, bar.url);
  const ran = await page.evaluate(async () => {
    const script = document.createElement("script");
    script.textContent = "window.hasRun = true";
    const image = document.createElement("img");
    image.setAttribute("onerror", "window.hasRun = true");
    image.src = "/no-such-picture.png";
    const style = document.createElement("style");
    style.textContent = "body { opacity: 0.25 }";
    document.body.append(script, image, style);
    await new Promise((resolve) => setTimeout(resolve, 300));
    return { hasRun: "hasRun" in window, opacity: getComputedStyle(document.body).opacity };
  });
  expect(ran).toEqual({ hasRun: false, opacity: "1" });
  const framed = await page.evaluate(async (url) => {
    const frame = document.createElement("iframe");
    frame.src = url;
    document.body.append(frame);
    await new Promise((resolve) => setTimeout(resolve, 500));
    try {
      return frame.contentDocument?.querySelector("#root") !== null && frame.contentDocument !== null;
    } catch {
      return false;
    }
  }, bar.url);
  expect(framed).toBe(false);
});
