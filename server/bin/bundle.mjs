// Puts the compiled program and the packages it uses into few files: to find and open some four hundred takes a third of a second.
import { existsSync, readdirSync, rmSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { root } from "./build.mjs";

const BUNDLE = join(root, "dist", "bundle");
/** Programs that are running still open files of the build before. */
const KEPT_MS = 24 * 3600 * 1000;

/** Packages with a part that is no JavaScript, or so large that it is better opened only where it is needed. */
const APART = [/^better-sqlite3$/, /^@node-rs\//, /^highs$/, /^date-holidays/];

async function bundle() {
  const packages = createRequire(join(root, "node_modules", "vite", "package.json"));
  const { rolldown } = await import(pathToFileURL(packages.resolve("rolldown")).href);
  const server = join(root, "dist", "server");
  const built = await rolldown({
    cwd: root,
    platform: "node",
    external: APART,
    input: {
      main: join(server, "main.js"),
      "import-worker": join(server, "import-worker.js"),
      "undo-worker": join(server, "undo-worker.js"),
      "backup-worker": join(server, "backups", "backup-worker.js"),
    },
  });
  await built.write({
    dir: BUNDLE,
    format: "esm",
    entryFileNames: "[name].js",
    chunkFileNames: "[name]-[hash].js",
  });
}

function removeOld() {
  for (const name of readdirSync(BUNDLE)) {
    const file = join(BUNDLE, name);
    if (Date.now() - statSync(file).mtimeMs > KEPT_MS) rmSync(file, { force: true });
  }
}

// Without the packages for building, the program runs from its single files.
if (existsSync(join(root, "node_modules", "vite"))) {
  await bundle();
  removeOld();
} else rmSync(BUNDLE, { recursive: true, force: true });
