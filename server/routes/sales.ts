import { Hono } from "hono";
import { z } from "zod";
import type { Db } from "#db/open.ts";
import { daySales, listImports } from "#db/sales-repository.ts";
import { eraseStaff, keptStaff, salesOfDay, switchStaff } from "#db/staff-repository.ts";
import { currencyDigits } from "#engine/currency.ts";
import { SalesShape } from "#engine/sales/read/shape.ts";
import { BusinessDate } from "#engine/time.ts";
import { about, checked } from "#server/http.ts";
import { ImportJobs } from "#server/import-jobs.ts";
import { signer } from "#server/people/actor.ts";
import { dayLines } from "#server/reports/day-lines.ts";
import { unmappedFor, withMeanings } from "#server/reports/unmapped.ts";
import { importReading, readForImport, refuseEmpty, textsFor } from "#server/sales-import.ts";
import { lookAtSales } from "#server/sales-look.ts";
import type { Stamp } from "#server/stamp.ts";
import { undoImportBeside } from "#server/undo-beside.ts";
import { openWorld } from "#server/world.ts";

const upload = z.object({
  file: z.instanceof(File, { message: 'Send the sales file as the form\'s field "file".' }),
});
const job = z.object({ id: z.string() });
const wish = z.object({
  shape: SalesShape.optional(),
  addsSums: z.boolean().optional(),
  rememberFor: z.string().trim().min(1).optional(),
});
const range = z.object({ from: BusinessDate.optional(), to: BusinessDate.optional() });

async function uploaded(file: File) {
  return { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
}

/** Sales files: looked at, read in once and for all, and taken back. */
export function salesRoutes(db: Db, stamp: Stamp) {
  const jobs = new ImportJobs(db);
  const doing = () => ({ now: stamp.now(), by: signer() });
  return new Hono()
    .post(
      "/preview",
      about("How a sales file would be read and what that would change; nothing is written"),
      checked("form", upload),
      async (c) => {
        const file = await uploaded(c.req.valid("form").file);
        const world = await openWorld(db);
        const how = { book: world.facts.book, texts: await textsFor(db) };
        return c.json({ file: file.name, ...(await lookAtSales(db, world, file, how)) });
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
        const report = await importReading(db, world, read, doing());
        return c.json({ ...report, unmapped: withMeanings(world.facts, report.unmapped) });
      },
    )
    .post(
      "/jobs",
      about("Begins to look at a sales file, or to read it in, sent as the body; its name is in the query"),
      checked("query", z.object({ name: z.string().trim().min(1), look: z.enum(["yes", "no"]).optional() })),
      async (c) => {
        const { name, look } = c.req.valid("query");
        const wish = { isLook: look === "yes" };
        return c.json(await jobs.start(name, c.req.raw.body, wish, doing()), 202);
      },
    )
    .post(
      "/jobs/:id/look",
      about("Looks at a waiting file again, its columns taken as a person says"),
      checked("param", job),
      checked("json", wish.omit({ rememberFor: true })),
      (c) =>
        c.json(jobs.again(c.req.valid("param").id, { ...c.req.valid("json"), isLook: true }, doing()), 202),
    )
    .post(
      "/jobs/:id/import",
      about("Reads a waiting file in; the same sale is never counted twice"),
      checked("param", job),
      checked("json", wish),
      (c) =>
        c.json(jobs.again(c.req.valid("param").id, { ...c.req.valid("json"), isLook: false }, doing()), 202),
    )
    .get(
      "/jobs/:id",
      about("How far the reading of a file is, and what came of it"),
      checked("param", job),
      (c) => c.json(jobs.of(c.req.valid("param").id)),
    )
    .post(
      "/jobs/:id/cancel",
      about("Stops the reading of a file, or leaves one that waits; nothing of it is kept"),
      checked("param", job),
      (c) => c.json(jobs.cancel(c.req.valid("param").id)),
    )
    .get("/imports", about("Sales files read in, newest first"), async (c) => c.json(await listImports(db)))
    .post(
      "/imports/:id/undo",
      about("Takes an import back: sales are exactly as they were before it"),
      checked("param", z.object({ id: z.coerce.number().int().positive() })),
      async (c) => c.json(await undoImportBeside(db, c.req.valid("param").id, doing())),
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
      "/lines",
      about("The till's lines of one business day, with who rang them where the owner keeps that"),
      checked("query", z.object({ date: BusinessDate })),
      async (c) => {
        const { date } = c.req.valid("query");
        const { venue } = (await openWorld(db)).facts.catalogue;
        return c.json(dayLines(await salesOfDay(db, date), venue.currency));
      },
    )
    .get("/staff", about("Whether names of staff are kept with sales, and how many are"), async (c) => {
      const { venue } = (await openWorld(db)).facts.catalogue;
      return c.json({ keeps: venue.keepStaff ?? false, ...(await keptStaff(db)) });
    })
    .post(
      "/staff",
      about(
        "Keeps names of staff with the sales of files to come, or no longer; kept ones stay until erased",
      ),
      checked("json", z.object({ keeps: z.boolean() })),
      async (c) => {
        const { keeps } = c.req.valid("json");
        await switchStaff(db, keeps, { now: stamp.now() });
        return c.json({ keeps, ...(await keptStaff(db)) });
      },
    )
    .post(
      "/staff/erase",
      about("Erases the names of staff kept with sales, for good; the sales stay"),
      async (c) => c.json(await eraseStaff(db, { now: stamp.now() })),
    )
    .get(
      "/unmapped",
      about("Sold, but not known to the book, with likely meanings"),
      checked("query", range),
      async (c) => c.json(await unmappedFor(await openWorld(db), c.req.valid("query"))),
    );
}
