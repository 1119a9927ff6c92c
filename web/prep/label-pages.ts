import type { Label } from "#engine/prep/label.ts";
import { say } from "../texts/say.ts";
import { labelWords } from "./label-words.ts";

/** What is printed on one physical label, at one size of type. */
export type LabelPage = { sizePt: number; lines: readonly string[] };

/** Whether lines fit on a label at a size of type; the first line is its head. */
export type Fits = (lines: readonly string[], sizePt: number) => boolean;

/**
 * Smallest type: an x-height of 1.2 mm, which EU Regulation 1169/2011, Article 13(2), asks of mandatory particulars on food
 * (from memory); our type's is half its size. A bench label is no such particular, but it is read in as poor a light.
 */
export const SMALLEST_PT = 7;
const STEP_PT = 0.5;
const NAME_MOST = 40;

/**
 * One batch's label on as many physical labels as it takes: type shrinks to the smallest legible size, then what does not
 * fit goes on to a second label under the same name and batch. Nothing is left out; what is long (allergens) comes last.
 */
export function labelPages(
  label: Label,
  { dayLine, largestPt, fits }: { dayLine: string; largestPt: number; fits: Fits },
): LabelPage[] {
  const { name, batch, allergens } = label;
  const counting = dayLine.trim() === "" ? [] : [dayLine.trim()];
  const all = [...labelWords(label), ...counting, keptTogether(allergens)];
  for (let sizePt = largestPt; sizePt >= SMALLEST_PT; sizePt -= STEP_PT) {
    if (fits(all, sizePt)) return [{ sizePt, lines: all }];
  }
  const head = name.length > NAME_MOST ? `${name.slice(0, NAME_MOST - 1)}…` : name;
  return spread(all, (number) => say("prep.labelHead", { name: head, batch, number }), fits).map((page) => ({
    sizePt: SMALLEST_PT,
    lines: page,
  }));
}

/** What stands before a colon ("May contain:") is never parted: the second word alone would say another thing. */
function keptTogether(allergens: string): string {
  return allergens.replace(/(?<=^|\. )[^.:]+: /g, (head) => head.replaceAll(" ", "\u00a0"));
}

/**
 * Lines over labels at the smallest type, words kept whole. A label that is not the last says so; one that goes on has a head
 * that says with what.
 */
function spread(all: readonly string[], headOf: (number: number) => string, fits: Fits): string[][] {
  const takes = (lines: readonly string[]) => fits(lines, SMALLEST_PT);
  const pages: string[][] = [];
  let left = [...all];
  while (left.length > 0) {
    const number = pages.length + 1;
    const head = number === 1 ? [] : [headOf(number)];
    if (takes([...head, ...left])) return [...pages, [...head, ...left]];
    const more = say("prep.labelMore", { number: number + 1 });
    const { taken, rest } = fill(left, (lines) => takes([...head, ...lines, more]));
    pages.push([...head, ...taken, more]);
    left = rest;
  }
  return pages;
}

/** As many lines, and words of the next one, as a label takes; at least a word, which the printer's wrapping then breaks. */
function fill(lines: readonly string[], takes: (lines: readonly string[]) => boolean) {
  const taken: string[] = [];
  for (const [place, line] of lines.entries()) {
    const words = line.split(" ");
    const count = Math.max(
      mostWords(words, (text) => takes([...taken, text])),
      taken.length === 0 ? 1 : 0,
    );
    if (count > 0) taken.push(words.slice(0, count).join(" "));
    if (count === words.length) continue;
    const unfinished = words.slice(count).join(" ");
    return { taken, rest: [count === 0 ? unfinished : `… ${unfinished}`, ...lines.slice(place + 1)] };
  }
  return { taken, rest: [] };
}

/** How many of the first words fit. */
function mostWords(words: readonly string[], takes: (text: string) => boolean): number {
  let [low, high] = [0, words.length];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (takes(words.slice(0, middle).join(" "))) low = middle;
    else high = middle - 1;
  }
  return low;
}
