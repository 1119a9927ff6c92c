import { Link, lazyRouteComponent, useNavigate } from "@tanstack/react-router";
import { type FormEvent, memo, Suspense, useEffect, useMemo, useRef, useState } from "react";
import type { CountRow } from "#engine/stock/movement.ts";
import { nowInstant } from "../now.ts";
import { useSteady } from "../parts/use-steady.ts";
import { useVenue } from "../shell/venue.tsx";
import { withTexts } from "../texts/load.ts";
import { say } from "../texts/say.ts";
import { counter } from "./counter.ts";
import { bare, emptied } from "./differences.ts";
import { EntryFields, type FieldName } from "./EntryFields.tsx";
import { type Draft, draftFor, foundOf, noneFound } from "./entry.ts";
import { Keypad } from "./Keypad.tsx";
import { dropDraft, keepDraft, keptDraft } from "./kept-draft.ts";
import { leftAtPace, secondsPerItem } from "./pace.ts";
import { type Surprise, surpriseOf } from "./reckon.ts";
import { noteAct } from "./second-tap.ts";
import type { SheetArea, SheetItem } from "./sheet.ts";
import { type CountState, missingIn, rowsOf } from "./use-count.ts";
import { WaitingLine } from "./WaitingLine.tsx";
import { enter } from "./waiting.ts";

const LookAgain = lazyRouteComponent(() => withTexts(() => import("./LookAgain.tsx")), "LookAgain");

type Props = {
  count: CountState;
  area: SheetArea;
  item: SheetItem;
  /** Its place in the shelf order, from 0. */
  place: number;
  expectedAt: string | null;
};

/** One item of the shelf: what is there, typed with a thumb or on a keyboard, then on to the next. */
export function ItemEntry({ count, area, item, place, expectedAt }: Props) {
  const venue = useVenue();
  const own = useMemo(
    () => rowsOf(count.rows, { area: area.area, item: item.item }),
    [count.rows, area.area, item.item],
  );
  const spot = { count: count.name, area: area.area, item: item.item };
  const [draft, setDraft] = useState(() => keptDraft(spot) ?? draftFor(item, venue.show, own[0]));
  const [problem, setProblem] = useState<string | null>(null);
  const [surprise, setSurprise] = useState<Surprise | null>(null);
  const [field, setField] = useState<FieldName>(draft.way === "amount" ? "amount" : "containers");
  // The first key replaces what stood there from an earlier entry.
  const isFresh = useRef(own.length > 0 && keptDraft(spot) === undefined);
  // The question is seldom asked, but where it is there may be no signal: it is fetched once the keys stand.
  useEffect(() => void LookAgain.preload?.(), []);
  const goOn = useSteady(useGoOn(count, area, place));

  const change = useSteady((changed: Partial<Draft>) => {
    isFresh.current = false;
    setDraft({ ...draft, ...changed });
    keepDraft(spot, { ...draft, ...changed });
    setProblem(null);
    setSurprise(null);
  });
  const save = (found: ReturnType<typeof noneFound>) => {
    const row = { ...spot, ...found, at: nowInstant(), by: counter() };
    // Counted before in another way: that entry must not stand beside this one.
    const stale = own.filter(({ pack }) => (pack === null) !== (row.pack === null));
    for (const old of stale) enter({ ...bare(old), ...emptied(old), at: row.at, by: row.by }, old.id ?? null);
    enter(row, own.find(({ pack }) => pack === row.pack)?.id ?? null);
    dropDraft();
    return { row, stale };
  };
  const record = (found: ReturnType<typeof noneFound>) => {
    const { row, stale } = save(found);
    noteAct();
    const others = count.rows.filter((other) => other.item === item.item && !isSamePlace(other, row));
    const unexpected = surpriseOf([...others.filter((other) => !stale.includes(other)), row], {
      item,
      area: area.area,
      venue,
      expectedAt,
    });
    if (unexpected === null || !mayAskAgain(count.name, item.item)) return goOn();
    setSurprise(unexpected);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (surprise !== null) return goOn();
    const found = foundOf(draft);
    if ("problem" in found) setProblem(found.problem);
    else record(found);
  };
  const changePack = useSteady((pack: string) => {
    // What was typed for the other pack is an entry of its own.
    const found = foundOf(draft);
    if (!("problem" in found) && !isFresh.current) save(found);
    const row = own.find((counted) => counted.pack === pack);
    isFresh.current = row !== undefined;
    setDraft({ ...draftFor(item, venue.show, row), way: draft.way, pack });
  });
  const type = useSteady((key: string) => change({ [field]: (isFresh.current ? "" : draft[field]) + key }));
  const erase = useSteady(() => change({ [field]: draft[field].slice(0, -1) }));
  const recordNone = useSteady(() => record(noneFound(draft)));
  return (
    <form className="item-entry" onSubmit={submit} noValidate>
      <title>{`${item.item} · ${say("shell.count")} · Ullage`}</title>
      <Where count={count} area={area} place={place} />
      <EntryFields
        {...{ draft, item, area: area.area, venue, own, problem }}
        onChange={change}
        onPack={changePack}
        onField={setField}
      />
      <div className="entry-foot">
        <div role="status">
          {surprise === null ? null : (
            <Suspense>
              <LookAgain
                surprise={surprise}
                base={item.base}
                unit={draft.way === "amount" ? draft.unit : null}
                pack={item.packs.find(({ pack }) => pack === draft.pack)}
              />
            </Suspense>
          )}
        </div>
        <Keypad
          mark={field === "grams" ? "+" : "."}
          markName={
            field === "containers"
              ? say("count.pointThenTenths")
              : field === "grams"
                ? say("count.plusKey")
                : say("count.pointKey")
          }
          onKey={type}
          onErase={erase}
          onNone={recordNone}
          onSkip={goOn}
        />
      </div>
    </form>
  );
}

