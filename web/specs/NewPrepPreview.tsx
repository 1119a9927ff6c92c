import { keepPreviousData, useQuery } from "@tanstack/react-query";
import type { NewPrep } from "#engine/specs/new-prep.ts";
import { formatNumber, withUnit } from "../format.ts";
import { formatMoney } from "../money.ts";
import { Problems } from "../parts/Problems.tsx";
import { inputWords, plainNumber } from "../prep/amounts.ts";
import { labelWords } from "../prep/label-words.ts";
import { otherCautions } from "../prep/other-cautions.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
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
  const { inputs, volumeMl, targetBrix, abv, allergens, labels } = card;
  const cautions = otherCautions(card.cautions, allergens);
  const pour = inputs.reduce((sum, { base, amount }) => (base === "ml" ? sum + amount : sum), 0);
  const rows = [
    [say("specs.into"), inputs.map((input) => `${input.item} ${inputWords(input)}`).join(", ")],
    [say("specs.byWeight"), volumeMl === null ? "" : withUnit(plainNumber(volumeMl, 0), "ml")],
    [say("specs.liquids"), volumeMl === null && pour > 0 ? withUnit(plainNumber(pour, 0), "ml") : ""],
    [say("specs.mustRead"), targetBrix === null ? "" : withUnit(formatNumber(targetBrix, 1), "°Brix")],
    [say("specs.strengthAbout"), abv === null ? "" : withUnit(formatNumber(abv), "% vol")],
    [say("specs.costs"), costWords(cost, currency)],
  ].filter(([, words]) => words !== "");
  const [head, ...lines] = labels.slice(0, 1).flatMap((label) => [...labelWords(label), label.allergens]);
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
        <figcaption>{say("specs.itsLabel")}</figcaption>
        <strong>{head}</strong>
        {lines.map((line) => (
          <span key={line}>{line}</span>
        ))}
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
  if (cost.cost === null || cost.costPer === null)
    return say("specs.costsNoPrice", { items: cost.unpriced.join(", ") });
  return say("specs.costsPer", {
    each: formatMoney(cost.costPer, currency),
    per: cost.per,
    all: formatMoney(cost.cost, currency),
  });
}
