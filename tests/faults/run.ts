import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { killAgainAndAgain } from "#tests/faults/kills.ts";
import { buildStale, root } from "#tests/support/build.ts";

/** Kills the real server in the middle of mixed acts: `npm run faults [-- --kills 100] [--seed N]`. Ends with 1 at the first loss. */
function numberAfter(name: string, otherwise: number): number {
  const at = process.argv.indexOf(name);
  return at < 0 ? otherwise : Number(process.argv[at + 1]);
}

buildStale();
const folder = mkdtempSync(join(tmpdir(), "ullage-seed-"));
try {
  const seedFile = join(folder, "seed.db");
  const program = join(root, "tests", "bench", "ullage.mjs");
  const load = spawnSync(process.execPath, [program, "load", "sample-sales", "--db", seedFile], {
    cwd: root,
    stdio: "inherit",
  });
  if (load.status !== 0) throw new Error("The sample bar cannot be loaded.");
  const [kills, seed] = [numberAfter("--kills", 100), numberAfter("--seed", Date.now() % 1_000_000)];
  const say = (line: string): void => void process.stdout.write(`${line}\n`);
  say(`${kills} kills, seed ${seed}`);
  const run = await killAgainAndAgain(seedFile, { kills, seed, say });
  say(
    `\n${run.kills} kills survived; ${run.acknowledged} acts acknowledged and found once and whole (${Object.entries(
      run.byKind,
    )
      .map(([kind, count]) => `${count} ${kind}`)
      .join(", ")}); ${run.unanswered} cut off unanswered, each there whole or not at all.`,
  );
  for (const line of run.wrong) say(line);
  process.exitCode = run.wrong.length === 0 ? 0 : 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
