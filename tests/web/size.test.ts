import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { BUDGETS } from "../bench/budgets.ts";
import { firstLoadBytes } from "../bench/sizes.ts";

const BUILT = process.env.ULLAGE_WEB ?? join(import.meta.dirname, "../../dist/web");
const isBuilt = existsSync(join(BUILT, ".vite/manifest.json"));

describe.runIf(isBuilt)("what a screen loads before it can be used", () => {
  const loads = isBuilt ? [...firstLoadBytes(BUILT)] : [];

  it("finds every screen in the build", () => {
    expect(loads.length).toBeGreaterThanOrEqual(12);
    const files = Object.keys(JSON.parse(readFileSync(join(BUILT, ".vite/manifest.json"), "utf8")));
    for (const part of ["CountPage", "StartCount", "OpenCount"]) expect(files).toContain(`count/${part}.tsx`);
    expect(loads.map(([screen]) => screen)).toContain("count/CountPage.tsx");
  });

  it.each(loads)("%s, with %i bytes, keeps to its budget", (screen, bytes) => {
    const isCount = screen === "count/CountPage.tsx";
    // Less than React alone would mean that the measuring is broken.
    expect(bytes).toBeGreaterThan(50_000);
    expect(bytes).toBeLessThanOrEqual(
      isCount ? BUDGETS.countFirstLoadMostBytes : BUDGETS.screenFirstLoadMostBytes,
    );
  });
});