/** To the next item nobody counted yet, further down the shelf first; when all are counted, to the areas. */
function useGoOn({ name, rows }: CountState, area: SheetArea, place: number): () => void {
  const navigate = useNavigate({ from: "/count" });
  return () => {
    noteAct();
    const missing = new Set(missingIn(area, rows));
    const later = area.items.slice(place + 1).find(({ item }) => missing.has(item));
    void navigate({
      search: later === undefined ? { count: name } : { count: name, area: area.area, item: later.item },
    });
  };
}

type WhereProps = { count: CountState; area: SheetArea; place: number };

/** Links take long to draw, and no key that is pressed changes them. */
const Where = memo(function Where({ count, area, place }: WhereProps) {
  const total = area.items.length;
  const done = total - missingIn(area, count.rows).length;
  const pace = leftAtPace(total - done, secondsPerItem(count.rows, counter()));
  const previous = area.items[place - 1]?.item;
  return (
    <div className="item-where">
      {previous === undefined ? (
        <Link to="/count" search={{ count: count.name }}>
          {say("count.areas")}
        </Link>
      ) : (
        <Link to="/count" search={{ count: count.name, area: area.area, item: previous }}>
          {say("count.back")}
        </Link>
      )}
      <span>
        {say("count.place", { area: area.area, done, total })}
        {pace === "" ? null : <span className="pace">, {pace}</span>}
      </span>
      <Link to="/count" search={{ count: count.name, area: area.area }}>
        {say("count.list")}
      </Link>
      <progress max={total} value={done} aria-label={say("count.countedIn", { area: area.area })} />
      <WaitingLine waiting={count.waiting} />
    </div>
  );
});

function isSamePlace(a: CountRow, b: CountRow): boolean {
  return a.area === b.area && a.pack === b.pack;
}

/** True the first time a count and item is asked about; after that the person's word stands. */
function mayAskAgain(count: string, item: string): boolean {
  const key = `ullage-looked-again ${JSON.stringify([count, item])}`;
  if (sessionStorage.getItem(key) !== null) return false;
  sessionStorage.setItem(key, "asked");
  return true;
}
