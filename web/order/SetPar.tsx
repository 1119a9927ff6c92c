import { keepPreviousData, queryOptions, useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useDeferredValue, useState } from "react";
import { answerOf, server } from "../api.ts";
import { formatShare } from "../figures.ts";
import { formatNumber, formatPlain } from "../format.ts";
import { formatMoney } from "../money.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useFocusFirst } from "../parts/use-focus-first.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import type { ParRow } from "./par-columns.tsx";

/** Sets an item's par by hand, in what it is bought in, and says first what that changes; or gives it back. */
export function SetPar({ row, onDone }: { row: ParRow; onDone: () => void }) {
  const { item, unit, parSet, parComputed } = row;
  const notify = useNotify();
  const place = useFocusFirst<HTMLElement>();
  const queryClient = useQueryClient();
  const [typed, setTyped] = useState(formatPlain(Number(((parSet ?? parComputed) / unit.size).toFixed(2))));
  const [reason, setReason] = useState(row.parReason);
  const par = parOf(typed, unit.size);
  const save = useMutation({
    mutationFn: (next: number | null) =>
      answerOf(server.orders.pars.$post({ json: { item, par: next, reason: next === null ? "" : reason } })),
    onSuccess: async (_, next) => {
      onDone();
      notify({ text: say(next === null ? "order.goesComputed" : "order.parIsSet", { item }) });
      await queryClient.invalidateQueries();
    },
  });
  return (
    <section ref={place} className="set-par" aria-label={say("order.parOf", { item })}>
      <h2>{item}</h2>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (par !== null && reason.trim() !== "") save.mutate(par);
        }}
      >
        <div className="field-row">
          <Field
            label={say("order.parIn", { of: unit.of, pack: unit.pack })}
            inputMode="decimal"
            value={typed}
            onChange={(event) => setTyped(event.target.value)}
            error={par === null ? say("order.parNumber") : undefined}
          />
          <Field
            label={say("order.why")}
            required
            value={reason}
            placeholder={say("order.whyExample")}
            onChange={(event) => setReason(event.target.value)}
          />
        </div>
        {par === null ? null : <Effect item={item} par={par} />}
        <div className="field-row">
          <Button type="submit" kind="main" disabled={par === null || reason.trim() === "" || save.isPending}>
            {say("order.setPar")}
          </Button>
          {parSet === null ? null : (
            <Button disabled={save.isPending} onClick={() => save.mutate(null)}>
              {say("order.backToComputed")}
            </Button>
          )}
          <Button onClick={onDone}>{say("order.cancel")}</Button>
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
  return (
    <p aria-live="polite">
      {say("order.effect", {
        risk: formatShare(at.runOutChance),
        computedRisk: formatShare(atComputed.runOutChance),
        ...moneyEffect(at.money, atComputed.money, currency),
      })}
    </p>
  );
}

/** What one par binds on the shelf against another, in major units. */
function moneyEffect(money: number | null, computed: number | null, currency: string) {
  if (money === null || computed === null) return { change: "unknown", money: "", share: "" };
  const more = money - computed;
  const change = Math.abs(more) < 0.5 ? "same" : more > 0 ? "more" : "less";
  return {
    change,
    money: formatMoney(Math.abs(more), currency, { whole: true }),
    share: formatNumber(Math.abs(more / computed) * 100),
  };
}

function parEffectQuery(item: string, par: number) {
  return queryOptions({
    queryKey: ["par-effect", item, par],
    queryFn: () => answerOf(server.orders["par-effect"].$get({ query: { item, par: String(par) } })),
    placeholderData: keepPreviousData,
  });
}
