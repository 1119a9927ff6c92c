import { keepPreviousData, useQuery } from "@tanstack/react-query";
import type { NewPrep } from "#engine/specs/new-prep.ts";
import { formatMoney, formatNumber } from "../format.ts";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { type NewPrepPreview as Preview, previewQuery } from "./spec-queries.ts";

/** What a new prep would be, as it stands in the form: weights, yield, cost, cautions and label. */
export function NewPrepPreview({ wanted }: { wanted: NewPrep }) {
  const { data, error } = useQuery({ ...previewQuery(wanted), placeholderData: keepPreviousData });
  if (error !== null) return <Problems error={error} />;
  if (data === undefined) return null;
  return (
    <div className="new-prep-preview" role="status">
      {data.problems.map((problem) => (
        <p key={problem} className="syrup-caution">
          {problem}
        </p>
      ))}
      {data.card === null ? null : <Facts card={data.card} cost={data.cost} />}
    </div>
  );
}

function Facts({ card, cost }: { card: NonNullable<Preview["card"]>; cost: Preview["cost"] }) {
  const { currency } = useVenue();
  const { inputs, volumeMl, targetBrix, abv, labels } = card;
  const cautions = card.cautions.filter((caution) => !caution.startsWith("Allergens."));
  const pour = inputs.reduce((sum, { base, amount }) => (base === "ml" ? sum + amount : sum), 0);
  const rows = [
    ["Into it", inputs.map(({ item, text }) => `${item} ${text}`).join(", ")],
    ["By weight, at 20 °C", volumeMl === null ? "" : `${formatNumber(volumeMl)} ml`],
    ["Liquids in it", volumeMl === null && pour > 0 ? `${formatNumber(pour)} ml` : ""],
    ["Must read", targetBrix === null ? "" : `${formatNumber(targetBrix, 1)} °Brix`],
    ["Strength, about", abv === null ? "" : `${formatNumber(abv)} % vol`],
    ["Costs", costWords(cost, currency)],
  ].filter(([, words]) => words !== "");
  return (
    <>
      <dl className="facts">
        {rows.map(([term, words]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      <figure className="label-preview">
        <figcaption>Its label</figcaption>
        {(labels[0]?.lines ?? []).map((line, place) =>
          place === 0 ? <strong key={line}>{line}</strong> : <span key={line}>{line}</span>,
        )}
      </figure>
      {cautions.length === 0 ? null : (
        <ul className="new-prep-cautions">
          {cautions.map((caution) => (
            <li key={caution} className="syrup-caution">
              {caution}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function costWords(cost: Preview["cost"], currency: string): string {
  if (cost === null) return "";
  if (cost.cost === null || cost.costPer === null) return `no price is known of ${cost.unpriced.join(", ")}`;
  return `${formatMoney(cost.costPer, currency)} a ${cost.per}, ${formatMoney(cost.cost, currency)} in all`;
}
