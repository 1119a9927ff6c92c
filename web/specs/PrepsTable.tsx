import type { CatalogueAnswer } from "../answers.ts";
import { formatNumber, withUnit } from "../format.ts";
import { formatMoney } from "../money.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { useMay } from "../people/signed-in.ts";
import { unitWord } from "../prep/amounts.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { fromColumn, nameColumn } from "./spec-columns.tsx";
import { versionsOf } from "./versions.ts";

type PrepRow = {
  name: string;
  from: string | null;
  versions: number;
  yields: string;
  shelfLifeDays: number | null;
  costPerUnit: number | null;
};

/** Columns for those who see what things cost. */
const COSTS = new Set(["cost"]);

/** Preps with what each yields, how long it keeps and what it costs. */
export function PrepsTable({
  catalogue,
  costPerBase,
}: {
  catalogue: CatalogueAnswer;
  costPerBase: ReadonlyMap<string, number | null>;
}) {
  const { currency } = useVenue();
  const seesCosts = useMay("seeCosts");
  const names = [...new Set(catalogue.preps.map(({ prep }) => prep))];
  const rows = names.map((name): PrepRow => {
    const newest = catalogue.preps
      .filter(({ prep }) => prep === name)
      .sort((a, b) => b.from.localeCompare(a.from))[0];
    const cost = costPerBase.get(name) ?? null;
    const base = catalogue.items.find((item) => item.name === name)?.base;
    return {
      name,
      from: versionsOf(catalogue.specs, name)[0]?.from ?? newest?.from ?? null,
      versions: versionsOf(catalogue.specs, name).length,
      yields: newest === undefined ? "" : withUnit(formatNumber(newest.yield), unitWord(newest.unit)),
      shelfLifeDays: newest?.shelfLifeDays ?? null,
      costPerUnit: cost === null ? null : cost * (base === "each" ? 1 : 1000),
    };
  });
  const columns: Column<PrepRow>[] = [
    nameColumn(say("specs.prep")),
    {
      key: "yields",
      head: say("specs.yields"),
      kind: "text",
      onPhone: "main",
      value: ({ yields }) => yields,
    },
    {
      key: "keeps",
      head: say("specs.keeps"),
      unit: say("specs.days"),
      kind: "number",
      value: ({ shelfLifeDays }) => shelfLifeDays,
    },
    {
      key: "cost",
      head: say("specs.costOfUnit"),
      kind: "number",
      value: ({ costPerUnit }) => costPerUnit,
      show: ({ costPerUnit }) =>
        costPerUnit === null ? (
          <span className="soft">{say("parts.notKnown")}</span>
        ) : (
          formatMoney(costPerUnit, currency)
        ),
    },
    fromColumn(),
  ];
  if (rows.length === 0) return null;
  return (
    <section>
      <h2>{say("specs.preps")}</h2>
      <DataTable
        caption={say("specs.prepsCaption")}
        columns={columns.filter(({ key }) => seesCosts || !COSTS.has(key))}
        rows={rows}
        rowKey={({ name }) => name}
        fileName="preps"
        isPlain
      />
    </section>
  );
}
