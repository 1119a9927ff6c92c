import { unitFactor } from "#engine/measure/unit-factor.ts";
import { DEFAULT_HOUSE_ML, type Unit } from "#engine/measure/units.ts";
import { joinNotes } from "#engine/specs/text/checks.ts";
import { RefusedLine } from "#engine/specs/text/entry.ts";
import { readUnit, vagueMeasure } from "#engine/specs/text/measure-words.ts";
import { readQuantity } from "#engine/specs/text/quantity.ts";

/** House measures and labels round by more than this never: "1 oz (30 ml)" is 1.4 % off, "1/4 oz (10 ml)" 35 %. */
const AGREEMENT = 0.36;

/**
 * The same amount written a second time right behind the first ("1 oz (30 ml) gin", "60 ml / 2 oz gin"), as a note.
 *
 * The first is the one that counts. Throws RefusedLine when the two cannot mean the same, or add up ("1 oz + 1 tsp").
 */
export function statedTwice(first: { amount: number; unit: Unit; rest: string }): {
  rest: string;
  note: string | null;
} {
  const added = /^\s*(?:\+|plus|and|&)\s+(.*)$/i.exec(first.rest);
  if (added !== null) {
    const more = readQuantity(added[1] ?? "");
    if (more !== undefined && readUnit(more.rest) !== undefined) {
      throw new RefusedLine(`"${first.rest.trim()}" adds a second measure: write the sum as one amount.`);
    }
  }
  const bracketed = /^\s*[([]\s*([^()[\]]*?)\s*[)\]]\s*(.*)$/.exec(first.rest);
  if (bracketed !== null) return inBrackets(first, bracketed[1] ?? "", bracketed[2] ?? "");
  const behind = /^\s*(?:\/|\||=|or\s|-|,)?\s*(.*)$/i.exec(first.rest)?.[1] ?? "";
  const second = readQuantity(behind);
  const vague = second === undefined || !/^\s*[/|=]/.test(first.rest) ? undefined : vagueMeasure(second.rest);
  if (second !== undefined && vague !== undefined) {
    const at = second.rest.indexOf(vague) + vague.length;
    return {
      rest: second.rest.slice(at),
      note: `${behind.slice(0, behind.length - second.rest.length)} ${vague}`,
    };
  }
  const unit = second === undefined ? undefined : readUnit(second.rest);
  if (second === undefined || unit === undefined) return { rest: first.rest, note: null };
  requireAgreement(first, { amount: second.amount * unit.factor, unit: unit.unit });
  const note = behind.slice(0, behind.length - unit.rest.length).trim();
  if (!/^\s*[/|=]/.test(unit.rest)) return { rest: unit.rest, note };
  const third = statedTwice({ ...first, rest: unit.rest });
  return { rest: third.rest, note: joinNotes([note, third.note]) };
}

function inBrackets(first: { amount: number; unit: Unit }, inside: string, rest: string) {
  const second = readQuantity(inside.replace(/^(?:about|approx\.?|ca\.|~|or)\s*/i, ""));
  const unit = second === undefined ? undefined : readUnit(second.rest);
  if (second !== undefined && unit !== undefined) {
    requireAgreement(first, { amount: second.amount * unit.factor, unit: unit.unit });
  }
  return { rest, note: inside };
}

function requireAgreement(first: Measure, second: Measure): void {
  const one = inBase(first);
  const other = inBase(second);
  // The ounces beside a cup of leaves or bark are of its weight.
  const isCupByWeight = first.unit === "cup" && second.unit === "oz";
  if (one.base !== other.base || isCupByWeight) return;
  const isHouse = [first, second].some(({ unit }) => unit in DEFAULT_HOUSE_ML);
  const ratio = Math.max(one.amount, other.amount) / Math.min(one.amount, other.amount);
  if (isHouse || ratio <= 1 + AGREEMENT) return;
  throw new RefusedLine(
    `${first.amount} ${first.unit} and ${second.amount} ${second.unit} are not the same amount: write the right one alone.`,
  );
}

type Measure = { amount: number; unit: Unit };

function inBase({ amount, unit }: Measure) {
  const { base, factor } = unitFactor(unit, { oz: "us", houseMl: DEFAULT_HOUSE_ML });
  return { base, amount: amount * factor };
}
