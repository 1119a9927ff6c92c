import { Hono } from "hono";
import { z } from "zod";
import type { Db } from "#db/open.ts";
import { currencyDigits } from "#engine/currency.ts";
import { useReport } from "#engine/sales/use-report.ts";
import { BusinessDate } from "#engine/time.ts";
import { about, checked } from "#server/http.ts";
import { readMoment, readMoneyMinor } from "#server/reading.ts";
import { costFor } from "#server/reports/cost.ts";
import { forecastFor } from "#server/reports/forecast.ts";
import { makeOrBuyFor } from "#server/reports/make-or-buy.ts";
import { orderFor } from "#server/reports/order.ts";
import { ownerReportFor } from "#server/reports/owner.ts";
import { batchCardFor, prepFor } from "#server/reports/prep.ts";
import { trendFor } from "#server/reports/trend.ts";
import { varianceFor } from "#server/reports/variance.ts";
import { varianceItemFor } from "#server/reports/variance-item.ts";
import { openWorld } from "#server/world.ts";

const flag = z.enum(["true", "false"]).optional();
const days = z.coerce.number().int().min(1).max(366);
/** How sure it shall be that the most pieces of a fruit are enough. */
const certainty = z.coerce.number().min(0.5).max(0.999).optional();
const isAsked = flag.transform((word) => word === "true");
/** Between which counts; `whole` passes over spot counts where none is named. */
const countPair = { count: z.string().optional(), since: z.string().optional(), whole: isAsked };

/** The reports: the same services, and the same JSON, as the command line. */
export function reportRoutes(db: Db) {
  return new Hono()
    .get(
      "/use",
      about("Expected use by item over business dates"),
      checked("query", z.object({ from: BusinessDate, to: BusinessDate, raw: isAsked })),
      async (c) => {
        const { from, to, raw } = c.req.valid("query");
        const world = await openWorld(db);
        const sales = await world.salesBetween({ from, to });
        return c.json(useReport(world.facts, sales, { from, to, raw }));
      },
    )
    .get(
      "/variance",
      about("Variance between two counts"),
      checked("query", z.object(countPair)),
      async (c) => c.json(await varianceFor(await openWorld(db), c.req.valid("query"))),
    )
    .get(
      "/variance/item",
      about("One item between two counts: its balance, the drinks that used it, its uncertainty, its past"),
      checked("query", z.object({ item: z.string(), ...countPair })),
      async (c) => c.json(await varianceItemFor(await openWorld(db), c.req.valid("query"))),
    )
    .get(
      "/owner",
      about("The owner's page: cost against spec, unexplained and its past, what to check, what was settled"),
      checked("query", z.object(countPair)),
      async (c) => c.json(await ownerReportFor(await openWorld(db), c.req.valid("query"))),
    )
    .get(
      "/trend",
      about("Unexplained use over all counts"),
      checked("query", z.object({ item: z.string().optional() })),
      async (c) => c.json(await trendFor(await openWorld(db), c.req.valid("query"))),
    )
    .get(
      "/forecast",
      about("Serves (or items) a day to come, with quantiles"),
      checked(
        "query",
        z.object({
          from: BusinessDate.optional(),
          days: days.optional(),
          asOf: BusinessDate.optional(),
          by: z.enum(["drink", "item"]).optional(),
        }),
      ),
      async (c) => {
        const { from, days: count, asOf, by } = c.req.valid("query");
        return c.json(
          await forecastFor(await openWorld(db), { from, days: count, asOf, byItem: by === "item" }),
        );
      },
    )
    .get(
      "/order",
      about("What to order from whom"),
      checked(
        "query",
        z.object({
          at: z.string().optional(),
          supplier: z.string().optional(),
          budget: z.string().optional(),
        }),
      ),
      async (c) => {
        const { at, supplier, budget } = c.req.valid("query");
        const world = await openWorld(db);
        const { venue } = world.facts.catalogue;
        return c.json(
          await orderFor(world, {
            at: at === undefined ? undefined : readMoment(at, venue, "at"),
            supplier,
            exactMinimum: true,
            budgetMinor:
              budget === undefined
                ? undefined
                : readMoneyMinor(budget, currencyDigits(venue.currency), "budget"),
          }),
        );
      },
    )
    .get(
      "/prep",
      about("What to press, cook and batch on a day"),
      checked("query", z.object({ for: BusinessDate.optional(), days: days.optional(), certainty })),
      async (c) => {
        const { for: date, days: count, certainty: sure } = c.req.valid("query");
        return c.json(await prepFor(await openWorld(db), { date, days: count, certainty: sure }));
      },
    )
    .get(
      "/prep/card",
      about("One batch, scaled to an amount, to the vessel, or to what there is of one input"),
      checked(
        "query",
        z.object({
          prep: z.string(),
          for: BusinessDate.optional(),
          make: z.coerce.number().positive().optional(),
          vessel: flag,
          input: z.string().optional(),
          amount: z.coerce.number().positive().optional(),
          batch: z.coerce.number().int().positive().optional(),
          certainty,
        }),
      ),
      async (c) => {
        const { prep, for: date, make, vessel, input, amount, batch, certainty: sure } = c.req.valid("query");
        const size =
          input !== undefined && amount !== undefined
            ? { scaleTo: { item: input, amount } }
            : vessel === "true"
              ? { vessel: true }
              : { make };
        return c.json(
          await batchCardFor(await openWorld(db), { prep, date, batchNo: batch, certainty: sure, ...size }),
        );
      },
    )
    .get(
      "/make-or-buy",
      about("A prep made against bought: cost of a litre, kilogram or piece, and the batch that breaks even"),
      checked(
        "query",
        z.object({
          prep: z.string(),
          labour: z.coerce.number().nonnegative().optional(),
          bought: z.coerce.number().nonnegative().optional(),
          boughtLoss: z.coerce.number().min(0).lt(1).optional(),
        }),
      ),
      async (c) => {
        const { prep, labour, bought, boughtLoss } = c.req.valid("query");
        return c.json(
          makeOrBuyFor(await openWorld(db), {
            prep,
            labourPerHour: labour,
            boughtPrice: bought,
            boughtLossShare: boughtLoss,
          }),
        );
      },
    )
    .get(
      "/cost",
      about("Cost of drinks and items"),
      checked("query", z.object({ drink: z.string().optional() })),
      async (c) => c.json(costFor(await openWorld(db), c.req.valid("query"))),
    );
}
