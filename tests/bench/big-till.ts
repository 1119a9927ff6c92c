import { closeSync, openSync, writeSync } from "node:fs";
import { addDays } from "#engine/time.ts";
import type { BigBar } from "#tests/bench/big-bar.ts";
import { type Random, randomStream } from "#tests/simulate/random.ts";

/** A million lines are 364 business days. */
export const LINES_A_DAY = 2748;
const SERVICE_STARTS_S = 16 * 3600;
const SERVICE_LASTS_S = 10 * 3600;
const WRITE_CHARACTERS = 1 << 20;

/**
 * Writes the till's export of so many lines, in the order of time: checks of one to five lines, modifiers on 15 % of them,
 * voids on 2 %, names quoted where they hold a comma or a quotation mark.
 */
export function writeBigTill(file: string, bar: BigBar, lines: number, seed: number): void {
  const random = randomStream(seed, "till");
  const out = openSync(file, "w");
  let text = "Sold at,Check,Line,Item,Modifiers,Qty,Gross,Net,Till,Server\r\n";
  let written = 0;
  let check = 10_000;
  for (let day = 0; written < lines; day += 1) {
    const date = addDays(bar.firstDate, day);
    const next = addDays(date, 1);
    const today = Math.min(LINES_A_DAY, lines - written);
    let inCheck = 0;
    for (let line = 0; line < today; line += 1) {
      if (inCheck === 0) {
        check += 1;
        inCheck = random.whole(1, 5);
      }
      const second = SERVICE_STARTS_S + Math.floor(((line + random.uniform()) * SERVICE_LASTS_S) / today);
      text += rowOf(bar, random, {
        date: second < 86_400 ? date : next,
        second: second % 86_400,
        check,
        inCheck,
      });
      inCheck -= 1;
    }
    written += today;
    if (text.length > WRITE_CHARACTERS) {
      writeSync(out, text);
      text = "";
    }
  }
  writeSync(out, text);
  closeSync(out);
}

type Moment = { date: string; second: number; check: number; inCheck: number };

function rowOf(bar: BigBar, random: Random, { date, second, check, inCheck }: Moment): string {
  // A few drinks sell most, as in every bar.
  const drink = bar.drinks[Math.floor(random.uniform() ** 2 * bar.drinks.length)];
  if (drink === undefined) throw new Error("The bar has no such drink.");
  const quantity = random.chance(0.02) ? -1 : random.chance(0.08) ? 2 : 1;
  const modifiers = random.chance(0.15) ? modifiersOf(bar, random) : "";
  const gross = (quantity * drink.price).toFixed(2);
  const net = (quantity * drink.price * 0.8).toFixed(2);
  return `${date} ${clock(second)},${check},${inCheck},${quoted(drink.name)},${modifiers},${quantity},${gross},${net},Bar ${1 + (check % 3)},S${check % 9}\r\n`;
}

function modifiersOf({ modifiers }: BigBar, random: Random): string {
  const first = random.pick(modifiers);
  const second = random.pick(modifiers);
  return random.chance(0.2) && first !== second ? `${first}; ${second}` : first;
}

function quoted(name: string): string {
  return /[",]/.test(name) ? `"${name.replaceAll('"', '""')}"` : name;
}

function clock(second: number): string {
  const two = (value: number): string => String(value).padStart(2, "0");
  return `${two(Math.floor(second / 3600))}:${two(Math.floor(second / 60) % 60)}:${two(second % 60)}`;
}
