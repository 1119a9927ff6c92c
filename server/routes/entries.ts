import { type Context, Hono } from "hono";
import { z } from "zod";
import type { Db } from "#db/open.ts";
import {
  addBatch,
  addDeliveries,
  addLoss,
  addTransfer,
  correctEntry,
  listEntries,
  listWithdrawn,
  withdrawEntry,
} from "#db/stock-repository.ts";
import { BatchEntry, Delivery, Loss, Transfer } from "#engine/stock/movement.ts";
import { Instant } from "#engine/time.ts";
import { refuseAhead } from "#server/far-off.ts";
import { about, checked } from "#server/http.ts";
import { InputError } from "#server/input-error.ts";
import { enteredBy } from "#server/people/actor.ts";
import { refuseOthersEntry, withUnseenPrice } from "#server/people/own-entry.ts";
import type { Stamp } from "#server/stamp.ts";

const KINDS = { deliveries: "delivery", batches: "batch", losses: "loss", transfers: "transfer" } as const;
const FACTS = { deliveries: Delivery, batches: BatchEntry, losses: Loss, transfers: Transfer } as const;

const kind = z.object({ kind: z.enum(["deliveries", "batches", "losses", "transfers"]) });
const entry = kind.extend({ id: z.coerce.number().int().positive() });
const reason = z.string().trim().min(1, "Say why; it stays in the history.");

function latestOf(facts: readonly { at: Instant }[]): Instant {
  return (
    facts
      .map(({ at }) => at)
      .sort()
      .at(-1) ?? ""
  );
}

/** Deliveries, batches, losses and transfers: entered, listed, corrected and taken back, never erased. */
export function entryRoutes(db: Db, stamp: Stamp) {
  /** A phone may send twice what it sent once: the key it gives makes that one entry. */
  const doing = (c: Context, by: string) => {
    const key = c.req.header("idempotency-key");
    const entered = enteredBy(c.get("actor"), by);
    return { now: stamp.now(), by: entered, ...(key === undefined ? {} : { key }) };
  };
  const signed = <Fact extends { by: string }>(c: Context, fact: Fact): Fact => ({
    ...fact,
    by: enteredBy(c.get("actor"), fact.by),
  });
  return new Hono()
    .post(
      "/deliveries",
      about("Enters the lines of a delivery, all or none"),
      checked("json", z.array(Delivery).min(1)),
      async (c) => {
        const lines = c.req.valid("json").map((line) => signed(c, line));
        await refuseAhead(db, latestOf(lines), stamp.now());
        return c.json({ ids: await addDeliveries(db, lines, doing(c, lines[0]?.by ?? "")) });
      },
    )
    .post(
      "/batches",
      about("Enters one making of a prep, with what it really used if not as planned"),
      checked("json", BatchEntry),
      async (c) => {
        const fact = c.req.valid("json");
        await refuseAhead(db, fact.at, stamp.now());
        return c.json({ id: await addBatch(db, signed(c, fact), doing(c, fact.by)) });
      },
    )
    .post("/losses", about("Enters stock gone without a sale"), checked("json", Loss), async (c) => {
      const fact = c.req.valid("json");
      await refuseAhead(db, fact.at, stamp.now());
      return c.json({ id: await addLoss(db, signed(c, fact), doing(c, fact.by)) });
    })
    .post(
      "/transfers",
      about("Enters stock that came from or went to another place"),
      checked("json", Transfer),
      async (c) => {
        const fact = c.req.valid("json");
        await refuseAhead(db, fact.at, stamp.now());
        return c.json({ id: await addTransfer(db, fact, doing(c, "")) });
      },
    )
    .get(
      "/entries/:kind",
      about("Entries of one kind, newest first, each with its history; or those that were taken back"),
      checked("param", kind),
      checked(
        "query",
        z.object({
          from: Instant.optional(),
          to: Instant.optional(),
          withdrawn: z.enum(["true", "false"]).default("false"),
        }),
      ),
      async (c) => {
        const { from, to, withdrawn } = c.req.valid("query");
        if (withdrawn === "true") {
          const gone = await listWithdrawn(db, KINDS[c.req.valid("param").kind]);
          return c.json(gone.map((entry) => ({ ...entry, history: [] })));
        }
        const between = { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
        const entries = await listEntries(db, KINDS[c.req.valid("param").kind], between);
        return c.json([...entries].reverse());
      },
    )
    .post(
      "/entries/:kind/:id/correct",
      about("Enters the right facts in place of an entry; the wrong one stays in the history"),
      checked("param", entry),
      checked("json", z.object({ facts: z.unknown(), reason, by: z.string().default("") })),
      async (c) => {
        const { kind: name, id } = c.req.valid("param");
        const body = c.req.valid("json");
        await refuseOthersEntry(db, { kind: KINDS[name], id }, c.get("actor"), stamp.now());
        const facts = FACTS[name].safeParse(body.facts);
        if (!facts.success)
          throw new InputError(
            facts.error.issues.map(({ path, message }) => `${path.join(".")}: ${message}`),
          );
        await refuseAhead(db, facts.data.at, stamp.now());
        const by = { ...doing(c, body.by), reason: body.reason };
        const held = { kind: KINDS[name], id, facts: facts.data };
        const right = await withUnseenPrice(db, held, c.get("actor"));
        return c.json({ id: await correctEntry(db, KINDS[name], id, right, by) });
      },
    )
    .post(
      "/entries/:kind/:id/withdraw",
      about("Takes an entry back; it stays in the history with the reason"),
      checked("param", entry),
      checked("json", z.object({ reason, by: z.string().default("") })),
      async (c) => {
        const { kind: name, id } = c.req.valid("param");
        const { reason: why, by } = c.req.valid("json");
        await refuseOthersEntry(db, { kind: KINDS[name], id }, c.get("actor"), stamp.now());
        return c.json({ id: await withdrawEntry(db, KINDS[name], id, { ...doing(c, by), reason: why }) });
      },
    );
}
