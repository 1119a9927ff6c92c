import { readBookFolder } from "#db/book/folder.ts";
import { factsOf } from "#engine/facts.ts";
import { prepPlan } from "#engine/prep/plan.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { readSalesFiles } from "#server/sales-files.ts";

const { book, salesFiles } = readBookFolder("/work/main/sample-sales");
const facts = factsOf(book);
const seen = new Map<string, SaleGroup>();
const lines = new Map<string, { n: number }>();
const out: SaleGroup[] = [];
const perKey = new Map<string, number>();
for (const { lines } of readSalesFiles(salesFiles, book, () => {}).imports) {
  const inFile = new Map<string, number>();
  for (const l of lines) {
    const key = JSON.stringify([
      l.businessDate,
      l.at,
      l.ringName,
      l.modifiers,
      l.quantity,
      l.check,
      l.lineNo,
    ]);
    const n = (inFile.get(key) ?? 0) + 1;
    inFile.set(key, n);
    if (n <= (perKey.get(key) ?? 0)) continue;
    perKey.set(key, n);
    out.push({
      businessDate: l.businessDate,
      at: l.at,
      timed: l.at !== null,
      ringName: l.ringName,
      modifiers: l.modifiers,
      quantity: l.quantity,
      netMinor: l.netMinor ?? 0,
    });
  }
}
void seen;
void lines;
export const sales = out;
export { facts };

const date = process.argv[2] ?? "2026-11-23";
const t0 = performance.now();
const t1 = performance.now();
const plan = prepPlan({ facts, sales, date });
console.log("sales groups", sales.length, "ms", t1 - t0, performance.now() - t1);
console.log(plan.at);
console.table(
  plan.batches.map(
    ({
      prep,
      make,
      unit,
      batches,
      need,
      onHand,
      usable,
      useBy,
      order,
      coversUntil,
      runsOutOn,
      brix,
      limitedBy,
      canMake,
    }) => ({
      prep,
      make,
      unit,
      batches,
      need: Math.round(need),
      onHand: Math.round(onHand),
      usable: Math.round(usable),
      useBy,
      order,
      coversUntil,
      runsOutOn,
      brix,
      lim: limitedBy.join(),
      canMake: Math.round(canMake),
    }),
  ),
);
console.dir(plan.cuts, { depth: 5 });
console.table(plan.discard);
console.table(plan.enough);
console.table(plan.pickList);
console.log(plan.batches.map((b) => [b.prep, b.cautions]));
