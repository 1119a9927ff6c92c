import { type ReactNode, useMemo, useState } from "react";
import type { Stock } from "../answers.ts";
import { shownWord } from "../book-words.ts";
import { formatMoney } from "../money.ts";
import { DataTable } from "../parts/DataTable.tsx";
import { Select } from "../parts/Field.tsx";
import { useMay } from "../people/signed-in.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { stockColumns } from "./stock-columns.tsx";

const ALL = "";

/** The stock, narrowed to an area or a category, with its value under the line. */
export function StockTable({ stock: { at, items }, empty }: { stock: Stock; empty: ReactNode }) {
  const venue = useVenue();
  const [area, setArea] = useState(ALL);
  const [category, setCategory] = useState(ALL);
  const seesCosts = useMay("seeCosts");
  const columns = useMemo(
    () => stockColumns(venue, at).filter(({ key }) => seesCosts || key !== "value"),
    [venue, at, seesCosts],
  );
  const rows = items.filter(
    (row) => (area === ALL || row.areas.includes(area)) && (category === ALL || row.category === category),
  );
  const value = rows.reduce((sum, row) => sum + (row.value ?? 0), 0);
  return (
    <DataTable
      caption={say("stock.caption")}
      columns={columns}
      rows={rows}
      rowKey={(row) => row.item}
      fileName="stock"
      initialSort={{ key: "item", isDescending: false }}
      empty={items.length === 0 ? empty : undefined}
      filters={
        <>
          <Select
            label={say("stock.area")}
            value={area}
            options={choices(
              say("stock.allAreas"),
              items.flatMap((row) => row.areas),
            )}
            onChange={(event) => setArea(event.target.value)}
          />
          <Select
            label={say("stock.category")}
            value={category}
            options={choices(
              say("stock.allCategories"),
              items.map((row) => row.category),
              (name) => shownWord("category", name),
            )}
            onChange={(event) => setCategory(event.target.value)}
          />
        </>
      }
      {...(seesCosts
        ? { totals: { item: say("stock.valueAtCost"), value: formatMoney(value, venue.currency) } }
        : {})}
    />
  );
}

function choices(all: string, names: readonly string[], shown = (name: string) => name) {
  const distinct = [...new Set(names)].map((name) => ({ value: name, label: shown(name) }));
  return [{ value: ALL, label: all }, ...distinct.sort((a, b) => a.label.localeCompare(b.label))];
}
