import { Hono } from "hono";
import { bodyLimit } from "hono/body-limit";
import { csrf } from "hono/csrf";
import { secureHeaders } from "hono/secure-headers";
import type { Db } from "#db/open.ts";
import { apiDocument } from "#server/api-document.ts";
import { answerFault } from "#server/http.ts";
import { areaRoutes } from "#server/routes/areas.ts";
import { catalogueRoutes } from "#server/routes/catalogue.ts";
import { causeRoutes } from "#server/routes/causes.ts";
import { countRoutes } from "#server/routes/counts.ts";
import { entryRoutes } from "#server/routes/entries.ts";
import { orderRoutes } from "#server/routes/orders.ts";
import { planningRoutes } from "#server/routes/planning.ts";
import { reportRoutes } from "#server/routes/reports.ts";
import { salesRoutes } from "#server/routes/sales.ts";
import { specRoutes } from "#server/routes/specs.ts";
import { stockRoutes } from "#server/routes/stock.ts";
import { venueRoutes } from "#server/routes/venue.ts";
import { weekRoutes } from "#server/routes/week.ts";
import { screens } from "#server/static.ts";

export type AppDeps = {
  db: Db;
  /** The clock, handed in: entries are stamped with it. */
  now: () => Date;
  /** Where the built screens are. */
  webFolder: string;
};

const FILE_LIMIT_BYTES = 64 * 1024 * 1024;

/** The whole server as a function from request to response. */
export function createApp({ db, now, webFolder }: AppDeps) {
  const stamp = { now: () => `${now().toISOString().slice(0, 19)}Z` };
  const app = new Hono();
  app.use(
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: ["'self'"],
        // The reader of barcodes for browsers without their own is WebAssembly; text never becomes code.
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", "data:"],
        objectSrc: ["'none'"],
        frameAncestors: ["'none'"],
        baseUri: ["'self'"],
      },
    }),
  );
  // A page of another site must not write here with this browser's rights.
  app.use("/api/*", csrf());
  const limited = bodyLimit({
    maxSize: FILE_LIMIT_BYTES,
    onError: (c) =>
      c.json(
        {
          problems: [
            {
              field: "",
              message:
                "That is more than 64 MB at once. Split the file, or use the command line: ullage sales FILE.",
            },
          ],
        },
        413,
      ),
  });
  // Long sales files go from the wire to the disk and have a bound of their own.
  app.use("/api/*", (c, next) => (c.req.path === "/api/sales/jobs" ? next() : limited(c, next)));
  const api = app
    .route("/api", weekRoutes(db))
    .route("/api/venue", venueRoutes(db))
    .route("/api/reports", reportRoutes(db))
    .route("/api/reports", planningRoutes(db))
    .route("/api/catalogue", catalogueRoutes(db))
    .route("/api/counts", countRoutes(db, stamp))
    .route("/api/areas", areaRoutes(db))
    .route("/api/causes", causeRoutes(db, stamp))
    .route("/api/sales", salesRoutes(db, stamp))
    .route("/api/stock", stockRoutes(db))
    .route("/api/orders", orderRoutes(db))
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
