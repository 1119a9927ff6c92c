import type { VarianceAnswer } from "../answers.ts";
import { formatNumber } from "../format.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { UncertainMoney } from "../parts/Uncertain.tsx";

type Where = VarianceAnswer["where"];
/** Beyond the first few they are echoes of each other. */
const MOST_DRINKS = 4;

type Part = Where["categories"][number];

/** The unexplained money by category and by area, and the drinks whose use does not fit. */
export function WhereItIs({
  where: { categories, areas, drinks },
  most = 99,
}: {
  where: Where;
  most?: number;
}) {
  return (
    <div className="where-columns">
      <PartsTable title="By category" head="Category" parts={categories.slice(0, most)} />
      <PartsTable title="By area" head="Area" parts={areas.slice(0, most)} />
      <Misfits drinks={drinks.slice(0, Math.min(most, MOST_DRINKS))} />
    </div>
  );
}

function PartsTable({ title, head, parts }: { title: string; head: string; parts: readonly Part[] }) {
  const columns: Column<Part>[] = [
    { key: "name", head, kind: "text", onPhone: "lead", value: ({ name }) => name },
    {
      key: "cost",
      head: "Unexplained",
      kind: "number",
      onPhone: "main",
      value: ({ cost }) => cost,
      show: ({ cost, sd }) => <UncertainMoney amount={cost} sd={sd} />,
    },
  ];
  return (
    <div>
      <DataTable
        caption={title}
        columns={columns}
        rows={parts}
        rowKey={({ name }) => name}
        fileName={title}
        isPlain
      />
    </div>
  );
}

/** Drinks whose items are off together, in the drink's own proportions. */
function Misfits({ drinks }: { drinks: Where["drinks"] }) {
  return (
    <div>
      <h3>Drinks whose use does not fit</h3>
      {drinks.length === 0 ? (
        <p>None: no drink’s items are off together.</p>
      ) : (
        <ul className="ruled">
          {drinks.map(({ drink, serves, sd }) => (
            <li key={drink}>
              {drink}:{" "}
              <span className="number">
                {formatNumber(Math.abs(serves))} ± {formatNumber(sd)} serves
              </span>{" "}
              {serves > 0 ? "more gone than sold." : "fewer gone than sold."}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
