import type { Change } from "#engine/demand/changed-book.ts";
import { formatDate, formatMoney, formatShare, listWords, plural } from "../format.ts";

/** A change as one would say it. "A party of 120 on Sat 5 Dec, 3 drinks each" */
export function changeWords(change: Change, currency: string): string {
  switch (change.kind) {
    case "party":
      return `A party of ${change.guests} on ${formatDate(change.date)}, ${plural(change.drinksEach, "drink")} each`;
    case "closed":
      return `Closed on ${formatDate(change.date)}`;
    case "price":
      return `${change.drink} at ${formatMoney(change.price, currency)}`;
    case "menu": {
      const on = change.on.map(({ drink, share }) => `${drink} on (${formatShare(share)} of what is sold)`);
      const off = change.off.map((drink) => `${drink} off`);
      return `From ${formatDate(change.from)}: ${listWords([...on, ...off])}`;
    }
  }
}
