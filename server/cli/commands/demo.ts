import { existsSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { closeDatabase, openDatabase } from "#db/open.ts";
import { loadFolder } from "#server/cli/commands/load.ts";
import { orderView } from "#server/cli/commands/order.ts";
import { prepView } from "#server/cli/commands/prep.ts";
import { serveFile } from "#server/cli/commands/serve.ts";
import { varianceView } from "#server/cli/commands/variance.ts";
import { printReport } from "#server/cli/output.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { InputError } from "#server/input-error.ts";
import { DEMO_OWNER } from "#server/people/actor.ts";
import { orderFor } from "#server/reports/order.ts";
import { prepFor } from "#server/reports/prep.ts";
import { varianceFor } from "#server/reports/variance.ts";
import { openWorld } from "#server/world.ts";

const DEMO_FILE = "data/demo.db";

/** Loads the sample bar into a fresh database of its own, prints its latest week and serves it. */
export async function demoCommand(
  options: CommonOptions & { port?: string; serve?: boolean },
): Promise<undefined> {
  const file = freshFile(options);
  const { said } = await loadFolder(sampleFolder(), file);
  for (const line of said) process.stdout.write(`${line}\n`);
  const db = openDatabase(file);
  try {
    const world = await openWorld(db);
    const { currency } = world.facts.catalogue.venue;
    process.stdout.write("\n");
    printReport(varianceView(await varianceFor(world, {}), currency), "table");
    process.stdout.write("\n");
    printReport(orderView(await orderFor(world, {}), currency), "table");
    process.stdout.write("\n");
    printReport(prepView(await prepFor(world, {})), "table");
    process.stdout.write("\n");
  } finally {
    closeDatabase(db);
  }
  if (options.serve !== false) await serveFile(file, options, { openAs: DEMO_OWNER });
  return undefined;
}

/** The demo's own file is made anew each time; a file that a person named must not be there yet. */
function freshFile({ db }: CommonOptions): string {
  if (db !== undefined) {
    if (existsSync(db))
      throw new InputError(
        `${db} is there already; the demo wants a new file, so that nothing of yours is lost.`,
      );
    return db;
  }
  for (const name of [DEMO_FILE, `${DEMO_FILE}-wal`, `${DEMO_FILE}-shm`]) rmSync(name, { force: true });
  return DEMO_FILE;
}

function sampleFolder(): string {
  const here = dirname(fileURLToPath(import.meta.url));
  // From the source, from what is compiled of it, and from the few files that is put into.
  const places = ["../../../sample-sales", "../../../../sample-sales", "../../sample-sales"].map((place) =>
    join(here, place),
  );
  const found = places.find((place) => existsSync(join(place, "venue.json")));
  if (found === undefined)
    throw new InputError("The sample bar is not part of this installation; see sample-sales in the source.");
  return found;
}
