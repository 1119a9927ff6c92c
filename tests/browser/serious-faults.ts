import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What axe-core holds to be a serious or critical fault on a page as it stands, a line each. */
export async function seriousFaultsOn(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run: () => Promise<AxeResults> } }).axe.run(),
  );
  return violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`);
}
