import "./count.css";
import { useSearch } from "@tanstack/react-router";
import { Busy } from "../parts/Busy.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { AreaList } from "./AreaList.tsx";
import { ItemEntry } from "./ItemEntry.tsx";
import { ItemList } from "./ItemList.tsx";
import { Review } from "./Review.tsx";
import { StartCount } from "./StartCount.tsx";
import type { SheetArea } from "./sheet.ts";
import { type CountState, useCount } from "./use-count.ts";

/** The weekly count: begin or continue one, choose an area, then item by item in shelf order. */
export function CountPage() {
  const { count } = useSearch({ from: "/count" });
  return count === undefined ? <StartCount /> : <OpenCount name={count} />;
}

function OpenCount({ name }: { name: string }) {
  const search = useSearch({ from: "/count" });
  const count = useCount(name);
  const { sheet, error, renewSheet } = count;
  if (sheet === undefined) {
    return (
      <Page title={name}>
        {error === null ? (
          <Busy what="Fetching what stands where" />
        ) : (
          <Problems error={error} onRetry={renewSheet} />
        )}
      </Page>
    );
  }
  if (search.step === "review") return <Review count={count} sheet={sheet} />;
  const area = sheet.areas.find((one) => one.area === search.area);
  if (area === undefined) return <AreaList count={count} sheet={sheet} />;
  return <OpenArea count={count} area={area} expectedAt={sheet.at} itemName={search.item} />;
}

type AreaProps = {
  count: CountState;
  area: SheetArea;
  expectedAt: string | null;
  itemName: string | undefined;
};

function OpenArea({ count, area, expectedAt, itemName }: AreaProps) {
  const place = area.items.findIndex(({ item }) => item === itemName);
  const item = area.items[place];
  if (item === undefined) return <ItemList count={count} area={area} />;
  return <ItemEntry key={`${area.area} ${item.item}`} {...{ count, area, item, place, expectedAt }} />;
}
