import type { Change } from "#engine/demand/changed-book.ts";
import { formatShare } from "../figures.ts";
import { formatDate, listWords } from "../format.ts";
import { formatMoney } from "../money.ts";
import { say } from "../texts/say.ts";

/** A change as one would say it. "A party of 120 on Sat 5 Dec, 3 drinks each" */
export function changeWords(change: Change, currency: string): string {
  switch (change.kind) {
    case "party":
      return say("plan.partyOn", {
        guests: change.guests,
        date: formatDate(change.date),
        drinks: change.drinksEach,
      });
    case "closed":
      return say("plan.closedOn", { date: formatDate(change.date) });
    case "price":
      return say("plan.drinkAt", { drink: change.drink, price: formatMoney(change.price, currency) });
    case "menu": {
      const on = change.on.map(({ drink, share }) =>
        say("plan.drinkOn", { drink, share: formatShare(share) }),
      );
      const off = change.off.map((drink) => say("plan.drinkOff", { drink }));
      return say("plan.menuFrom", { date: formatDate(change.from), changes: listWords([...on, ...off]) });
    }
  }
}
