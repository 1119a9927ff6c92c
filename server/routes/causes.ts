import { Hono } from "hono";
import { z } from "zod";
import type { Db } from "#db/open.ts";
import { CAUSE_KINDS } from "#engine/variance/causes/cause.ts";
import { settleCause, settled, takeBack } from "#server/causes/settle.ts";
import { about, checked } from "#server/http.ts";
import { enteredBy } from "#server/people/actor.ts";
import type { Stamp } from "#server/stamp.ts";

const Settle = z.object({
  counts: z.object({ opening: z.string(), closing: z.string() }),
  cause: z.object({
    kind: z.enum(CAUSE_KINDS),
    what: z.union([z.string(), z.tuple([z.string(), z.string()])]),
    count: z.string().optional(),
  }),
  answer: z.enum(["confirmed", "refuted"]).default("confirmed"),
  by: z.string().default(""),
});

/** What the checks of likely causes showed: kept, posted, listed, and taken back. */
export function causeRoutes(db: Db, stamp: Stamp) {
  return new Hono()
    .post(
      "/settle",
      about("Says that a cause was it, which posts its correction, or that it was not"),
      checked("json", Settle),
      async (c) => {
        const asked = c.req.valid("json");
        const by = enteredBy(c.get("actor"), asked.by);
        return c.json(await settleCause(db, { ...asked, by }, stamp));
      },
    )
    .get("/settled", about("What was settled and holds, latest first"), async (c) =>
      c.json(await settled(db)),
    )
    .post(
      "/settled/:id/take-back",
      about("Takes back what was settled, and its correction with it"),
      checked("param", z.object({ id: z.coerce.number().int().positive() })),
      checked("json", z.object({ by: z.string().default("") })),
      async (c) => {
        const { id } = c.req.valid("param");
        const by = enteredBy(c.get("actor"), c.req.valid("json").by);
        await takeBack(db, id, { by }, stamp);
        return c.json({ id });
      },
    );
}
