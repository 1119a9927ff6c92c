import { groupBy, itemNamed } from "#engine/catalogue.ts";
import { shownAmount } from "#engine/measure/shown-amount.ts";
import { foldName } from "#engine/name.ts";
import { businessDateOf } from "#engine/sales/read/clock.ts";
import type { Count } from "#engine/stock/counts.ts";
import { countedPack, foundIn } from "#engine/stock/holding.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import { containerSize } from "#engine/stock/pack.ts";
import { type Candidate, type Effect, shareChance, type Weighed } from "#engine/variance/causes/candidate.ts";
import { containersOf } from "#engine/variance/causes/containers.ts";
import { type Correction, SETTLED_BY } from "#engine/variance/causes/correction.ts";
import type { Scene } from "#engine/variance/causes/scene.ts";
import { containerChance } from "#engine/variance/causes/size.ts";

/** Common practice: one bottle behind another about every fourth count; a variance has two of them. */
const MISCOUNTED = 2 * 0.25;

/** One stock too many or too few in a count shows in two windows, the second time the other way round. */
function countEffect(scene: Scene, count: Count, item: string, tooMany: number): Effect {
  const isClosing = count === scene.closing;
  return isClosing
    ? { item, before: 0, now: -tooMany, after: tooMany }
    : { item, before: -tooMany, now: tooMany, after: 0 };
}

/** Whole containers seen that were not there, or not seen that were, in either count. */
export function containerMiscounted(scene: Scene): Candidate[] {
  const weighed = [scene.closing, scene.opening].flatMap((count) =>
    [...fullCounted(scene, count)].flatMap(([item, full]) =>
      containersOf(scene, item)
        .slice(0, 2)
        .flatMap((container, index): Weighed[] =>
          ([1, -1] as const).map((sign) => ({
            kind: "container-miscounted",
            what: item,
            unit: "container",
            effects: [countEffect(scene, count, item, sign * container.size)],
            size: {
              kind: "whole",
              max: sign === 1 ? full : 60,
              logChance: containerChance({ one: 0.75, perCase: container.perCase }),
            },
            weight: index === 0 ? 1 : 0.2,
            sign,
            count: count.name,
            correct: (size) => recounted(rowsOf(scene, count), item, -sign * size),
            check: () =>
              sign === 1
                ? `Count ${item} again in every area: count ${count.name} may have taken empty or double-counted containers as full.`
                : `Look behind, below and in the boxes for ${item}: count ${count.name} may have missed a full container, or taken a case for a bottle.`,
          })),
        ),
    ),
  );
  return shareChance(MISCOUNTED, weighed);
}

/** The item's row with the most whole containers, by so many more or fewer. */
function recounted(rows: readonly CountRow[], item: string, by: number): Correction | undefined {
  const own = rows.filter((row) => row.item === item && row.full !== null);
  const was = own.toSorted((a, b) => (b.full ?? 0) - (a.full ?? 0))[0];
  const full = (was?.full ?? 0) + by;
  if (was === undefined || full < 0) return undefined;
  const words = `Corrects count ${was.count}: ${full} instead of ${was.full} full ${item} in ${was.area}.`;
  return { sheet: "counts", was, fact: { ...was, full, by: SETTLED_BY }, words };
}

/** An empty row with the amount that must have stood there, in the form in which the row was written. */
function refilled({ facts }: Scene, was: CountRow, amount: number): Correction {
  const { catalogue } = facts;
  const pack =
    was.full === null ? undefined : countedPack(catalogue, was, businessDateOf(was.at, catalogue.venue));
  const base = itemNamed(catalogue, was.item).base;
  const size = pack === undefined ? 0 : containerSize(catalogue, pack);
  const whole = size > 0 ? Math.floor(amount / size + 0.05) : 0;
  const part = size > 0 ? Math.max(0, Math.round((amount / size - whole) * 10) / 10) : 0;
  const found: Partial<CountRow> =
    size > 0
      ? { full: whole, parts: part > 0 && base === "ml" ? [part] : [] }
      : { full: null, parts: [], amount: Math.round(amount), unit: base === "each" ? "each" : base };
  return {
    sheet: "counts",
    was,
    fact: { ...was, ...found, by: SETTLED_BY },
    words: `Corrects count ${was.count}: about ${shownAmount(amount, base, catalogue.venue)} of ${was.item} in ${was.area} instead of none. Better: count it again.`,
  };
}

