import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Plugin } from "vite";

/**
 * Files that are not fetched ahead: letters of alphabets other than Latin come when a name uses them, the reader of barcodes
 * (a megabyte) when a browser without its own scans first.
 */
const LEFT_OUT = /\.map$|\.wasm$|(cyrillic|greek|vietnamese|latin-ext)[^/]*\.woff2$/;

const PUBLIC_FILES = ["/", "/icon.svg", "/manifest.webmanifest", "/no-eval.js"];

/** Writes sw.js with the list of what was just built, so that one version of the screens is kept whole. */
export function offlineWorker(): Plugin {
  return {
    name: "ullage-offline-worker",
    apply: "build",
    // Last of all: files of style alone are taken out of the bundle before, and one listed in vain would keep nothing.
    enforce: "post",
    generateBundle(_options, bundle) {
      const built = Object.keys(bundle).filter((name) => name.startsWith("assets/") && !LEFT_OUT.test(name));
      const files = [...PUBLIC_FILES, ...built.map((name) => `/${name}`)].sort();
      const worker = readFileSync(join(import.meta.dirname, "worker.js"), "utf8");
      const version = createHash("sha256").update(files.join("\n")).update(worker).digest("hex").slice(0, 12);
      this.emitFile({
        type: "asset",
        fileName: "sw.js",
        source: `const VERSION = ${JSON.stringify(version)};\nconst FILES = ${JSON.stringify(files)};\n${worker}`,
      });
    },
  };
}
