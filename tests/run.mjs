// npm test: builds what is stale, sees to a browser, runs every test.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { buildStale, root } from "../server/bin/build.mjs";

const BROWSERS = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/opt/google/chrome/chrome",
];

function findBrowser() {
  const named = process.env.ULLAGE_CHROMIUM;
  if (named) return existsSync(named) ? named : undefined;
  return BROWSERS.find((path) => existsSync(path));
}

function run(command, args, options = {}) {
  return spawnSync(command, args, { cwd: root, stdio: "inherit", ...options }).status ?? 1;
}

function installBrowser() {
  if (!existsSync("/usr/bin/apt-get") || process.getuid?.() !== 0) return;
  process.stderr.write("Installing Chromium for the browser tests (apt-get install chromium) …\n");
  const quiet = {
    stdio: ["ignore", "ignore", "inherit"],
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
  };
  if (run("apt-get", ["update", "-qq"], quiet) === 0) {
    run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", "chromium"], quiet);
  }
}

buildStale({ withWeb: true });
if (findBrowser() === undefined) installBrowser();
const browser = findBrowser();
if (browser === undefined) {
  process.stderr.write(
    "The browser tests need Chromium or Chrome. Install it (Debian: apt-get install chromium; macOS: brew install --cask chromium;\n" +
      "Windows: winget install Google.Chrome) and, where it is found nowhere usual, name it in ULLAGE_CHROMIUM.\n",
  );
  process.exit(2);
}
process.exit(
  run(
    process.execPath,
    [
      join("node_modules", "vitest", "vitest.mjs"),
      "run",
      "--config",
      "tests/vitest.config.ts",
      ...process.argv.slice(2),
    ],
    {
      env: { ...process.env, ULLAGE_CHROMIUM: browser },
    },
  ),
);
