import { keepPreviousData, queryOptions, useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useDeferredValue, useState } from "react";
import { answerOf, server } from "../api.ts";
import { formatMoney, formatNumber, formatShare } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import type { ParRow } from "./par-columns.tsx";

/** Sets an item's par by hand, in what it is bought in, and says first what that changes; or gives it back. */
export function SetPar({ row, onDone }: { row: ParRow; onDone: () => void }) {
  const { item, unit, parSet, parComputed } = row;
  const notify = useNotify();
  const queryClient = useQueryClient();
  const [typed, setTyped] = useState(String(Number(((parSet ?? parComputed) / unit.size).toFixed(2))));
  const [reason, setReason] = useState(row.parReason);
  const par = parOf(typed, unit.size);
  const save = useMutation({
    mutationFn: (next: number | null) =>
      answerOf(server.orders.pars.$post({ json: { item, par: next, reason: next === null ? "" : reason } })),
    onSuccess: async (_, next) => {
      onDone();
      notify({ text: next === null ? `${item} goes by its computed par.` : `The par of ${item} is set.` });
      await queryClient.invalidateQueries();
    },
  });
  const what = unit.of === "case" ? `cases of ${unit.pack}` : `× ${unit.pack}`;
  return (
    <section className="set-par" aria-label={`Par of ${item}`}>
      <h2>{item}</h2>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (par !== null && reason.trim() !== "") save.mutate(par);
        }}
      >
        <div className="field-row">
          <Field
            label={`Par, ${what}`}
            inputMode="decimal"
            value={typed}
            onChange={(event) => setTyped(event.target.value)}
            error={par === null ? "Write a number, 0 or more." : undefined}
          />
          <Field
            label="Why"
            required
            value={reason}
            placeholder="the owner's favourite"
            onChange={(event) => setReason(event.target.value)}
          />
        </div>
        {par === null ? null : <Effect item={item} par={par} />}
        <div className="field-row">
          <Button type="submit" kind="main" disabled={par === null || reason.trim() === "" || save.isPending}>
            Set par
          </Button>
          {parSet === null ? null : (
            <Button disabled={save.isPending} onClick={() => save.mutate(null)}>
              Back to computed
            </Button>
          )}
          <Button onClick={onDone}>Cancel</Button>
        </div>
      </form>
      <Problems error={save.error} />
    </section>
  );
}

/** A decimal comma is as good as a point. */
function parOf(typed: string, size: number): number | null {
  const number = Number(typed.replace(",", "."));
  return typed.trim() === "" || !Number.isFinite(number) || number < 0 ? null : number * size;
}

function Effect({ item, par }: { item: string; par: number }) {
  const { currency } = useVenue();
  const { data, error } = useQuery(parEffectQuery(item, useDeferredValue(par)));
  if (data === undefined) return error === null ? null : <Problems error={error} />;
  const { at, atComputed } = data;
  const risk = `${formatShare(at.runOutChance)} chance to run out before the delivery after the next, against ${formatShare(atComputed.runOutChance)} at the computed par`;
  if (at.money === null || atComputed.money === null) return <p aria-live="polite">{risk}.</p>;
  const more = at.money - atComputed.money;
  const money =
    Math.abs(more) < 0.5
      ? "as much money on the shelf"
      : `${formatMoney(Math.abs(more), currency, { whole: true })} ${more > 0 ? "more" : "less"} on the shelf when filled up (${formatNumber(Math.abs(more / atComputed.money) * 100)} %)`;
  return (
    <p aria-live="polite">
      {risk}; {money}.
    </p>
  );
}

function parEffectQuery(item: string, par: number) {
  return queryOptions({
    queryKey: ["par-effect", item, par],
    queryFn: () => answerOf(server.orders["par-effect"].$get({ query: { item, par: String(par) } })),
    placeholderData: keepPreviousData,
  });
}
