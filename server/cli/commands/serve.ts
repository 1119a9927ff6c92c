import { closeDatabase, openDatabase } from "#db/open.ts";
import { type ListenOptions, readListening } from "#server/cli/listening.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { databaseFile } from "#server/cli/session.ts";
import { startServer } from "#server/serve.ts";

export async function serveCommand(options: CommonOptions & ListenOptions): Promise<undefined> {
  await serveFile(databaseFile(options), options);
  return undefined;
}

/** Serves a database file until the process is told to stop; what is under way is finished first. */
export async function serveFile(file: string, options: ListenOptions): Promise<void> {
  const listening = readListening(options);
  const db = openDatabase(file);
  const server = await startServer(db, listening);
  process.stdout.write(`Ullage is at ${server.url} (database ${file}). Stop it with Ctrl-C.\n`);
  await new Promise<void>((resolve) => {
    process.once("SIGINT", resolve);
    process.once("SIGTERM", resolve);
  });
  await server.close();
  closeDatabase(db);
}
