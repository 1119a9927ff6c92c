import { Hono } from "hono";
import { z } from "zod";
import { saveDrink, saveItem, savePack } from "#db/catalogue-repository.ts";
import type { Db } from "#db/open.ts";
import {
  removeRingName,
  saveCut,
  saveModifier,
  savePrep,
  saveRingName,
  saveVersion,
} from "#db/specs-repository.ts";
import { Modifier, RingName } from "#engine/sales/ring.ts";
import { Cut, Drink, PrepVersion, SpecLine } from "#engine/specs/spec.ts";
import { readSpecText } from "#engine/specs/text/read.ts";
import { Item, Pack } from "#engine/stock/item.ts";
import { BusinessDate } from "#engine/time.ts";
import { about, checked } from "#server/http.ts";
import { openWorld } from "#server/world.ts";

const version = z.object({
  makes: z.string().min(1),
  from: BusinessDate,
  lines: z.array(SpecLine.omit({ makes: true, from: true })).min(1, "A spec needs at least one line."),
});
const modifierRows = z.array(Modifier).min(1);

/** What drinks and preps are made of, and what the till's names mean. */
export function specRoutes(db: Db) {
  return new Hono()
    .post(
      "/specs/read",
      about("Reads recipe text into lines, with a message at what was not understood"),
      checked("json", z.object({ text: z.string().max(20_000) })),
      async (c) => {
        const { items } = (await openWorld(db)).facts.book;
        return c.json(readSpecText(c.req.valid("json").text, { items: items.map(({ name }) => name) }));
      },
    )
    .post(
      "/specs",
      about("Writes a version of a drink or a prep from a day on"),
      checked("json", version),
      async (c) => {
        await saveVersion(db, c.req.valid("json"));
        return c.json({ saved: true });
      },
    )
    .post("/drinks", about("Writes a drink"), checked("json", Drink), async (c) => {
      await saveDrink(db, c.req.valid("json"));
      return c.json({ saved: true });
    })
    .post(
      "/preps",
      about("Writes how a prep is made from a day on"),
      checked("json", PrepVersion),
      async (c) => {
        await savePrep(db, c.req.valid("json"));
        return c.json({ saved: true });
      },
    )
    .post("/cuts", about("Writes what one piece of a fruit gives"), checked("json", Cut), async (c) => {
      await saveCut(db, c.req.valid("json"));
      return c.json({ saved: true });
    })
    .post("/items", about("Writes an item"), checked("json", Item), async (c) => {
      await saveItem(db, c.req.valid("json"));
      return c.json({ saved: true });
    })
    .post("/packs", about("Writes a pack and its price"), checked("json", Pack), async (c) => {
      await savePack(db, c.req.valid("json"));
      return c.json({ saved: true });
    })
    .post("/ring-names", about("Says what a till's name means"), checked("json", RingName), async (c) => {
      await saveRingName(db, c.req.valid("json"));
      return c.json({ saved: true });
    })
    .post(
      "/ring-names/remove",
      about("Takes back what a till's name means; its sales are unknown again"),
      checked("json", z.object({ ringName: z.string().min(1) })),
      async (c) => {
        await removeRingName(db, c.req.valid("json").ringName);
        return c.json({ removed: true });
      },
    )
    .post(
      "/modifiers",
      about("Says what a modifier does: all its rows"),
      checked("json", modifierRows),
      async (c) => {
        const rows = c.req.valid("json");
        await saveModifier(db, rows[0]?.modifier ?? "", rows);
        return c.json({ saved: true });
      },
    );
}
