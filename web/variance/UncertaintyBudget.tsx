import type { BaseUnit } from "#engine/measure/units.ts";
import type { Budget } from "#engine/variance/budget.ts";
import { formatShare } from "../figures.ts";
import { formatAmount } from "../format.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import type { TextId } from "../texts/catalogues.ts";
import { say } from "../texts/say.ts";

type Part = { part: keyof Budget["shares"]; share: number; sd: number };

const WORDS = {
  opening: "variance.budgetOpening",
  closing: "variance.budgetClosing",
  pours: "variance.budgetPours",
  yields: "variance.budgetYields",
  topUps: "variance.budgetTopUps",
} as const satisfies Record<Part["part"], TextId>;

/** The parts of the standard uncertainty, largest first; their squares add up. */
export function UncertaintyBudget({ budget, base }: { budget: Budget | null; base: BaseUnit }) {
  const venue = useVenue();
  const amount = (value: number) => formatAmount(value, base, venue);
  const columns: Column<Part>[] = [
    {
      key: "part",
      head: say("variance.part"),
      kind: "text",
      onPhone: "lead",
      value: ({ part }) => say(WORDS[part]),
    },
    {
      key: "sd",
      head: "±",
      kind: "number",
      value: ({ sd }) => sd,
      show: ({ sd }) => amount(sd),
    },
    {
      key: "share",
      head: say("variance.share"),
      kind: "number",
      onPhone: "main",
      value: ({ share }) => share,
      show: ({ share }) => formatShare(share),
    },
  ];
  return (
    <>
      <DataTable
        caption={say("variance.budget")}
        columns={columns}
        rows={budget === null ? [] : partsOf(budget)}
        rowKey={({ part }) => part}
        fileName="uncertainty"
        initialSort={{ key: "share", isDescending: true }}
        isPlain
        empty={<p>{say("variance.noBudget")}</p>}
      />
      {budget === null || budget.learned === null ? null : (
        <p className="soft">{learnedWords(budget.learned, amount)}</p>
      )}
    </>
  );
}

/** Why the expected use is not quite what the drinks' own lines add up to. */
function learnedWords(
  { amount: moved, periods }: NonNullable<Budget["learned"]>,
  amount: (value: number) => string,
): string {
  return say("variance.learned", {
    count: periods,
    amount: amount(Math.abs(moved)),
    way: moved < 0 ? "less" : "more",
  });
}

function partsOf({ sd, shares }: Budget): Part[] {
  const names = Object.keys(shares) as Part["part"][];
  return names
    .map((part) => ({ part, share: shares[part], sd: sd * Math.sqrt(shares[part]) }))
    .filter(({ share }) => share > 0);
}
