import type { BaseUnit } from "#engine/measure/units.ts";
import type { Budget } from "#engine/variance/budget.ts";
import { formatAmount, formatShare, plural } from "../format.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";

type Part = { part: keyof Budget["shares"]; share: number; sd: number };

const WORDS: Record<Part["part"], string> = {
  opening: "Reading the opening count",
  closing: "Reading the closing count",
  pours: "The spread of single pours",
  yields: "What batches yield",
  topUps: "Estimated top-ups",
};

/** The parts of the standard uncertainty, largest first; their squares add up. */
export function UncertaintyBudget({ budget, base }: { budget: Budget | null; base: BaseUnit }) {
  const venue = useVenue();
  const amount = (value: number) => formatAmount(value, base, venue);
  const columns: Column<Part>[] = [
    { key: "part", head: "Part", kind: "text", onPhone: "lead", value: ({ part }) => WORDS[part] },
    {
      key: "sd",
      head: "±",
      kind: "number",
      value: ({ sd }) => sd,
      show: ({ sd }) => amount(sd),
    },
    {
      key: "share",
      head: "Share",
      kind: "number",
      onPhone: "main",
      value: ({ share }) => share,
      show: ({ share }) => formatShare(share),
    },
  ];
  return (
    <>
      <DataTable
        caption="Parts of the standard uncertainty. Shares are of its square."
        columns={columns}
        rows={budget === null ? [] : partsOf(budget)}
        rowKey={({ part }) => part}
        fileName="uncertainty"
        initialSort={{ key: "share", isDescending: true }}
        isPlain
        empty={<p>Everything was counted and sold whole: there is no uncertainty to speak of.</p>}
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
  return `Topped up by eye: the expected use follows what ${plural(periods, "earlier period")} had, ${amount(Math.abs(moved))} ${moved < 0 ? "less" : "more"} than the glasses are reckoned to have room for.`;
}

function partsOf({ sd, shares }: Budget): Part[] {
  const names = Object.keys(shares) as Part["part"][];
  return names
    .map((part) => ({ part, share: shares[part], sd: sd * Math.sqrt(shares[part]) }))
    .filter(({ share }) => share > 0);
}
