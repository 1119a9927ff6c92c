import type { VarianceAnswer } from "../answers.ts";
import { shownWord } from "../book-words.ts";
import { formatNumber } from "../format.ts";
import { DataTable } from "../parts/DataTable.tsx";
import type { Column } from "../parts/table-column.ts";
import { UncertainMoney } from "../parts/Uncertain.tsx";
import { say, sayWith } from "../texts/say.ts";

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
      <PartsTable
        title={say("variance.byCategory")}
        head={say("variance.category")}
        parts={categories.slice(0, most).map((part) => ({ ...part, name: shownWord("category", part.name) }))}
        fileName="By category"
      />
      <PartsTable
        title={say("variance.byArea")}
        head={say("variance.area")}
        parts={areas.slice(0, most)}
        fileName="By area"
      />
      <Misfits drinks={drinks.slice(0, Math.min(most, MOST_DRINKS))} />
    </div>
  );
}

type PartsProps = { title: string; head: string; parts: readonly Part[]; fileName: string };

function PartsTable({ title, head, parts, fileName }: PartsProps) {
  const columns: Column<Part>[] = [
    { key: "name", head, kind: "text", onPhone: "lead", value: ({ name }) => name },
    {
      key: "cost",
      head: say("variance.unexplained"),
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
        fileName={fileName}
        isPlain
      />
    </div>
  );
}

/** Drinks whose items are off together, in the drink's own proportions. */
function Misfits({ drinks }: { drinks: Where["drinks"] }) {
  return (
    <div>
      <h3>{say("variance.misfits")}</h3>
      {drinks.length === 0 ? (
        <p>{say("variance.noMisfits")}</p>
      ) : (
        <ul className="ruled">
          {drinks.map(({ drink, serves, sd }) => (
            <li key={drink}>
              {sayWith("variance.misfit", {
                drink,
                serves: (
                  <span className="number">
                    {say("variance.misfitServes", {
                      serves: formatNumber(Math.abs(serves)),
                      sd: formatNumber(sd),
                    })}
                  </span>
                ),
                way: serves > 0 ? "more" : "fewer",
              })}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
