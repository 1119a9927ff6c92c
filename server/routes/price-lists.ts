import { Hono } from "hono";
import { z } from "zod";
import type { Db } from "#db/open.ts";
import { takePrices } from "#db/price-list-repository.ts";
import { Item, Pack } from "#engine/stock/item.ts";
import { changeOf, comparePriceList } from "#engine/stock/price-list/compare.ts";
import { readPriceList } from "#engine/stock/price-list/read.ts";
import { BusinessDate } from "#engine/time.ts";
import { about, checked } from "#server/http.ts";
import { openWorld } from "#server/world.ts";

const list = z.object({
  file: z.instanceof(File, { message: 'Send the price list as the form\'s field "file".' }),
  supplier: z.string().trim().min(1, "Say whose list it is."),
  from: BusinessDate,
  pricePer: z.enum(["case", "container"]).optional(),
  decimal: z.enum([".", ","]).optional(),
  /** Items a person chose for lines, as JSON: { "12": "Dry gin" }. */
  chosen: z
    .string()
    .default("{}")
    .transform((text, context) => {
      try {
        return z.record(z.string(), z.string()).parse(JSON.parse(text));
      } catch {
        context.addIssue({ code: "custom", message: 'Send the choices as JSON, such as {"12": "Dry gin"}.' });
        return z.NEVER;
      }
    }),
});

const taken = z.object({
  supplier: z.string().trim().min(1),
  items: z.array(Item).max(20_000),
  packs: z.array(Pack).min(1, "Nothing was chosen to be taken over.").max(20_000),
});

/** Suppliers' price lists: compared with the book, then taken over as far as a person says so. */
export function priceListRoutes(db: Db) {
  return new Hono()
    .post(
      "/read",
      about("What a supplier's price list would change; nothing is written"),
      checked("form", list),
      async (c) => {
        const { file, supplier, from, chosen, ...answers } = c.req.valid("form");
        const { catalogue } = (await openWorld(db)).facts;
        const read = readPriceList(new Uint8Array(await file.arrayBuffer()), file.name, answers);
        const offer = { supplier, from };
        const changes = comparePriceList(catalogue, read.lines, offer).map((change, at) => {
          const item = chosen[String(change.row)];
          const line = read.lines[at];
          return item === undefined || line === undefined
            ? change
            : changeOf(catalogue, line, { ...offer, item });
        });
        const { lines: _, ...about } = read;
        return c.json({ ...about, changes });
      },
    )
    .post(
      "/",
      about("Takes prices, new packs and new items of a supplier's list over, all or none"),
      checked("json", taken),
      async (c) => {
        const { supplier, items, packs } = c.req.valid("json");
        await takePrices(db, { supplier, items, packs });
        return c.json({ saved: packs.length });
      },
    );
}
