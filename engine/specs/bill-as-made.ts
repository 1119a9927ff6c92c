import type { Bill, CutAsk } from "#engine/specs/bill.ts";
import { fruitOf } from "#engine/specs/fruit.ts";

/**
 * The bill of a batch with what was really used in place of what its spec says, item by item, in base units.
 *
 * What was weighed or counted has no spread of its own. A fruit's shares grow or shrink to the pieces really used, so that
 * its other parts stay free for the day's other uses. An item that the spec does not name comes on top.
 * 38 limes' flesh, 42 used → 42 shares of flesh; 1000 g sugar, 1100 used → 1100 g.
 */
export function billAsMade(bill: Bill, used: ReadonlyMap<string, number>): Bill {
  const whole = new Map(bill.items.map(({ item, amount }) => [item, amount]));
  const cut = new Map(fruitOf(bill).map(({ item, amount }) => [item, amount]));
  const cutShare = (item: string) => {
    const pieces = cut.get(item) ?? 0;
    return pieces === 0 ? 0 : pieces / (pieces + (whole.get(item) ?? 0));
  };
  const asMade = [...used].map(([item, amount]) => ({
    item,
    amount: amount * (1 - cutShare(item)),
    variance: 0,
    biasSd: 0,
  }));
  return {
    items: [
      ...bill.items.filter(({ item }) => !used.has(item)),
      ...asMade.filter(({ amount }) => amount > 0),
    ],
    cuts: bill.cuts.map((ask) => {
      const amount = used.get(ask.source);
      return amount === undefined
        ? ask
        : cutAsMade(ask, (amount * cutShare(ask.source)) / (cut.get(ask.source) ?? 1));
    }),
  };
}

function cutAsMade(ask: CutAsk, factor: number): CutAsk {
  return { ...ask, shares: ask.shares * factor, variance: 0, yieldSd: 0 };
}
