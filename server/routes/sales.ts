import { Hono } from "hono";
import { z } from "zod";
import type { Db } from "#db/open.ts";
import { daySales, importSales, listImports, previewImport, undoImport } from "#db/sales-repository.ts";
import { previewSales } from "#engine/sales/read/read-sales.ts";
import { BusinessDate } from "#engine/time.ts";
import { currencyDigits } from "#engine/venue.ts";
import { about, checked } from "#server/http.ts";
import { InputError } from "#server/input-error.ts";
import { unmappedFor, unmappedLines } from "#server/reports/unmapped.ts";
import { type NamedFile, readSalesFile } from "#server/sales-files.ts";
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
        const { facts } = await openWorld(db);
        const { lines, refused, shape } = readSalesFile(file, facts.book);
        if (lines.length === 0)
          throw new InputError(`${file.name}: there is no sale in it; nothing was read in.`);
        const result = await importSales(db, {
          file: file.name,
          lines,
          refused,
          shape,
          now: stamp.now(),
          by: "screen",
        });
        return c.json({ ...result, refused, unmapped: unmappedLines(facts, lines) });
      },
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
