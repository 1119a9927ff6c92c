import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { SCREENS } from "./screens.ts";
import { goTo, LAPTOP, launchBrowser, newPage, openBar, PHONE } from "./support.ts";

/**
 * Draws every screen of the sample bar, small, into web/docs: `npm run pictures`.
 *
 * On a laptop by day, on a phone at night, and what is printed as it comes on paper.
 */
const FOLDER = fileURLToPath(new URL("../../web/docs/", import.meta.url));

/** How much smaller than life; the words can still be read. */
const SMALLER = 0.6;

/** A4 at 96 dots an inch. */
const PAPER = { width: 794, height: 1123 };

/** What has a printed form of its own, and what is pressed first. */
const PRINTED = [
  ["/report", "The owner’s report"],
  ["/order", "The order"],
  ["/prep?date=2026-11-27", "The prep list"],
  ["/prep/Simple%20Syrup?date=2026-11-27", "A batch card"],
  ["/count?count=Monday&area=Front+well&step=sheet", "The count sheet"],
  ["/variance", "The variance"],
] as const;

/** The pictures of the README, in their own sizes. */
const LARGE = [
  ["week-laptop", "/", { width: 1280, height: 860 }, "light"],
  ["variance-laptop", "/variance", { width: 1280, height: 1000 }, "light"],
  ["order-laptop", "/order", { width: 1280, height: 1000 }, "light"],
  ["prep-tablet", "/prep?date=2026-11-27", { width: 768, height: 1024 }, "light"],
  ["count-phone", "/count?count=Monday&area=Front+well&item=Quillmere+Vodka", PHONE, "dark"],
] as const;

const bar = await openBar();
const browser = await launchBrowser();
try {
  mkdirSync(`${FOLDER}screens`, { recursive: true });
  for (const [name, path, viewport, colorScheme] of LARGE) {
    await shot(browser, { path, viewport, colorScheme }, (page) =>
      page.screenshot({ path: `${FOLDER}${name}.png` }),
    );
  }
  const rows: string[] = [];
  for (const [path, heading] of SCREENS) {
    const name = fileOf(path);
    for (const [kind, viewport, colorScheme] of [
      ["laptop", LAPTOP, "light"],
      ["phone", PHONE, "dark"],
    ] as const) {
      await small(browser, `${name}-${kind}`, { path, viewport, colorScheme });
    }
    rows.push(
      `| ${heading || "Me"} | ![on a laptop](screens/${name}-laptop.jpg) | ![on a phone, in the dark](screens/${name}-phone.jpg) |`,
    );
  }
  const papers: string[] = [];
  for (const [path, title] of PRINTED) {
    const name = `${fileOf(path.replace(/\?.*/, ""))}-print`;
    await small(browser, name, { path, viewport: PAPER, colorScheme: "light", isPrinted: true });
    papers.push(`| ${title} | ![printed](screens/${name}.jpg) |`);
  }
  await small(browser, "week-german", { path: "/", viewport: LAPTOP, colorScheme: "light", language: "de" });
  writeFileSync(`${FOLDER}SCREENS.md`, documentOf(rows, papers));
} finally {
  await browser.close();
  await bar.close();
}

type View = {
  path: string;
  viewport: { width: number; height: number };
  colorScheme: "light" | "dark";
  isPrinted?: boolean;
  language?: string;
};

async function small(from: Browser, name: string, view: View): Promise<void> {
  await shot(from, { ...view, deviceScaleFactor: SMALLER }, (page) =>
    page.screenshot({ path: `${FOLDER}screens/${name}.jpg`, type: "jpeg", quality: 60 }),
  );
}

async function shot(
  from: Browser,
  { path, isPrinted = false, language = "en", ...options }: View & { deviceScaleFactor?: number },
  take: (page: Page) => Promise<unknown>,
): Promise<void> {
  const { page } = await newPage(from, options);
  await page.addInitScript({ content: `localStorage.setItem("ullage-language", "${language}")` });
  if (isPrinted) await page.emulateMedia({ media: "print" });
  await goTo(page, bar.url + path);
  await take(page);
  await page.context().close();
}

function fileOf(path: string): string {
  const name = decodeURIComponent(path).replace(/[^a-z]+/gi, "-");
  return name.replace(/^-|-$/g, "").toLowerCase() || "week";
}

function documentOf(rows: readonly string[], papers: readonly string[]): string {
  return `# Every screen

Written by \`npm run pictures\` from the sample bar: on a laptop by day and on a phone at night.

| | laptop | phone |
|---|---|---|
${rows.join("\n")}

## On paper

| | |
|---|---|
${papers.join("\n")}

## In German

![This week in German](screens/week-german.jpg)
`;
}
