import { Hono } from "hono";
import type { Db } from "#db/open.ts";
import { apiDocument } from "#server/api-document.ts";
import type { BackupTrouble } from "#server/backups/schedule.ts";
import { boundedBody } from "#server/doors/body.ts";
import { safeHeaders } from "#server/doors/headers.ts";
import { type HostRule, ownHostOnly } from "#server/doors/host.ts";
import { answerFault } from "#server/http.ts";
import type { Actor } from "#server/people/actor.ts";
import { openDoor } from "#server/people/door.ts";
import { guard } from "#server/people/guard.ts";
import { type HashCost, STRONG } from "#server/people/secrets.ts";
import { areaRoutes } from "#server/routes/areas.ts";
import { catalogueRoutes } from "#server/routes/catalogue.ts";
import { causeRoutes } from "#server/routes/causes.ts";
import { countRoutes } from "#server/routes/counts.ts";
import { entryRoutes } from "#server/routes/entries.ts";
import { historyRoutes } from "#server/routes/history.ts";
import { orderRoutes } from "#server/routes/orders.ts";
import { peopleRoutes } from "#server/routes/people.ts";
import { planningRoutes } from "#server/routes/planning.ts";
import { priceListRoutes } from "#server/routes/price-lists.ts";
import { reportRoutes } from "#server/routes/reports.ts";
import { ringNameRoutes } from "#server/routes/ring-names.ts";
import { salesRoutes } from "#server/routes/sales.ts";
import { signInRoutes } from "#server/routes/sign-in.ts";
import { specRoutes } from "#server/routes/specs.ts";
import { stockRoutes } from "#server/routes/stock.ts";
import { supplierRoutes } from "#server/routes/suppliers.ts";
import { venueRoutes } from "#server/routes/venue.ts";
import { weekRoutes } from "#server/routes/week.ts";
import { screens } from "#server/static.ts";
import { warningsOf } from "#server/warnings.ts";
import { inAskedLanguage } from "#server/words/in-language.ts";

export type AppDeps = {
  db: Db;
  /** The clock, handed in: entries are stamped with it. */
  now: () => Date;
  /** Where the built screens are. */
  webFolder: string;
  /** Whether people sign in, the only default; or who is signed in without asking, on this machine alone. */
  signIn?: "required" | { openAs: Actor };
  /** What hashing a password costs; less than the default is for tests. */
  hashing?: HashCost;
  /** By which names it answers; left out, by those of this machine alone. */
  host?: HostRule;
  /** What is wrong with scheduled backups; null while nothing is. */
  backupTrouble?: () => BackupTrouble | null;
};

const LOOPBACK: HostRule = { listensHere: true, isSecured: false, names: [] };

/** The whole server as a function from request to response. */
export function createApp({
  db,
  now,
  webFolder,
  signIn = "required",
  hashing = STRONG,
  host = LOOPBACK,
  backupTrouble = () => null,
}: AppDeps) {
  const stamp = { now: () => `${now().toISOString().slice(0, 19)}Z` };
  const app = new Hono();
  app.use(safeHeaders());
  app.use(ownHostOnly(host));
  app.use("/api/*", inAskedLanguage());
  const door = openDoor({ db, now, hashing });
  app.use("/api/*", guard(door, signIn === "required" ? null : signIn.openAs));
  app.use("/api/*", boundedBody());
  const api = app
    .route(
      "/api",
      weekRoutes(db, () => warningsOf(db, now(), backupTrouble())),
    )
    .route("/api/sign-in", signInRoutes(door))
    .route("/api", peopleRoutes(door))
    .route("/api/venue", venueRoutes(db))
    .route("/api/reports", reportRoutes(db))
    .route("/api/reports", planningRoutes(db))
    .route("/api/catalogue", catalogueRoutes(db))
    .route("/api/price-lists", priceListRoutes(db))
    .route("/api/counts", countRoutes(db, stamp))
    .route("/api/areas", areaRoutes(db))
    .route("/api/suppliers", supplierRoutes(db))
    .route("/api/causes", causeRoutes(db, stamp))
    .route("/api/sales", salesRoutes(db, stamp))
    .route("/api/ring-names", ringNameRoutes(db, stamp))
    .route("/api/stock", stockRoutes(db))
    .route("/api/orders", orderRoutes(db, stamp))
    .route("/api", historyRoutes(db, stamp))
    .route("/api", specRoutes(db))
    .route("/api", entryRoutes(db, stamp));
  app.get("/api/openapi.json", async (c) => c.json(await apiDocument(app)));
  app.all("/api/*", (c) =>
    c.json({ problems: [{ field: "", message: `There is nothing at ${c.req.path}.` }] }, 404),
  );
  app.route("/", screens(webFolder));
  app.onError(answerFault);
  return api;
}

export type AppType = ReturnType<typeof createApp>;
