import { queryOptions } from "@tanstack/react-query";
import type { BatchEntry, Delivery, Loss, Transfer } from "#engine/stock/movement.ts";
import { answerOf, server } from "../api.ts";

/** The facts of each kind of movement. */
export type Facts = { deliveries: Delivery; batches: BatchEntry; losses: Loss; transfers: Transfer };
export type Kind = keyof Facts;
export type AnyFact = Facts[Kind];

export type Stamp = { enteredAt: string; enteredBy: string; reason: string };

/** An entry as it stands, with those it replaced, newest first. */
export type Entry<Fact> = {
  id: number;
  fact: Fact;
  stamp: Stamp;
  history: { id: number; fact: Fact; stamp: Stamp }[];
};

/** All entries of a kind that hold, newest first. */
export function entriesQuery<K extends Kind>(kind: K) {
  return queryOptions({
    queryKey: ["entries", kind],
    queryFn: async () =>
      (await answerOf(server.entries[":kind"].$get({ param: { kind }, query: {} }))) as unknown as Entry<
        Facts[K]
      >[],
  });
}

/** The batches of a stretch of time that hold, oldest first. */
export function batchesQuery({ from, to }: { from: string; to: string }) {
  return queryOptions({
    queryKey: ["entries", "batches", from, to],
    queryFn: async () => {
      const query = { from, to };
      const entries = await answerOf(server.entries[":kind"].$get({ param: { kind: "batches" }, query }));
      return (entries as unknown as Entry<BatchEntry>[]).reverse();
    },
  });
}

/** All entries of a kind that were taken back, newest first, each with who did so and why. */
export function withdrawnQuery<K extends Kind>(kind: K) {
  return queryOptions({
    queryKey: ["entries", kind, "withdrawn"],
    queryFn: async () =>
      (await answerOf(
        server.entries[":kind"].$get({ param: { kind }, query: { withdrawn: "true" } }),
      )) as unknown as Entry<Facts[K]>[],
  });
}

/** Enters facts of a kind; one key makes what is sent twice one entry. */
export async function enterFacts<K extends Kind>(
  kind: K,
  facts: readonly Facts[K][],
  key: string,
): Promise<void> {
  const options = { headers: { "idempotency-key": key } };
  const [first] = facts;
  if (first === undefined) return;
  switch (kind) {
    case "deliveries":
      await answerOf(server.deliveries.$post({ json: [...facts] as Delivery[] }, options));
      return;
    case "batches":
      await answerOf(server.batches.$post({ json: first as BatchEntry }, options));
      return;
    case "losses":
      await answerOf(server.losses.$post({ json: first as Loss }, options));
      return;
    default:
      await answerOf(server.transfers.$post({ json: first as Transfer }, options));
  }
}

type Change = { kind: Kind; id: number; reason: string };

/** Puts the right facts in place of an entry. */
export async function correctEntry({ kind, id, reason, facts }: Change & { facts: AnyFact }): Promise<void> {
  const param = { kind, id: String(id) };
  await answerOf(server.entries[":kind"][":id"].correct.$post({ param, json: { facts, reason } }));
}

/** Takes an entry back; it stays in the history. */
export async function withdrawEntry({ kind, id, reason }: Change): Promise<void> {
  const param = { kind, id: String(id) };
  await answerOf(server.entries[":kind"][":id"].withdraw.$post({ param, json: { reason } }));
}

/** A key for one filling of a form. Not every phone on a bar's own network may ask for random UUIDs. */
export function newEntryKey(): string {
  return `${Date.now()}-${Math.random().toString(36).slice(2)}`;
}
