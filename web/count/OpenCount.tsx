import { lazyRouteComponent, useSearch } from "@tanstack/react-router";
import { Busy } from "../parts/Busy.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { withTexts } from "../texts/load.ts";
import { say } from "../texts/say.ts";
import { AreaList } from "./AreaList.tsx";
import { ItemEntry } from "./ItemEntry.tsx";
import { ItemList } from "./ItemList.tsx";
import type { Sheet, SheetArea } from "./sheet.ts";
import { type CountState, useCount } from "./use-count.ts";

// What is not needed to count is loaded when it is asked for, and kept on the device with the rest.
const Review = lazyRouteComponent(() => withTexts(() => import("./Review.tsx")), "Review");
const PaperSheet = lazyRouteComponent(() => withTexts(() => import("./PaperSheet.tsx")), "PaperSheet");
const PaperEntry = lazyRouteComponent(() => withTexts(() => import("./PaperEntry.tsx")), "PaperEntry");
const ShelfOrder = lazyRouteComponent(() => withTexts(() => import("./ShelfOrder.tsx")), "ShelfOrder");
const FoundItem = lazyRouteComponent(() => withTexts(() => import("./FoundItem.tsx")), "FoundItem");

/** One count on this device: its areas, or the step that the address names. */
export function OpenCount({ name, items }: { name: string; items: string | undefined }) {
  const count = useCount(name, items);
  const { sheet, wholeSheet, error, renewSheet } = count;
  if (sheet !== undefined && wholeSheet !== undefined) {
    return <Step count={count} sheet={sheet} wholeSheet={wholeSheet} />;
  }
  return (
    <Page title={name}>
      {error === null ? (
        <Busy what={say("count.fetching")} />
      ) : (
        <Problems error={error} onRetry={renewSheet} />
      )}
    </Page>
  );
}

type StepProps = { count: CountState; sheet: Sheet; wholeSheet: Sheet };

function Step({ count, sheet, wholeSheet }: StepProps) {
  const search = useSearch({ from: "/count" });
  if (search.step === "review") return <Review count={count} sheet={sheet} />;
  if (search.step === "sheet") return <PaperSheet count={count} sheet={sheet} />;
  if (search.step === "paper") return <PaperEntry count={count} sheet={sheet} />;
  if (search.step === "found") return <FoundItem count={count} sheet={wholeSheet} area={search.area} />;
  if (search.step === "order") {
    const whole = wholeSheet.areas.find((one) => one.area === search.area);
    if (whole !== undefined) return <ShelfOrder count={count} area={whole} />;
  }
  const area = sheet.areas.find((one) => one.area === search.area);
  if (area === undefined) return <AreaList count={count} sheet={sheet} />;
  return <OpenArea count={count} sheet={sheet} area={area} itemName={search.item} />;
}

type AreaProps = {
  count: CountState;
  sheet: Sheet;
  area: SheetArea;
  itemName: string | undefined;
};

function OpenArea({ count, sheet, area, itemName }: AreaProps) {
  const place = area.items.findIndex(({ item }) => item === itemName);
  const item = area.items[place];
  if (item === undefined) return <ItemList count={count} sheet={sheet} area={area} />;
  const expectedAt = sheet.at;
  return <ItemEntry key={`${area.area} ${item.item}`} {...{ count, area, item, place, expectedAt }} />;
}
