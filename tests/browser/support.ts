import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { copyFileSync, existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, type BrowserContextOptions, chromium, type Page, type Request } from "playwright-core";

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
  /** Stops and goes on with the server's process: connections are taken and nothing is answered, as on a network without a way out. */
  hold: () => void;
  goOn: () => void;
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
  if (book !== null) copyFileSync(loaded(book), db);
  const serving = isSignedIn ? [SERVE_OPEN, db] : [ULLAGE, "serve", "--port", "0", "--db", db];
  const server = spawn(process.execPath, serving, { cwd: root });
  const { url, printed } = await urlOf(server);
  return {
    url,
    printed,
    ullage: (...args) => run([...args, "--db", db]),
    hold: () => void server.kill("SIGSTOP"),
    goOn: () => void server.kill("SIGCONT"),
    close: async () => {
      const ended = new Promise((resolve) => server.once("exit", resolve));
      server.kill("SIGTERM");
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

const databases = new Map<string, string>();

/** A database that the program loaded a book into, once for all files that copy it. */
function loaded(book: string): string {
  const db = databases.get(book) ?? join(mkdtempSync(join(tmpdir(), "ullage-")), "loaded.db");
  if (!databases.has(book)) run(["load", book, "--db", db]);
  databases.set(book, db);
  return db;
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

let browserOfAll: Promise<Browser> | undefined;

/** The one Chromium of all files, started when first asked for; it ends with the process. Pages stay apart by their profiles. */
export function sharedBrowser(): Promise<Browser> {
  browserOfAll ??= launchBrowser();
  return browserOfAll;
}

/** Closes what a file left open in the browser that the next one uses too. */
export async function closePages(browser: Browser | undefined): Promise<void> {
  await Promise.all((browser?.contexts() ?? []).map((context) => context.close()));
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
  watchTraffic(page);
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

/** Pixels by which the page is wider than its window. */
export function overhang(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Something is being fetched, and not only shown as an example of what that looks like. */
const BUSY = "main .busy:not(.look-busy *)";

/** Waits until a heading (that one, after a step within the program) stands, nothing is marked as busy and nothing asked. */
export async function settled(page: Page, heading?: string): Promise<void> {
  await page.locator("main h1", heading === undefined ? {} : { hasText: heading }).waitFor();
  do await page.waitForFunction((busy) => document.querySelector(busy) === null, BUSY);
  while (!(await isQuiet(page)));
}

/** Nothing is asked of the server any more when nothing was for so long; a screen asks on as soon as an answer is drawn. */
const QUIET_MS = 150;

type Traffic = { open: Set<Request>; movedMs: number };
const traffic = new WeakMap<Page, Traffic>();

function watchTraffic(page: Page): void {
  const seen: Traffic = { open: new Set(), movedMs: performance.now() };
  traffic.set(page, seen);
  const ended = (request: Request) => {
    seen.open.delete(request);
    seen.movedMs = performance.now();
  };
  page.on("request", (request) => {
    // What a page asked that is left now is not always told to have failed.
    if (request.isNavigationRequest() && request.frame() === page.mainFrame()) seen.open.clear();
    seen.open.add(request);
    seen.movedMs = performance.now();
  });
  page.on("requestfinished", ended);
  page.on("requestfailed", ended);
}

/** Whether a page asks nothing and has not for a while; waits a little when it does. */
async function isQuiet(page: Page): Promise<boolean> {
  const seen = traffic.get(page);
  if (seen === undefined) throw new Error("Open the page with newPage.");
  if (seen.open.size === 0 && performance.now() - seen.movedMs >= QUIET_MS) return true;
  await new Promise((resolve) => setTimeout(resolve, 25));
  return false;
}
