import type { Browser, Page } from "playwright-core";
import { BUDGETS } from "#tests/bench/budgets.ts";
import { goTo, LAPTOP, launchBrowser, newPage, openBar, PHONE } from "../browser/support.ts";

/**
 * Measures the screens against their budgets in a real Chromium, on the built program: `npm run bench:screens`.
 *
 * Bytes are held by tests/web/size.test.ts; here is time, which a machine that does something else spoils.
 */
const KEYS = 45;
const ROUNDS = 5;
const ITEMS = 150;

/** TypeScript's loader marks the names of functions with a helper that a page does not have. */
const NAMES = { content: "globalThis.__name = (it) => it;" };

/** A field and nothing else: what the browser itself takes of this machine for a key. */
const BARE_FIELD =
  "<!doctype html><meta name=viewport content='width=device-width'><div class=figure><input></div>";

/** What a key takes of the processor until it is shown: its own work and that of the frame after it, in ms. */
async function keyTimes(page: Page): Promise<number[]> {
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  await page.evaluate(watchKeys);
  const field = page.locator(".figure input").first();
  await field.focus();
  for (let key = 0; key < KEYS; key += 1) {
    await page.keyboard.press(key % 3 === 2 ? "Backspace" : String(key % 10));
    await page.waitForTimeout(50);
  }
  const times = await page.evaluate(() => (globalThis as unknown as { keyTimesMs: number[] }).keyTimesMs);
  await page.context().close();
  return times;
}

async function keyOfCount(browser: Browser, url: string): Promise<number[]> {
  const { page } = await newPage(browser, { viewport: PHONE });
  await page.addInitScript(NAMES);
  await goTo(page, `${url}/count?count=Keys&area=Front+well&item=Quillmere+Vodka`);
  return keyTimes(page);
}

async function keyOfBareField(browser: Browser): Promise<number[]> {
  const { page } = await newPage(browser, { viewport: PHONE });
  await page.setContent(BARE_FIELD);
  await page.evaluate(NAMES.content);
  return keyTimes(page);
}

/** Runs in the page; waiting for a frame to begin is not counted, it is the screen's and not ours. */
function watchKeys(): void {
  const keyTimesMs: number[] = [];
  Object.assign(globalThis, { keyTimesMs });
  const afterThisTask = (then: () => void) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = then;
    port2.postMessage(null);
  };
  const watch = () => {
    const pressedMs = performance.now();
    let handledMs = pressedMs;
    afterThisTask(() => {
      handledMs = performance.now();
    });
    requestAnimationFrame(() => {
      const frameMs = performance.now();
      afterThisTask(() => keyTimesMs.push(handledMs - pressedMs + (performance.now() - frameMs)));
    });
  };
  addEventListener("keydown", watch, { capture: true });
}

/** From the last byte of a variance of 150 items to the frame in which all its rows stand, in ms. */
async function varianceMs(browser: Browser, url: string): Promise<number> {
  const { page } = await newPage(browser, { viewport: LAPTOP });
  await page.addInitScript(NAMES);
  await page.route(/\/api\/reports\/variance(\?|$)/, async (route) => {
    const answer = await route.fetch();
    const report = (await answer.json()) as { items: { item: string }[] };
    const more = Array.from({ length: ITEMS - report.items.length }, (_, at) => {
      const like = report.items[at % report.items.length];
      return { ...like, item: `${like?.item} ${at}` };
    });
    await route.fulfill({ response: answer, json: { ...report, items: [...report.items, ...more] } });
  });
  await page.addInitScript((rows: number) => {
    const look = () => {
      if (document.querySelectorAll("main tbody tr").length < rows) return requestAnimationFrame(look);
      Object.assign(globalThis, { shownMs: performance.now() });
    };
    addEventListener("DOMContentLoaded", () => look());
  }, ITEMS);
  await page.goto(`${url}/variance`);
  await page.waitForFunction(() => "shownMs" in globalThis);
  const took = await page.evaluate(() => {
    const asked = performance
      .getEntriesByType("resource")
      .findLast(({ name }) => name.includes("/reports/variance"));
    return (
      (globalThis as unknown as { shownMs: number }).shownMs -
      (asked as PerformanceResourceTiming).responseEnd
    );
  });
  await page.context().close();
  return took;
}

const quantile = (values: readonly number[], share: number) =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))] ??
  Number.NaN;

function tell(what: string, values: readonly number[]): number {
  const [median, p95] = [quantile(values, 0.5), quantile(values, 0.95)];
  const figures = `median ${median.toFixed(1)} ms, 95th of 100 ${p95.toFixed(1)} ms, ${values.length} times`;
  process.stdout.write(`${what}: ${figures}\n`);
  return median;
}

function hold(what: string, foundMs: number, mostMs: number): void {
  const isKept = foundMs <= mostMs;
  if (!isKept) process.exitCode = 1;
  process.stdout.write(
    `${isKept ? "kept" : "OVER"}: ${what} ${foundMs.toFixed(1)} ms, budget ${mostMs.toFixed(1)} ms\n`,
  );
}

const bar = await openBar();
const browser = await launchBrowser();
try {
  const shown: number[] = [];
  const counted: number[] = [];
  const bare: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    shown.push(await varianceMs(browser, bar.url));
    counted.push(...(await keyOfCount(browser, bar.url)));
    bare.push(...(await keyOfBareField(browser)));
  }
  const variance = tell("A variance of 150 items after its data", shown);
  const bareKey = tell("A key in a bare field, processor slowed four times", bare);
  const key = tell("A key of the count, slowed likewise", counted);
  process.stdout.write(`A key of the count is ${(key / bareKey).toFixed(2)} x a key in a bare field\n`);
  hold("variance of 150 items", variance, BUDGETS.varianceShownMostMs);
  hold("what the count adds to a key", key - bareKey, BUDGETS.keyAddsMostMs);
  hold("a key of the count in all", key, BUDGETS.keyMostMs);
} finally {
  await browser.close();
  await bar.close();
}
