import "./prep.css";
import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import { formatMoney, formatNumber, formatShare } from "../format.ts";
import { Field } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { type MakeOrBuyReport, makeOrBuyQuery } from "./prep-queries.ts";
import { useDeviceSetting } from "./use-device-setting.ts";

/** Making a prep against buying it: cost of each with labour and loss, and the batch from which making pays. */
export function MakeOrBuy({ prep }: { prep: string }) {
  const { currency } = useVenue();
  const [rate, setRate] = useDeviceSetting("labour-per-hour", "");
  const [price, setPrice] = useState("");
  const [loss, setLoss] = useState("");
  const labour = amountOf(rate);
  const bought = amountOf(price);
  const lossPercent = amountOf(loss);
  const isLossWrong = lossPercent === undefined || (lossPercent !== null && lossPercent >= 100);
  const { data, error } = useQuery({
    ...makeOrBuyQuery({
      prep,
      labour: labour ?? undefined,
      bought: bought ?? undefined,
      boughtLoss: isLossWrong || lossPercent === null ? undefined : lossPercent / 100,
    }),
    placeholderData: keepPreviousData,
  });
  const per = data?.per ?? "litre";
  const wrong = (value: number | null | undefined) =>
    value === undefined ? "a number, as 12.50" : undefined;
  return (
    <section className="make-or-buy">
      <h2>Make or buy</h2>
      <div className="field-row">
        <Field
          label={`An hour of work, ${currency}`}
          inputMode="decimal"
          value={rate}
          hint="Kept on this device."
          error={wrong(labour)}
          onChange={(event) => setRate(event.target.value)}
        />
        <Field
          label={`Bought, ${currency} a ${per}`}
          inputMode="decimal"
          value={price}
          error={wrong(bought)}
          onChange={(event) => setPrice(event.target.value)}
        />
        <Field
          label="Of it thrown out, %"
          inputMode="decimal"
          value={loss}
          placeholder="0"
          error={isLossWrong ? "0 to below 100" : undefined}
          onChange={(event) => setLoss(event.target.value)}
        />
      </div>
      {error === null ? null : <Problems error={error} />}
      {data === undefined ? null : <Answer report={data} currency={currency} hasLabour={labour !== null} />}
    </section>
  );
}

/** Null where nothing is typed; undefined where it is no number. */
function amountOf(text: string): number | null | undefined {
  if (text.trim() === "") return null;
  const amount = readAmount(text, { decimalComma: true });
  return amount === undefined || amount < 0 ? undefined : amount;
}

type AnswerProps = { report: MakeOrBuyReport; currency: string; hasLabour: boolean };

function Answer({ report, currency, hasLabour }: AnswerProps) {
  const { made, bought, per, missing } = report;
  const money = (amount: number) => formatMoney(amount, currency);
  return (
    <>
      <dl className="facts">
        {made === null ? null : (
          <div>
            <dt>Made, a {per}</dt>
            <dd>
              <strong>{money(made.total)}</strong>: inputs {money(made.inputs)},{" "}
              {hasLabour ? `work ${money(made.labour)}` : "work left out"}, thrown out {money(made.loss)} (
              {formatShare(report.lossShareMade)} of what was made last quarter)
            </dd>
          </div>
        )}
        {bought === null ? null : (
          <div>
            <dt>Bought, a {per}</dt>
            <dd>
              <strong>{money(bought.total)}</strong>: price {money(bought.cost)}, thrown out{" "}
              {money(bought.loss)}
            </dd>
          </div>
        )}
        <div>
          <dt>Keeps</dt>
          <dd>{keepsText(report)}</dd>
        </div>
      </dl>
      {made === null || bought === null ? null : <p>{verdictText(report, currency)}</p>}
      {missing.length === 0 ? null : <p className="soft">{missing.join(" ")}</p>}
    </>
  );
}

function keepsText({ shelfLifeDays, usedWhileItKeeps, per, batchSize }: MakeOrBuyReport): string {
  const days = shelfLifeDays === null ? "not on record" : `${formatNumber(shelfLifeDays)} days`;
  const used = usedWhileItKeeps === null ? "" : `; ${sizeText(usedWhileItKeeps, per)} used in that time`;
  return `${days}${used}${batchSize === null ? "" : `; usual batch ${sizeText(batchSize, per)}`}`;
}

function verdictText(report: MakeOrBuyReport, currency: string): string {
  const { made, bought, cheaper, breakEvenBatch, usedWhileItKeeps, per } = report;
  if (made === null || bought === null) return "";
  const gap = formatMoney(Math.abs(made.total - bought.total), currency);
  const first =
    cheaper === "make"
      ? `Making saves ${gap} a ${per}.`
      : cheaper === "buy"
        ? `Buying saves ${gap} a ${per}.`
        : "Both cost the same.";
  if (breakEvenBatch === null)
    return cheaper === "buy" ? `${first} No batch is large enough to change that.` : first;
  if (breakEvenBatch === 0) return first;
  const even = `${first} Making pays from batches of ${sizeText(breakEvenBatch, per)} on.`;
  return usedWhileItKeeps !== null && breakEvenBatch > usedWhileItKeeps
    ? `${even} That is more than is used while it keeps.`
    : even;
}

function sizeText(amount: number, per: MakeOrBuyReport["per"]): string {
  const unit = { litre: "l", kilogram: "kg", piece: amount === 1 ? "piece" : "pieces" }[per];
  return `${formatNumber(amount, per === "piece" ? 0 : 2)} ${unit}`;
}
