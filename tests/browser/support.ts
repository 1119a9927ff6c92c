import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";

const root = new URL("../..", import.meta.url).pathname;
const ULLAGE = join(root, "server/bin/ullage.mjs");
const SERVE_OPEN = join(root, "tests/browser/serve-open.mjs");

/** The sample bar on a database of its own, served by the real program. */
export type OpenBar = {
  url: string;
  /** What the server has printed so far. */
  printed: () => string;
  /** Runs another command of the program on the same database and gives what it printed. */
  ullage: (...args: string[]) => string;
  close: () => Promise<void>;
};

/** Loads a book (the sample bar, or none for an empty database) and serves it on a free port, its owner signed in or not. */
export async function openBar({
  book = "sample-sales",
  isSignedIn = true,
}: {
  book?: string | null;
  isSignedIn?: boolean;
} = {}): Promise<OpenBar> {
  const folder = mkdtempSync(join(tmpdir(), "ullage-"));
  const db = join(folder, "bar.db");
  if (book !== null) run(["load", book, "--db", db]);
  const serving = isSignedIn ? [SERVE_OPEN, db] : [ULLAGE, "serve", "--port", "0", "--db", db];
  const server = spawn(process.execPath, serving, { cwd: root });
  const { url, printed } = await urlOf(server);
  return {
    url,
    printed,
    ullage: (...args) => run([...args, "--db", db]),
    close: async () => {
      const ended = new Promise((resolve) => server.once("exit", resolve));
      server.kill("SIGTERM");
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function run(args: string[]): string {
  const { status, stdout, stderr } = spawnSync(process.execPath, [ULLAGE, ...args], {
    cwd: root,
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(`ullage ${args.join(" ")} ended with ${status}:\n${stdout}${stderr}`);
  return stdout;
}

function urlOf(server: ChildProcess): Promise<Pick<OpenBar, "url" | "printed">> {
  return new Promise((resolve, reject) => {
    let printed = "";
    const read = (chunk: Buffer) => {
      printed += chunk.toString();
      const url = /http:\/\/\S+:\d+/.exec(printed)?.[0];
      if (url !== undefined) resolve({ url, printed: () => printed });
    };
    server.stdout?.on("data", read);
    server.stderr?.on("data", read);
    server.once("exit", (status) => reject(new Error(`The server ended with ${status}:\n${printed}`)));
  });
}

const PLACES = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

/** A real Chromium: the one named in ULLAGE_CHROMIUM, else where Debian puts it. */
export function launchBrowser(...more: string[]): Promise<Browser> {
  const executablePath = process.env.ULLAGE_CHROMIUM ?? PLACES.find((place) => existsSync(place));
  if (executablePath === undefined) {
    throw new Error(
      "The browser tests need Chromium: apt-get install chromium, or name it in ULLAGE_CHROMIUM.",
    );
  }
  return chromium.launch({
    executablePath,
    args: [
      "--headless",
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--disable-background-networking",
      ...more,
    ],
  });
}

export const PHONE = { width: 390, height: 844 };
export const TABLET = { width: 768, height: 1024 };
export const LAPTOP = { width: 1280, height: 860 };

/** A page in a fresh profile, and everything that went wrong on it: errors thrown, logged, and requests off the machine. */
export async function newPage(
  browser: Browser,
  options: BrowserContextOptions = {},
): Promise<{ page: Page; faults: string[] }> {
  const context = await browser.newContext({ locale: "en-US", serviceWorkers: "block", ...options });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on("pageerror", (error) => faults.push(`thrown: ${error.message}`));
  page.on("console", (message) => {
    if (message.type() === "error") faults.push(`logged: ${message.text()} (${message.location().url})`);
  });
  page.on("request", (request) => {
    const { hostname, protocol } = new URL(request.url());
    if (protocol.startsWith("http") && hostname !== "127.0.0.1") faults.push(`asked: ${request.url()}`);
  });
  return { page, faults };
}

/** Goes to a screen and waits until it has drawn its answers. */
export async function goTo(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await settled(page);
}

/** Waits until a heading (that one, after a step within the program) stands and nothing is marked as busy. */
export async function settled(page: Page, heading?: string): Promise<void> {
  await page.locator("main h1", heading === undefined ? {} : { hasText: heading }).waitFor();
  await page.waitForLoadState("networkidle");
  await page.waitForFunction(() => document.querySelector("main .busy") === null);
}
