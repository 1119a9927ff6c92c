import { prepPlan } from "#engine/prep/plan.ts";
import { saleAsks } from "#engine/sales/asks.ts";
import { addDays, datesFrom } from "#engine/time.ts";
import { facts, sales } from "./zz-try.ts";

const use = new Map<string, number>();
for (const ask of saleAsks(facts.catalogue, sales).asks)
  for (const e of ask.bill.items)
    use.set(
      `${e.item}|${ask.businessDate}`,
      (use.get(`${e.item}|${ask.businessDate}`) ?? 0) + ask.times * e.amount,
    );
const stat = new Map<
  string,
  { n: number; ok: number; ratio: number; make: number; made: number; onHand: number }
>();
for (const date of datesFrom({ from: "2026-10-12", to: "2026-11-16" })) {
  const plan = prepPlan({ facts, sales, date });
  for (const b of plan.batches) {
    const actual =
      datesFrom({ from: date, to: b.coversUntil }).reduce((s, d) => s + (use.get(`${b.prep}|${d}`) ?? 0), 0) /
      (b.unit === "oz" ? 29.57 : 1);
    const s = stat.get(b.prep) ?? { n: 0, ok: 0, ratio: 0, make: 0, made: 0, onHand: 0 };
    s.n++;
    if (actual <= b.need - b.forBatches) s.ok++;
    s.ratio += (b.need - b.forBatches) / actual;
    s.make += b.make;
    s.onHand += b.onHand;
    s.made += facts.book.batches
      .filter((x) => x.prep === b.prep && x.at.slice(0, 10) === date)
      .reduce((a, x) => a + x.made, 0);
    stat.set(b.prep, s);
  }
}
console.table(
  [...stat].map(([prep, s]) => ({
    prep,
    n: s.n,
    cover: s.ok / s.n,
    ratio: s.ratio / s.n,
    make: s.make / s.n,
    made: s.made / s.n,
    onHand: s.onHand / s.n,
  })),
);
