import { Hono } from "hono";
import { z } from "zod";
import type { Db } from "#db/open.ts";
import { daySales, listImports, previewImport, undoImport } from "#db/sales-repository.ts";
import { currencyDigits } from "#engine/currency.ts";
import { previewSales } from "#engine/sales/read/read-sales.ts";
import { BusinessDate } from "#engine/time.ts";
import { about, checked } from "#server/http.ts";
import { ImportJobs } from "#server/import-jobs.ts";
import { unmappedFor, unmappedLines, withMeanings } from "#server/reports/unmapped.ts";
import { type NamedFile, readSalesFile } from "#server/sales-files.ts";
import { importReading, readForImport, refuseEmpty, textsFor } from "#server/sales-import.ts";
import type { Stamp } from "#server/stamp.ts";
import { openWorld } from "#server/world.ts";

const upload = z.object({
  file: z.instanceof(File, { message: 'Send the sales file as the form\'s field "file".' }),
});
const range = z.object({ from: BusinessDate.optional(), to: BusinessDate.optional() });

async function uploaded(file: File) {
  return { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
}

/** How a file would be read and what that would change; null and nothing while it leaves a question. */
async function lookAt(db: Db, file: NamedFile) {
  const { facts } = await openWorld(db);
  const { venue, salesShapes } = facts.book;
  const seen = previewSales(file.bytes, {
    fileName: file.name,
    clock: venue,
    currencyDigits: currencyDigits(venue.currency),
    shapes: salesShapes,
  });
  const read = seen.question === null ? readSalesFile(file, facts.book) : null;
  return {
    file: file.name,
    ...seen,
    change: read && (await previewImport(db, read)),
    unmapped: read === null ? [] : unmappedLines(facts, read.lines),
  };
}

/** Sales files: looked at, read in once and for all, and taken back. */
export function salesRoutes(db: Db, stamp: Stamp) {
  const jobs = new ImportJobs(db);
  return new Hono()
    .post(
      "/preview",
      about("How a sales file would be read; nothing is written"),
      checked("form", upload),
      async (c) => {
        const file = await uploaded(c.req.valid("form").file);
        return c.json(await lookAt(db, file));
      },
    )
    .post(
      "/import",
      about("Reads a sales file in; the same sale is never counted twice"),
      checked("form", upload),
      async (c) => {
        const file = await uploaded(c.req.valid("form").file);
        const world = await openWorld(db);
        const how = { book: world.facts.book, texts: await textsFor(db) };
        const read = await readForImport(db, file, how);
        refuseEmpty(read);
        const report = await importReading(db, world, read, { now: stamp.now(), by: "screen" });
        return c.json({ ...report, unmapped: withMeanings(world.facts, report.unmapped) });
      },
    )
    .post(
      "/jobs",
      about("Begins to read in a long sales file, sent as the body; its name is in the query"),
      checked("query", z.object({ name: z.string().trim().min(1) })),
      async (c) => {
        const { name } = c.req.valid("query");
        return c.json(await jobs.start(name, c.req.raw.body, { now: stamp.now(), by: "screen" }), 202);
      },
    )
    .get(
      "/jobs/:id",
      about("How far the reading of a long file is, and what came of it"),
      checked("param", z.object({ id: z.string() })),
      (c) => c.json(jobs.of(c.req.valid("param").id)),
    )
    .post(
      "/jobs/:id/cancel",
      about("Stops the reading of a long file; nothing of it is kept"),
      checked("param", z.object({ id: z.string() })),
      (c) => c.json(jobs.cancel(c.req.valid("param").id)),
    )
    .get("/imports", about("Sales files read in, newest first"), async (c) => c.json(await listImports(db)))
    .post(
      "/imports/:id/undo",
      about("Takes an import back: sales are exactly as they were before it"),
      checked("param", z.object({ id: z.coerce.number().int().positive() })),
      async (c) => c.json(await undoImport(db, c.req.valid("param").id, { now: stamp.now(), by: "screen" })),
    )
    .get("/days", about("Quantity and money by business day"), checked("query", range), async (c) => {
      const { from = "0001-01-01", to = "9999-12-31" } = c.req.valid("query");
      const { venue } = (await openWorld(db)).facts.catalogue;
      const minor = 10 ** currencyDigits(venue.currency);
      const days = await daySales(db, { from, to });
      return c.json(
        days.map(({ businessDate, quantity, netMinor }) => ({
          date: businessDate,
          quantity,
          net: netMinor / minor,
        })),
      );
    })
    .get(
      "/unmapped",
      about("Sold, but not known to the book, with likely meanings"),
      checked("query", range),
      async (c) => c.json(await unmappedFor(await openWorld(db), c.req.valid("query"))),
    );
}
