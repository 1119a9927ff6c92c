import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { verifyChain } from "#db/history/chain.ts";
import { closeDatabase, openDatabase } from "#db/open.ts";
import { differencesFrom, killed, Model, sendAgain, startServer, useBar } from "#tests/faults/killed-bar.ts";
import { randomStream } from "#tests/simulate/random.ts";

export type KillRun = {
  kills: number;
  acknowledged: number;
  unanswered: number;
  byKind: Record<string, number>;
  wrong: string[];
};

const [SHORTEST_MS, LONGEST_MS] = [50, 1_200];

/**
 * Serves one database again and again, each time killed (SIGKILL) at a random moment while four people act, and compares it
 * each time with what was acknowledged. Ends at the first difference.
 */
export async function killAgainAndAgain(
  seedFile: string,
  { kills, seed, say = () => undefined }: { kills: number; seed: number; say?: (line: string) => void },
): Promise<KillRun> {
  const folder = mkdtempSync(join(tmpdir(), "ullage-kills-"));
  const file = join(folder, "bar.db");
  copyFileSync(seedFile, file);
  const random = randomStream(seed, "kills");
  const model = new Model();
  const actsBefore = actsIn(file);
  let unanswered = 0;
  let wrong: string[] = [];
  let done = 0;
  try {
    for (; done < kills && wrong.length === 0; done += 1) {
      const { server, url } = await startServer(file);
      const send = { url, model, random };
      const askedBefore = model.acts.length;
      await sendAgain(send);
      let isOver = false;
      const acting = useBar(send, () => isOver);
      await Promise.race([acting, pause(SHORTEST_MS + random.uniform() * (LONGEST_MS - SHORTEST_MS))]);
      isOver = true;
      await killed(server);
      await acting;
      unanswered += model.acts.slice(askedBefore).filter(({ outcome }) => outcome === "unknown").length;
      wrong = await differencesFrom(model, file, actsBefore);
      say(
        `kill ${done + 1}: ${model.acts.length} acts so far, ${wrong.length === 0 ? "all as acknowledged" : wrong.join("; ")}`,
      );
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  const kept = model.acts.filter(({ outcome }) => outcome === "kept");
  const byKind: Record<string, number> = {};
  for (const { kind } of kept) byKind[kind] = (byKind[kind] ?? 0) + 1;
  return { kills: done, acknowledged: kept.length, unanswered, byKind, wrong };
}

function actsIn(file: string): number {
  const db = openDatabase(file);
  try {
    return verifyChain(db).acts;
  } finally {
    closeDatabase(db);
  }
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
