// Serves a database with its owner signed in already, for tests of the screens behind the sign-in: the product itself
// has no such switch. Usage: node tests/browser/serve-open.mjs FILE
import { closeDatabase, openDatabase } from "#db/open.ts";
import { DEMO_OWNER } from "#server/people/actor.ts";
import { startServer } from "#server/serve.ts";

const db = openDatabase(process.argv[2]);
const server = await startServer(db, {
  port: 0,
  host: "127.0.0.1",
  tls: null,
  signIn: { openAs: DEMO_OWNER },
});
process.stdout.write(`${server.url}\n`);
process.once("SIGTERM", async () => {
  await server.close();
  closeDatabase(db);
});
