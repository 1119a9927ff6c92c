import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize } from "node:path";
import { expect, it } from "vitest";

/** Which folders each folder may import. Read it as the architecture; change it with a decision note. */
const MAY_IMPORT: Record<string, string[]> = {
  engine: ["engine"],
  db: ["db", "engine"],
  server: ["server", "db", "engine"],
  web: ["web", "engine"],
};

/** Outside packages the engine may use: all pure functions of their arguments. */
const ENGINE_PACKAGES = [
  "zod",
  "date-fns",
  "@date-fns/tz",
  "papaparse",
  "fuzzball",
  "jstat",
  "ml-matrix",
  "highs",
];

const IMPORT =
  /^\s*(?:import|export)\s+(type\s)?[^"';]*?from\s+["']([^"']+)["']|^\s*import\s+["']([^"']+)["']|\bimport\(\s*["']([^"']+)["']\s*\)/gm;

type Import = { file: string; isTypeOnly: boolean; target: string };

function importsIn(file: string, text: string): Import[] {
  return [...text.matchAll(IMPORT)].map((match) => ({
    file,
    isTypeOnly: match[1] !== undefined,
    target: match[2] ?? match[3] ?? match[4] ?? "",
  }));
}

/** The top folder an import leads to, or undefined for an outside package. */
function folderOf(file: string, target: string): string | undefined {
  if (target.startsWith("#")) return target.slice(1).split("/")[0];
  if (target.startsWith(".")) return normalize(join(dirname(file), target)).split("/")[0];
  return undefined;
}

function packageOf(target: string): string {
  const parts = target.split("/");
  return target.startsWith("@") ? parts.slice(0, 2).join("/") : (parts[0] ?? "");
}

function isBroken({ file, target, isTypeOnly }: Import): boolean {
  const from = file.split("/")[0] ?? "";
  const to = folderOf(file, target);
  if (to === undefined) return from === "engine" && !ENGINE_PACKAGES.includes(packageOf(target));
  if (from === "web" && to === "server") return !isTypeOnly;
  return !MAY_IMPORT[from]?.includes(to);
}

const files = Object.keys(MAY_IMPORT).flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => `${folder}/${name}`),
);

it("keeps imports pointing inward: web and server to engine, never back", () => {
  const broken = files.flatMap((file) => importsIn(file, readFileSync(file, "utf8"))).filter(isBroken);
  expect(broken.map(({ file, target }) => `${file} must not import ${target}`)).toEqual([]);
});

it.each([
  ["engine/stock/item.ts", 'import { db } from "#db/open.ts";'],
  ["engine/stock/item.ts", 'import { readFileSync } from "node:fs";'],
  ["engine/stock/item.ts", 'export { x } from "../../server/app.ts";'],
  ["engine/stock/item.ts", 'const x = await import("#server/app.ts");'],
  ["db/open.ts", 'import {\n  app,\n} from "#server/app.ts";'],
  ["web/api.ts", 'import { app } from "#server/app.ts";'],
  ["web/api.ts", 'import "#db/open.ts";'],
])("sees that %s breaks the rule with: %s", (file, text) => {
  expect(importsIn(file, text).filter(isBroken)).toHaveLength(1);
});

it("lets the screens take types, and types alone, from the server", () => {
  const imports = importsIn("web/api.ts", 'import type { AppType } from "#server/app.ts";');
  expect(imports.filter(isBroken)).toEqual([]);
});
