import "./prep.css";
import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import { formatShare } from "../figures.ts";
import { formatNumber } from "../format.ts";
import { formatMoney } from "../money.ts";
import { Field } from "../parts/Field.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useDeviceSetting } from "../parts/use-device-setting.ts";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";
import { type MakeOrBuyReport, makeOrBuyQuery } from "./prep-queries.ts";

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
    value === undefined ? say("prep.numberError") : undefined;
  return (
    <section className="make-or-buy">
      <h2>{say("prep.makeOrBuy")}</h2>
      <div className="field-row">
        <Field
          label={say("prep.hourOfWork", { currency })}
          inputMode="decimal"
          value={rate}
          hint={say("prep.keptHere")}
          error={wrong(labour)}
          onChange={(event) => setRate(event.target.value)}
        />
        <Field
          label={say("prep.boughtAt", { currency, per })}
          inputMode="decimal"
          value={price}
          error={wrong(bought)}
          onChange={(event) => setPrice(event.target.value)}
        />
        <Field
          label={say("prep.boughtLoss")}
          inputMode="decimal"
          value={loss}
          placeholder="0"
          error={isLossWrong ? say("prep.lossError") : undefined}
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
  const madeParts = ({ total, inputs, loss }: NonNullable<typeof made>) => ({
    total: <strong>{money(total)}</strong>,
    inputs: money(inputs),
    loss: money(loss),
    share: formatShare(report.lossShareMade),
  });
  return (
    <>
      <dl className="facts">
        {made === null ? null : (
          <div>
            <dt>{say("prep.madePer", { per })}</dt>
            <dd>
              {hasLabour
                ? sayWith("prep.madeParts", { ...madeParts(made), work: money(made.labour) })
                : sayWith("prep.madePartsNoWork", madeParts(made))}
            </dd>
          </div>
        )}
        {bought === null ? null : (
          <div>
            <dt>{say("prep.boughtPer", { per })}</dt>
            <dd>
              {sayWith("prep.boughtParts", {
                total: <strong>{money(bought.total)}</strong>,
                price: money(bought.cost),
                loss: money(bought.loss),
              })}
            </dd>
          </div>
        )}
        <div>
          <dt>{say("prep.keeps")}</dt>
          <dd>{keepsText(report)}</dd>
        </div>
      </dl>
      {made === null || bought === null ? null : <p>{verdictText(report, currency)}</p>}
      {missing.length === 0 ? null : <p className="soft">{missing.join(" ")}</p>}
    </>
  );
}

function keepsText({ shelfLifeDays, usedWhileItKeeps, per, batchSize }: MakeOrBuyReport): string {
  return [
    shelfLifeDays === null ? say("prep.keepsUnknown") : say("prep.keepsDays", { days: shelfLifeDays }),
    ...(usedWhileItKeeps === null
      ? []
      : [say("prep.usedInTime", { amount: sizeText(usedWhileItKeeps, per) })]),
    ...(batchSize === null ? [] : [say("prep.usualBatch", { amount: sizeText(batchSize, per) })]),
  ].join("; ");
}

function verdictText(report: MakeOrBuyReport, currency: string): string {
  const { made, bought, cheaper, breakEvenBatch, usedWhileItKeeps, per } = report;
  if (made === null || bought === null) return "";
  const money = formatMoney(Math.abs(made.total - bought.total), currency);
  const first =
    cheaper === "make"
      ? say("prep.makingSaves", { money, per })
      : cheaper === "buy"
        ? say("prep.buyingSaves", { money, per })
        : say("prep.costSame");
  if (breakEvenBatch === null) return cheaper === "buy" ? `${first} ${say("prep.noBatch")}` : first;
  if (breakEvenBatch === 0) return first;
  const even = `${first} ${say("prep.makingPays", { amount: sizeText(breakEvenBatch, per) })}`;
  return usedWhileItKeeps !== null && breakEvenBatch > usedWhileItKeeps
    ? `${even} ${say("prep.moreThanUsed")}`
    : even;
}

function sizeText(amount: number, per: MakeOrBuyReport["per"]): string {
  if (per === "piece") return say("prep.pieces", { count: Math.round(amount) });
  return `${formatNumber(amount, 2)} ${per === "litre" ? "l" : "kg"}`;
}