/** Items that a count found by whole containers, and how many. */
function fullCounted(scene: Scene, count: Count): Map<string, number> {
  const full = new Map<string, number>();
  for (const row of scene.facts.book.counts) {
    if (row.full === null || !scene.items.has(row.item) || foldName(row.count) !== foldName(count.name))
      continue;
    full.set(row.item, (full.get(row.item) ?? 0) + Math.ceil(row.full));
  }
  return full;
}

/** That a "none there" is wrong: of one item that ran out, and where a whole area is none at once. */
const NONE_WRONG = 0.005;
const AREA_WRONG = 0.95;
/** From how many items of an area, and what share of them, on. */
const AREA_ITEMS = 3;
const AREA_SHARE = 0.6;

/** An area entered as none though stock stood there at the counts beside it. */
export function areaSkipped(scene: Scene): Candidate[] {
  return [scene.closing, scene.opening].flatMap((count) => {
    const rows = rowsOf(scene, count);
    const stood = neighbourStock(scene, count);
    const none = rows.filter((row) => isNone(row) && scene.items.has(row.item));
    const whole = areasSkipped(rows, stood);
    return none.flatMap((row): Candidate[] => {
      const before = stood.get(placeOf(row)) ?? 0;
      const isWhole = whole.has(foldName(row.area));
      // Of an area that was left out, what came there only this week was left out too.
      const size = before > 0 ? before : isWhole ? (containersOf(scene, row.item)[0]?.size ?? 0) : 0;
      if (size <= 0) return [];
      const most = Math.max(size, stockAtMost(scene, count, row.item));
      return [
        {
          kind: "area-skipped",
          what: row.item,
          unit: itemNamed(scene.facts.catalogue, row.item).base,
          effects: [countEffect(scene, count, row.item, -1)],
          // What stood there that day is not known from the counts beside, where all of it was left out.
          size: isWhole
            ? { kind: "any", max: most, typical: size }
            : { kind: "around", center: size, relativeSd: 0.5 },
          chance: !isWhole ? NONE_WRONG : before > 0 ? AREA_WRONG : AREA_WRONG / 10,
          count: count.name,
          correct: (amount) => refilled(scene, row, amount),
          check: () =>
            `Look for ${row.item} in ${row.area}: count ${count.name} says there was none, though other counts found some there.`,
        },
      ];
    });
  });
}

/** The most of an item that can have stood anywhere at a count: all that was there before and came since. */
function stockAtMost(scene: Scene, count: Count, item: string): number {
  const windows = scene.items.get(item);
  const until = count === scene.closing ? windows?.now : windows?.before;
  const since = count === scene.closing ? windows?.after : windows?.now;
  const came = until === undefined ? 0 : until.opening.quantity + until.received + until.made;
  const went = since === undefined ? 0 : since.closing.quantity + since.expected.amount;
  return 1.2 * Math.max(came, went);
}

/** Areas of which most items that stood there are none at once. */
function areasSkipped(rows: readonly CountRow[], stood: Map<string, number>): Set<string> {
  const areas = groupBy(
    rows.filter((row) => (stood.get(placeOf(row)) ?? 0) > 0),
    ({ area }) => foldName(area),
  );
  return new Set(
    [...areas].flatMap(([area, own]) => {
      const gone = own.filter(isNone).length;
      return gone >= AREA_ITEMS && gone >= AREA_SHARE * own.length ? [area] : [];
    }),
  );
}

function rowsOf(scene: Scene, count: Count): CountRow[] {
  return scene.facts.book.counts.filter((row) => foldName(row.count) === foldName(count.name));
}

function isNone({ full, parts, grossG, amount }: CountRow): boolean {
  return (full ?? 0) === 0 && parts.every((part) => part === 0) && grossG.length === 0 && (amount ?? 0) === 0;
}

function placeOf({ area, item }: Pick<CountRow, "area" | "item">): string {
  return JSON.stringify([foldName(area), item]);
}

/** What stood at each place at the counts before and after: the mean of those there are. */
function neighbourStock(scene: Scene, count: Count): Map<string, number> {
  const { counts, catalogue } = scene.facts;
  const at = counts.findIndex(({ name }) => name === count.name);
  const stood = new Map<string, number>();
  const beside = [counts[at - 1], counts[at + 1]].flatMap((other) => other ?? []);
  for (const other of beside) {
    for (const row of rowsOf(scene, other)) {
      const { quantity } = foundIn(catalogue, row, businessDateOf(row.at, catalogue.venue));
      stood.set(placeOf(row), (stood.get(placeOf(row)) ?? 0) + quantity / beside.length);
    }
  }
  return stood;
}
