// Compiles what is stale: TypeScript into dist/, and with the screens asked for, those into dist/web.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, rmdirSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

function newestMs(folder) {
  let newest = 0;
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true, recursive: true })) {
    if (!entry.isFile()) continue;
    newest = Math.max(newest, statSync(join(entry.parentPath ?? entry.path, entry.name)).mtimeMs);
  }
  return newest;
}

function isStale(stamp, folders) {
  const file = join(root, "dist", stamp);
  if (!existsSync(file)) return true;
  const builtMs = statSync(file).mtimeMs;
  return folders.some((folder) => newestMs(folder) > builtMs);
}

function run(stamp, script, args) {
  const startedAt = new Date();
  const result = spawnSync(process.execPath, [join(root, ...script), ...args], {
    cwd: root,
    stdio: ["ignore", "pipe", "pipe"],
    encoding: "utf8",
  });
  if (result.status !== 0) {
    process.stderr.write(`${result.stdout}${result.stderr}\nThe build failed; see the messages above.\n`);
    process.exit(2);
  }
  const file = join(root, "dist", stamp);
  mkdirSync(join(root, "dist"), { recursive: true });
  writeFileSync(file, "");
  // The stamp is as old as the start, so that an edit made during the build is not missed.
  utimesSync(file, startedAt, startedAt);
}

const LOCK = join(root, "dist", ".building");
const LOCK_OLD_MS = 120_000;

/** One build at a time: a second command waits for the first, whose half-written files it must not run. */
function whileLocked(work) {
  mkdirSync(join(root, "dist"), { recursive: true });
  for (;;) {
    try {
      mkdirSync(LOCK);
      break;
    } catch {
      const heldMs = existsSync(LOCK) ? Date.now() - statSync(LOCK).mtimeMs : 0;
      if (heldMs > LOCK_OLD_MS) rmdirSync(LOCK);
      else Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 100);
    }
  }
  process.once("exit", releaseLock);
  try {
    work();
  } finally {
    process.off("exit", releaseLock);
    releaseLock();
  }
}

function releaseLock() {
  if (existsSync(LOCK)) rmdirSync(LOCK);
}

function buildIfStale(stamp, folders, script, args, notice) {
  if (!isStale(stamp, folders)) return;
  whileLocked(() => {
    if (!isStale(stamp, folders)) return;
    if (notice !== undefined) process.stderr.write(`${notice}\n`);
    run(stamp, script, args);
  });
}

/** Brings dist/ up to date; an installed package has no sources and nothing to build. */
export function buildStale({ withWeb = false } = {}) {
  if (!existsSync(join(root, "tsconfig.json")) || !existsSync(join(root, "node_modules", "typescript")))
    return;
  const sources = ["engine", "db", "server"];
  const tsc = ["node_modules", "typescript", "bin", "tsc"];
  buildIfStale(".built", sources, tsc, ["-p", "server/tsconfig.json"]);
  buildIfStale(".bundled", sources, ["server", "bin", "bundle.mjs"], []);
  if (!withWeb) return;
  const vite = ["node_modules", "vite", "bin", "vite.js"];
  const build = ["build", "--config", "web/vite.config.ts", "--logLevel", "warn"];
  buildIfStale(".built-web", ["engine", "server", "web"], vite, build, "Building the screens …");
}

if (process.argv[1] === fileURLToPath(import.meta.url)) buildStale({ withWeb: true });
