import { Hono } from "hono";
import { z } from "zod";
import { saveDrink, saveItem, savePack } from "#db/catalogue-repository.ts";
import { saveNewPrep } from "#db/new-prep-repository.ts";
import type { Db } from "#db/open.ts";
import { saveCut, saveModifier, savePrep, saveVersion } from "#db/specs-repository.ts";
import { Modifier } from "#engine/sales/ring.ts";
import { NewPrep } from "#engine/specs/new-prep.ts";
import { Cut, Drink, PrepVersion, SpecLine } from "#engine/specs/spec.ts";
import { readSpecText } from "#engine/specs/text/read.ts";
import { Item, Pack } from "#engine/stock/item.ts";
import { BusinessDate } from "#engine/time.ts";
import { about, checked } from "#server/http.ts";
import { previewNewPrep } from "#server/reports/new-prep.ts";
import { openWorld } from "#server/world.ts";

const version = z.object({
  makes: z.string().min(1),
  from: BusinessDate,
  lines: z.array(SpecLine.omit({ makes: true, from: true })).min(1, "A spec needs at least one line."),
});
const modifierRows = z.array(Modifier).min(1);

/** What drinks and preps are made of, and what modifiers do. */
export function specRoutes(db: Db) {
  return new Hono()
    .post(
      "/specs/read",
      about("Reads recipe text into lines, with a message at what was not understood"),
      checked("json", z.object({ text: z.string().max(20_000), also: z.array(z.string()).default([]) })),
      async (c) => {
        const { items } = (await openWorld(db)).facts.book;
        const { text, also } = c.req.valid("json");
        return c.json(readSpecText(text, { items: [...items.map(({ name }) => name), ...also] }));
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
    .post(
      "/preps/preview",
      about("What a new prep would be: weights, cost, label, cautions, and what is wrong with it"),
      checked("json", NewPrep),
      async (c) => c.json(previewNewPrep(await openWorld(db), c.req.valid("json"))),
    )
    .post(
      "/preps/new",
      about("Writes a new prep whole: item, yield, spec lines and cut, all or nothing"),
      checked("json", NewPrep),
      async (c) => {
        await saveNewPrep(db, c.req.valid("json"));
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
