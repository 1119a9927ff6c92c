import { CAUSE_KINDS, type Cause } from "#engine/variance/causes/cause.ts";
import type { VarianceReport } from "#engine/variance/report.ts";
import type { Simulation } from "#tests/simulate/bar.ts";
import type { Fault, FaultKind, Planted } from "#tests/simulate/faults.ts";
import { drawFault } from "./planted.ts";
import { readSimulated, weekReports } from "./simulated.ts";

/** What became of one planted trouble. */
export type Hit = {
  kind: FaultKind;
  /** Place of the right cause in the list, from 0; −1 where it is not in it. */
  place: number;
  /** Every cause that was listed. */
  said: Said[];
};

/** How sure a cause was said to be, and whether it was so. */
export type Said = {
  kind: Cause["kind"];
  probability: number;
  /** It is what was planted, by its own name. */
  isRight: boolean;
  /** It leads its group; `groupProbability` is that of all listed in the group, right where any of them is. */
  isFirst: boolean;
  groupProbability: number;
  isGroupRight: boolean;
};

/** Plants one trouble of each kind that the bar has room for, and reads the report of its week. */
export function hitsOf(
  simulation: Omit<Simulation, "faults">,
  week: number,
  kinds: readonly FaultKind[] = CAUSE_KINDS,
): Hit[] {
  const clean = readSimulated({ ...simulation, faults: [] });
  return kinds.flatMap((kind) => {
    const fault = drawFault(kind, clean, week, simulation.seed);
    return fault === undefined ? [] : hitOf(simulation, fault, week);
  });
}

/** A trouble that no item shows beyond three standard uncertainties cannot be asked for. */
const LEAST_RATIO = 3;

function hitOf(simulation: Omit<Simulation, "faults">, fault: Fault, week: number): Hit[] {
  const bar = readSimulated({ ...simulation, faults: [fault] });
  const planted = bar.truth.planted.filter((one) => one.kind === fault.kind && one.week === week);
  // Where the bar counts more than once a week, the period that shows it most.
  const report = weekReports(bar, week).reduce((a, b) => (leadingRatio(b) > leadingRatio(a) ? b : a));
  if (planted.length === 0 || leadingRatio(report) <= LEAST_RATIO) return [];
  const isLast = report.closing === bar.facts.counts.at(-1)?.name;
  const { causes } = report;
  const isRight = (cause: Cause) =>
    planted.some(({ kind, what }) => kind === cause.kind && isAlike(what, cause.what));
  const said = causes.map((cause): Said => {
    const group = causes.filter(({ group }) => group === cause.group);
    return {
      kind: cause.kind,
      probability: cause.probability,
      isRight: isRight(cause),
      isFirst: group[0] === cause,
      groupProbability: group.reduce((sum, { probability }) => sum + probability, 0),
      isGroupRight: group.some(isRight),
    };
  });
  const place = causes.findIndex((cause) => planted.some((one) => isFound(cause, one, fault, isLast)));
  return [{ kind: fault.kind, place, said }];
}

function leadingRatio({ items }: VarianceReport): number {
  return Math.max(...items.map(({ ratio }) => Math.abs(ratio)));
}

const ONE_BOTTLE: readonly string[] = ["breakage", "delivery-short", "container-miscounted"];
const NOT_RUNG: readonly string[] = ["not-rung", "unmapped-sale"];

/**
 * The planted cause, or one that no arithmetic tells from it: a bottle broken or short in the drop; also miscounted,
 * as long as there is no later count; a drink not rung or rung under a name without a meaning.
 */
function isFound(cause: Cause, planted: Planted, fault: Fault, isLast: boolean): boolean {
  if (cause.kind === planted.kind) return isAlike(cause.what, planted.what);
  if (ONE_BOTTLE.includes(cause.kind) && ONE_BOTTLE.includes(planted.kind)) {
    const hasMiscount = [cause.kind, planted.kind].includes("container-miscounted");
    return isAlike(cause.what, planted.what) && (!hasMiscount || (isLast && planted.sign !== 1));
  }
  if (NOT_RUNG.includes(cause.kind) && NOT_RUNG.includes(planted.kind) && "drink" in fault) {
    return [cause.what, cause.evidence[0]?.item].includes(fault.drink);
  }
  return false;
}

function isAlike(a: Cause["what"], b: Cause["what"]): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

const BINS = [0.03, 0.1, 0.2, 0.4, 0.6, 0.8, 0.9, 0.97, 1.0001];

/** How often causes were right of those said to be about so likely: by their own names, and by their groups. */
export function reliabilityTable(hits: readonly Hit[]): string {
  const said = hits.flatMap((hit) => hit.said);
  const own = said.map(({ probability, isRight }) => ({ said: probability, isRight }));
  const groups = said
    .filter(({ isFirst }) => isFirst)
    .map(({ groupProbability, isGroupRight }) => ({ said: groupProbability, isRight: isGroupRight }));
  const cells = (list: readonly { said: number; isRight: boolean }[]) => {
    if (list.length === 0) return "    0 |     – |     –";
    const mean = list.reduce((sum, one) => sum + one.said, 0) / list.length;
    const right = list.filter(({ isRight }) => isRight).length / list.length;
    return `${String(list.length).padStart(5)} | ${mean.toFixed(3)} | ${right.toFixed(3)}`;
  };
  const rows = BINS.slice(1).map((to, index) => {
    const from = BINS[index] ?? 0;
    const isIn = (one: { said: number }) => one.said >= from && one.said < to;
    const span = `${from.toFixed(2)}–${Math.min(1, to).toFixed(2)}`;
    return `| ${span} | ${cells(own.filter(isIn))} | ${cells(groups.filter(isIn))} |`;
  });
  return [
    "| said      | names | mean  | right | groups | mean | right |",
    "| --- | --- | --- | --- | --- | --- | --- |",
    ...rows,
  ].join("\n");
}

/** One line a kind: how many, how often first, how often among the first three. */
export function hitTable(hits: readonly Hit[]): string {
  const line = (name: string, own: readonly Hit[]) =>
    `| ${name.padEnd(22)} | ${String(own.length).padStart(5)} | ${share(own, 1)} | ${share(own, 3)} |`;
  const kinds = CAUSE_KINDS.map((kind) =>
    line(
      kind,
      hits.filter((hit) => hit.kind === kind),
    ),
  );
  const head = `| ${"kind".padEnd(22)} | runs  | first | first three |`;
  return [head, "| --- | --- | --- | --- |", ...kinds, line("all", hits)].join("\n");
}

function share(hits: readonly Hit[], most: number): string {
  return hits.length === 0 ? "    –" : `${Math.round(100 * rateWithin(hits, most))} %`.padStart(5);
}

/** The share of troubles whose cause is among the first so many. */
export function rateWithin(hits: readonly Hit[], most: number): number {
  return hits.filter(({ place }) => place >= 0 && place < most).length / Math.max(1, hits.length);
}
