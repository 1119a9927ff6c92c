import { Hono } from "hono";
import { z } from "zod";
import type { Db } from "#db/open.ts";
import { acceptRingNames, undoRingName } from "#db/ring-names-repository.ts";
import { removeRingName } from "#db/specs-repository.ts";
import { RingName } from "#engine/sales/ring.ts";
import { about, checked } from "#server/http.ts";
import { signer } from "#server/people/actor.ts";
import { ringNamesReport } from "#server/reports/ring-names.ts";
import type { Stamp } from "#server/stamp.ts";
import { openWorld } from "#server/world.ts";

const named = z.object({ ringName: z.string().min(1) });
const several = z.object({ names: z.array(RingName).min(1).max(2_000) });

/** What the till's names mean: said, seen with what hangs on it, and taken back. */
export function ringNameRoutes(db: Db, stamp: Stamp) {
  const doing = () => ({ now: stamp.now(), by: signer() });
  return new Hono()
    .get("/", about("Names somebody explained: when, by whom, and what was sold under them"), async (c) =>
      c.json(await ringNamesReport(db, await openWorld(db))),
    )
    .post("/", about("Says what a till's name means"), checked("json", RingName), async (c) => {
      await acceptRingNames(db, [c.req.valid("json")], doing());
      return c.json({ saved: true });
    })
    .post(
      "/accept",
      about("Says what several names mean, all or none"),
      checked("json", several),
      async (c) => {
        const { names } = c.req.valid("json");
        await acceptRingNames(db, names, doing());
        return c.json({ saved: names.length });
      },
    )
    .post(
      "/undo",
      about("Takes back what was last said of a name; it means what it meant before"),
      checked("json", named),
      async (c) => c.json({ means: await undoRingName(db, c.req.valid("json").ringName, doing()) }),
    )
    .post(
      "/remove",
      about("Takes back what a till's name means; its sales are unknown again"),
      checked("json", named),
      async (c) => {
        await removeRingName(db, c.req.valid("json").ringName);
        return c.json({ removed: true });
      },
    );
}
