import { closeDatabase, openDatabase } from "#db/open.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { databaseFile } from "#server/cli/session.ts";
import { InputError } from "#server/input-error.ts";
import { startServer } from "#server/serve.ts";

export async function serveCommand(
  options: CommonOptions & { port?: string; host?: string },
): Promise<undefined> {
  await serveFile(databaseFile(options), options);
  return undefined;
}

/** Serves a database file until the process is told to stop; what is under way is finished first. */
export async function serveFile(
  file: string,
  { port, host }: { port?: string; host?: string },
): Promise<void> {
  const db = openDatabase(file);
  const server = await startServer(db, { port: readPort(port), host: host ?? "127.0.0.1" });
  process.stdout.write(`Ullage is at ${server.url} (database ${file}). Stop it with Ctrl-C.\n`);
  await new Promise<void>((resolve) => {
    process.once("SIGINT", resolve);
    process.once("SIGTERM", resolve);
  });
  await server.close();
  closeDatabase(db);
}

function readPort(text = "4680"): number {
  const port = Number(text);
  if (!Number.isInteger(port) || port < 0 || port > 65_535) {
    throw new InputError(`--port: "${text}" is no port; write a number from 0 to 65535.`);
  }
  return port;
}
