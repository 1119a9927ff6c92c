import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults, RunOptions } from "axe-core";
import type { Page } from "playwright-core";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What axe-core holds to be a fault on a page as it stands, minor ones and its good practice included, a line each. */
export async function accessibilityFaultsOn(page: Page): Promise<string[]> {
  // Injected by the browser's own tools, as the page's security policy would not let it in.
  if (!(await page.evaluate(() => "axe" in globalThis))) await page.evaluate(AXE);
  const options: RunOptions = { resultTypes: ["violations"], preload: false, selectors: false };
  const { violations } = await page.evaluate(
    (asked) =>
      (globalThis as unknown as { axe: { run: (options: RunOptions) => Promise<AxeResults> } }).axe.run(
        asked,
      ),
    options,
  );
  return violations.map(
    ({ id, impact, nodes }) =>
      `${id} (${impact}): ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`,
  );
}
