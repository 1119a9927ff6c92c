import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";

type Chunk = { file: string; isEntry?: boolean; isDynamicEntry?: boolean; imports?: string[] };
type Manifest = Record<string, Chunk>;

/** The count opens with one of two halves, to begin one or to go on with one: the heavier is what it costs. */
const OPENS_AT_ONCE: Record<string, string[]> = {
  "count/CountPage.tsx": ["count/StartCount.tsx", "count/OpenCount.tsx"],
};

/** The texts in English, of the frame and the count, and of everything else. */
const FIRST_TEXTS = "../virtual:texts/en/first.js";
const MORE_TEXTS = "../virtual:texts/en/rest.js";

/**
 * The bytes of gzipped script that each screen loads at first: the entry, the screen, all that either imports, and their texts.
 *
 * Read from a built folder and its manifest; keyed by the screen's source, as "count/CountPage.tsx".
 */
export function firstLoadBytes(folder: string): Map<string, number> {
  const manifest = JSON.parse(readFileSync(join(folder, ".vite/manifest.json"), "utf8")) as Manifest;
  const names = Object.keys(manifest);
  const entries = names.filter((name) => manifest[name]?.isEntry);
  const screens = names.filter((name) => manifest[name]?.isDynamicEntry && /Page\.tsx$/.test(name));
  const loads = screens.map((screen) => {
    const texts = screen in OPENS_AT_ONCE ? [FIRST_TEXTS] : [FIRST_TEXTS, MORE_TEXTS];
    const roots = [...entries, screen, ...texts];
    const halves = OPENS_AT_ONCE[screen] ?? [];
    const ways = halves.length === 0 ? [roots] : halves.map((half) => [...roots, half]);
    return [screen, Math.max(...ways.map((way) => bytesOf(folder, manifest, way)))] as const;
  });
  return new Map(loads);
}

/** Throws when the build has no such module: a part that is not found must not look light. */
function bytesOf(folder: string, manifest: Manifest, roots: readonly string[]): number {
  const files = new Set<string>();
  const visit = (name: string) => {
    const chunk = manifest[name];
    if (chunk === undefined || files.has(chunk.file)) return;
    files.add(chunk.file);
    for (const imported of chunk.imports ?? []) visit(imported);
  };
  for (const root of roots) {
    if (manifest[root] === undefined) throw new Error(`The build has no ${root}.`);
    visit(root);
  }
  const sizes = [...files].map((file) => gzipSync(readFileSync(join(folder, file))).length);
  return sizes.reduce((sum, size) => sum + size, 0);
}
