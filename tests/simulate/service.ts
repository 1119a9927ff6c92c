import type { Day, SimDrink, SimPour } from "./catalogue.ts";
import { menuOn, pourAmount, ringsOf, type Sellable } from "./mean-use.ts";
import { canServe, type Moment, pourServe, realAsks } from "./pouring.ts";
import { pourAsks } from "./recipe.ts";
import { charges, newLine, ringDrink, ringVoid, withStray } from "./ringing.ts";
import { type Bar, type Boards, dateOf, expectUse } from "./state.ts";

const OPENS = 16 * 60;
const OPEN_MINUTES = 10 * 60 + 15;
/** Guests of one night differ in taste from those of the next: relative spread 1 ÷ √25. */
const TASTE_SHAPE = 25;
/** Nights are over-dispersed: relative spread 1 ÷ √45 beyond what chance alone would give. */
const NIGHT_SHAPE = 45;
const HAPPY_HOUR_PRICE = 0.75;

/** One night: guests come, choose, are served or choose again, and the till rings. */
export function runService(bar: Bar, boards: Boards, day: Day): void {
  const { demand, guests } = bar.random;
  const tonight = menuOn(bar.catalogue, day).map((sold) => ({
    ...sold,
    weight: sold.weight * demand.gamma(TASTE_SHAPE),
  }));
  const sales = demand.poisson(bar.catalogue.drinksPerDay * bar.busyness(day) * demand.gamma(NIGHT_SHAPE));
  const times = Array.from({ length: sales }, () => guestMinutes(guests.uniform(), guests.uniform())).sort(
    (a, b) => a - b,
  );

  let seatsLeft = 0;
  for (const minutes of times) {
    if (seatsLeft === 0) {
      seatsLeft = guests.whole(1, 4);
      bar.next.check += 1;
    }
    seatsLeft -= 1;
    serveGuest(bar, boards, tonight, { day, minutes });
  }
}

/** Most come in mid-evening, some after midnight. */
function guestMinutes(first: number, second: number): number {
  return Math.floor(OPENS + OPEN_MINUTES * (0.62 * first + 0.38 * second));
}

function serveGuest(bar: Bar, boards: Boards, menu: readonly Sellable[], moment: Moment): void {
  for (let attempt = 0; attempt < 4; attempt += 1) {
    const sold = bar.random.guests.pickWeighted(menu, ({ weight }) => weight);
    const isServed =
      sold.kind === "drink"
        ? serveDrink(bar, boards, sold.drink, moment)
        : servePour(bar, boards, sold.pour, moment);
    if (isServed) return;
  }
}

function serveDrink(bar: Bar, boards: Boards, drink: SimDrink, moment: Moment): boolean {
  const { guests } = bar.random;
  const ring = guests.pickWeighted(
    ringsOf(drink).filter(({ name }) => !name.startsWith("HH ") || isHappyHour(moment)),
    ({ share }) => share,
  );
  const modifiers = (drink.asks ?? [])
    .filter(({ chance }) => guests.chance(chance))
    .map(({ modifier }) => modifier);
  const quantity = ring.serves === 1 && guests.chance(0.12) ? 2 : 1;
  const price =
    drink.price * ring.serves * (ring.name.startsWith("HH ") ? HAPPY_HOUR_PRICE : 1) +
    charges(bar, modifiers);
  const line = newLine(bar, moment, {
    ring: ring.name,
    modifiers: withStray(bar, modifiers),
    quantity,
    price,
  });

  if (guests.chance(0.012)) return ringVoid(bar, line);
  const serves = quantity * ring.serves;
  const asks = realAsks(bar, drink, moment.day, modifiers);
  if (!canServe(bar, boards, asks, serves, moment)) return false;
  for (let made = 0; made < serves; made += 1)
    pourServe(bar, boards, { asks, drink: drink.name, flow: "byDrinks" }, moment.day);
  noteServes(bar, moment.day, drink.name, serves);
  ringDrink(bar, boards, { drink, line, serves, modifiers });
  return true;
}

function servePour(bar: Bar, boards: Boards, pour: SimPour, moment: Moment): boolean {
  const asks = pourAsks(pour.item, pourAmount(pour));
  const quantity = bar.random.guests.chance(0.12) ? 2 : 1;
  const line = newLine(bar, moment, {
    ring: pour.ring,
    modifiers: withStray(bar, []),
    quantity,
    price: pour.price,
  });
  if (bar.random.guests.chance(0.012)) return ringVoid(bar, line);
  if (!canServe(bar, boards, asks, quantity, moment)) return false;
  for (let made = 0; made < quantity; made += 1) {
    pourServe(bar, boards, { asks, drink: pour.ring, flow: "byDrinks" }, moment.day);
  }
  bar.rung.push(line);
  expectUse(bar, pour.item, pourAmount(pour) * quantity);
  noteServes(bar, moment.day, pour.ring, quantity);
  return true;
}

function isHappyHour({ day, minutes }: Moment): boolean {
  return day % 7 < 5 && minutes >= 17 * 60 && minutes < 19 * 60;
}

function noteServes(bar: Bar, day: Day, name: string, serves: number): void {
  const date = dateOf(bar, day);
  const ofDay = bar.serves.get(date) ?? new Map<string, number>();
  ofDay.set(name, (ofDay.get(name) ?? 0) + serves);
  bar.serves.set(date, ofDay);
}
