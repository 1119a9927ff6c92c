import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults, RunOptions } from "axe-core";
import type { Page } from "playwright-core";

type Axe = { run: (context: { exclude: string[][] }, options: RunOptions) => Promise<AxeResults> };

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** The rules of axe-core that look at colours: all that can differ when a page seen already is drawn in its other palette. */
export const OF_COLOUR = ["color-contrast", "link-in-text-block"];

/** The rows of a table are made alike: those after so many are left out, as each costs as much as the first. */
const MANY_ROWS = "tbody tr:nth-child(n + 31)";

/** What axe-core holds to be a fault on a page as it stands, minor ones and its good practice included, a line each; by all its rules or by some. */
export async function accessibilityFaultsOn(page: Page, rules?: readonly string[]): Promise<string[]> {
  // Injected by the browser's own tools, as the page's security policy would not let it in.
  if (!(await page.evaluate(() => "axe" in globalThis))) await page.evaluate(AXE);
  const options: RunOptions = { resultTypes: ["violations"], preload: false, selectors: false };
  if (rules !== undefined) options.runOnly = { type: "rule", values: [...rules] };
  const { violations } = await page.evaluate(
    ([exclude, asked]) => {
      const { axe } = globalThis as unknown as { axe: Axe };
      return axe.run({ exclude: [[exclude]] }, asked);
    },
    [MANY_ROWS, options] as const,
  );
  return violations.map(
    ({ id, impact, nodes }) =>
      `${id} (${impact}): ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`,
  );
}
