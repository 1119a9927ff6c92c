import { isCountedName, lastWord } from "#engine/specs/text/german/pieces.ts";
import {
  APPROXIMATELY,
  ENGLISH_TOO,
  FILLING,
  GARNISH,
  HEADINGS,
  NUMBERS,
  PARTS_OF,
  PIECES,
  QUALIFIERS,
  STATES,
  STEPS,
  UNIT_LETTERS,
  UNIT_WORDS,
  VAGUE_WORDS,
} from "#engine/specs/text/german/words.ts";

/** Behind the last letter of a word. */
export const END = "(?![\\p{L}\\d])";

/** A pattern made of words, whose letters may have accents. */
export function words(pattern: string, flags = "iu"): RegExp {
  return new RegExp(pattern, flags);
}

/** "Garnitur:", "zum Garnieren" and the like before a piece. */
export const GARNISHED = words(
  `^(?:(?:als|zum|zur|für\\s+die)\\s+(?:${GARNISH})${END}\\s*(?::|-|mit${END})?|(?:${GARNISH})\\s*(?::|-|mit${END}))\\s*`,
);

const HEADING = words(`^(?:${HEADINGS})\\s*:?$`);

const FIGURES = "(?:[\\d.,/]+(?:\\s*(?:-|bis)\\s*[\\d.,/]+|\\s+\\d+/\\d+)?)";
const MEASURES = [...UNIT_WORDS.map(([, spelled]) => spelled), VAGUE_WORDS, ...PIECES.flat()]
  .filter((word) => !ENGLISH_TOO.includes(word))
  .join("|");

/** What only German lines have: joints anywhere; measures, parts and numbers where they stand in a line. */
const MARKS = [
  words(`(?:^|[\\s(])(?:und|oder|mit|zum|zur|nach|für|${FILLING}|${STATES}|${STEPS})(?=\\s|$|[:),.])`),
  words(
    `^(?:(?:${APPROXIMATELY})\\s*)?${FIGURES}\\s*(?:(?:${QUALIFIERS})e[rnms]?\\s+)?(?:${MEASURES})\\.?${END}`,
  ),
  words(`^${FIGURES}\\s+(?:${QUALIFIERS})e[rnms]?\\s`),
  words(`^${FIGURES}\\s*(?:${UNIT_LETTERS.map(([, letters]) => letters).join("|")})\\.?${END}`, "u"),
  words(
    `^(?:${NUMBERS.map(([spelled]) => spelled).join("|")}|etwa|ungefähr|knapp|etwas|einige|${PARTS_OF})${END}`,
  ),
  GARNISHED,
  HEADING,
];

/** Whether a line is to be read as German. A line of English has none of the words that tell. */
export function isGerman(line: string): boolean {
  return MARKS.some((mark) => mark.test(line)) || namesGermanPiece(line);
}

/** "1/2 Limette", "3 Gurkenscheiben, dünn" and "Zitronenzeste" have nothing German but their names. */
function namesGermanPiece(line: string): boolean {
  const name = line.replace(/^[\d.,/½¼¾⅓⅔\s–x-]+/u, "").split(/[,(;]|\s-\s/)[0] ?? "";
  return isCountedName(name.trim()) && !ENGLISH_TOO.includes(lastWord(name));
}

/** Whether a German line is the heading of a list. */
export function isGermanHeading(line: string): boolean {
  return HEADING.test(line);
}
