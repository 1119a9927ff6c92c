import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { Allowed, decide } from "#tests/audit/decide.ts";

/** Asks the registry for advisories against what package-lock.json holds: `npm run audit`. Ends with 1 at one that is not on the list. */
const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const allowed = Allowed.parse(JSON.parse(readFileSync(here("./allowed.json"), "utf8")));
const { stdout, error } = spawnSync(
  "npm",
  ["audit", "--json", "--fetch-timeout=20000", "--fetch-retries=1"],
  {
    cwd: here("../.."),
    encoding: "utf8",
    timeout: 120_000,
    maxBuffer: 1 << 28,
  },
);
const unanswered = JSON.stringify({ message: error?.message ?? "npm gave no answer" });
const { outcome, lines } = decide(
  stdout.trim() === "" ? unanswered : stdout,
  allowed,
  new Date().toISOString().slice(0, 10),
);
for (const line of lines) process.stdout.write(`${line}\n`);
const words = {
  clean: "No advisory against any dependency but those borne.",
  found:
    "Update the package, or put the advisory on tests/audit/allowed.json with the reason why it does not matter here.",
  "not asked": "Nothing is known about advisories from this run.",
};
process.stdout.write(`${words[outcome]}\n`);
process.exitCode = outcome === "found" ? 1 : 0;
