import { baseAmount, itemNamed } from "#engine/catalogue.ts";
import { shownAmount } from "#engine/measure/shown-amount.ts";
import { billOfBatch } from "#engine/specs/bill.ts";
import { type Candidate, effectNow, shareChance, type Weighed } from "#engine/variance/causes/candidate.ts";
import { dateOfScene } from "#engine/variance/causes/containers.ts";
import { type Correction, SETTLED_BY } from "#engine/variance/causes/correction.ts";
import { middleOfItem, type Scene } from "#engine/variance/causes/scene.ts";
import { inForce } from "#engine/versions.ts";

const NOT_LOGGED = 0.2;

/** A batch made but not logged: more of the prep than explained, and its inputs gone in the spec's proportions. */
export function batchNotLogged(scene: Scene): Candidate[] {
  const { catalogue } = scene.facts;
  const weighed = stockedPreps(scene).flatMap((prep): Weighed[] => {
    const bill = billOfBatch(catalogue, { prep, amount: 1, date: dateOfScene(scene) });
    if (bill === undefined) return [];
    const inputs = [...scene.useOf(bill)].filter(([item]) => item !== prep);
    const candidate = {
      kind: "batch-not-logged" as const,
      what: prep,
      unit: itemNamed(catalogue, prep).base,
      effects: [effectNow(prep, -1), ...inputs.map(([item, amount]) => effectNow(item, amount))],
      correct: (size: number): Correction => ({
        sheet: "batches",
        was: null,
        fact: {
          at: middleOfItem(scene, prep),
          prep,
          made: Math.round(size),
          unit: itemNamed(catalogue, prep).base,
          by: SETTLED_BY,
          note: "found by the variance",
        },
        words: `Enters a batch of ${shownAmount(size, itemNamed(catalogue, prep).base, catalogue.venue)} of ${prep}.`,
      }),
      check: () =>
        `Look at the labels and the prep board for a batch of ${prep} that is on no batch sheet; its inputs are gone too.`,
    };
    const sizes = usualBatches(scene, prep);
    return [
      ...sizes.map(({ size, share }) => ({
        ...candidate,
        size: { kind: "around" as const, center: size, relativeSd: 0.12 },
        weight: 0.8 * share,
      })),
      {
        ...candidate,
        size: { kind: "any" as const, max: 20 * (sizes[0]?.size ?? 1000), typical: sizes[0]?.size ?? 1000 },
        weight: 0.2,
      },
    ];
  });
  return shareChance(NOT_LOGGED, weighed);
}

const THROWN_OUT = 0.15;

/** A batch, or what was left of one, thrown out without a note: the prep alone is gone. */
export function batchThrownOut(scene: Scene): Candidate[] {
  const weighed = stockedPreps(scene).flatMap((prep): Weighed[] => {
    const now = scene.items.get(prep)?.now;
    const [usual] = usualBatches(scene, prep);
    if (now === undefined) return [];
    const most = now.opening.quantity + now.made + now.received;
    return [
      {
        kind: "batch-thrown-out",
        what: prep,
        unit: itemNamed(scene.facts.catalogue, prep).base,
        effects: [effectNow(prep, 1)],
        size: { kind: "any", max: most, typical: Math.min(most, usual?.size ?? most) },
        weight: 1,
        correct: (size) => ({
          sheet: "losses",
          was: null,
          fact: {
            at: middleOfItem(scene, prep),
            kind: "expired",
            what: prep,
            amount: Math.round(size),
            unit: itemNamed(scene.facts.catalogue, prep).base,
            by: SETTLED_BY,
            note: "found by the variance",
          },
          words: `Enters ${shownAmount(size, itemNamed(scene.facts.catalogue, prep).base, scene.facts.catalogue.venue)} of ${prep} as thrown out.`,
        }),
        check: () =>
          `Look at the use-by dates of ${prep} in these days and ask for the waste sheet: a batch may have been thrown out without a note.`,
      },
    ];
  });
  return shareChance(THROWN_OUT, weighed);
}

/** Preps that are made in batches, stocked and counted. */
function stockedPreps({ facts, items }: Scene): string[] {
  const { catalogue } = facts;
  return [...items.keys()].filter(
    (item) => itemNamed(catalogue, item).stocked && (catalogue.preps.has(item) || catalogue.cuts.has(item)),
  );
}

/** The sizes in which a prep was made so far, most often first; else its step or its spec's yield. */
function usualBatches(scene: Scene, prep: string): { size: number; share: number }[] {
  const { catalogue, book } = scene.facts;
  const made = book.batches
    .filter((batch) => batch.prep === prep)
    .map(({ made: amount, unit }) => baseAmount(catalogue, { item: prep, amount, unit }));
  if (made.length === 0) {
    const version = inForce(catalogue.preps.get(prep) ?? [], dateOfScene(scene));
    if (version === undefined) return [];
    const amount = version.batchStep ?? version.yield;
    return [{ size: baseAmount(catalogue, { item: prep, amount, unit: version.unit }), share: 1 }];
  }
  return clusters(made).map(({ size, count }) => ({ size, share: count / made.length }));
}

/** Batches within a tenth of each other count as one size. */
function clusters(sizes: readonly number[]): { size: number; count: number }[] {
  const groups: { size: number; count: number }[] = [];
  for (const size of [...sizes].sort((a, b) => a - b)) {
    const last = groups.at(-1);
    if (last !== undefined && size <= last.size * 1.1) {
      last.size = (last.size * last.count + size) / (last.count + 1);
      last.count += 1;
    } else groups.push({ size, count: 1 });
  }
  return groups.sort((a, b) => b.count - a.count).slice(0, 4);
}
