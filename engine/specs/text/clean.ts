const ENTITIES: Record<string, string> = {
  "&amp;": "&",
  "&nbsp;": " ",
  "&frasl;": "/",
  "&frac12;": "½",
  "&frac14;": "¼",
  "&frac34;": "¾",
  "&#8217;": "'",
  "&#39;": "'",
  "&quot;": '"',
};

/** Emoji, tick boxes and other signs before the first letter, figure or bracket. */
const SIGNS = /^(?:[^\p{L}\p{N}\s([{"'~≈.<#|*+>-]+\s*|\.+(?![\d.]|\s\d))/u;

const BULLET =
  /^(?:[-–—*•◦▪‣·●○■□+>]+\s*(?=\S)|\[[ xX]?\]\s*|(?:\(?\d{1,2}\)|\d{1,2}\.)\s+(?=\d|a\s|an\s|top\b|\[)|\d{1,2}[.)]\s+(?=\p{L}))/iu;

/**
 * A pasted line in plain characters: bullets, mark-up and footnote marks off, fractions as "1 1/2", one kind of
 * dash and quote, single spaces.
 *
 * "• 1½ oz. gin*" → "1 1/2 oz. gin"; "1) 2 oz rum" → "2 oz rum"; "½–¾ oz" → "1/2-3/4 oz".
 */
export function cleanLine(raw: string): string {
  const plain = raw
    .replace(/<\/?su[bp]>/gi, "")
    .replace(/<[^<>]*>/g, " ")
    .replace(/&[a-z]+\d*;|&#\d+;/gi, (entity) => ENTITIES[entity.toLowerCase()] ?? entity)
    .replace(/[¼-¾⅐-⅞]/g, (fraction) => ` ${fraction.normalize("NFKD")}`)
    .replace(/(\d)\s*[\u2044∕]\s*(\d)/g, "$1/$2")
    .replace(/[０-９]/g, (digit) => digit.normalize("NFKC"))
    .replace(/\u200b|\u200c|\u200d|\ufeff|\u00ad|\ufe0f/g, "")
    .replace(/[‐‑‒–−]/g, "-")
    .replace(/—|―/g, " - ")
    .replace(/[‘’ʼ´`]/g, "'")
    .replace(/[“”„]/g, '"')
    .replace(/[×✕✖]/g, "x")
    .replace(/\{/g, "(")
    .replace(/\}/g, ")")
    .replace(/…|_{3,}/g, "...")
    .replace(/\s-or-\s|\s(?:and|&)\s*\/\s*or\s/gi, " or ")
    .replace(/(?<=\s)w\/o\s*/gi, "without ")
    .replace(/(?<=\s)w\/\s*/gi, "with ")
    .replace(/\*\*|__|[†‡§®™©]/g, "")
    .replace(/\s+/gu, " ")
    .trim();
  return unwrapped(withoutBullets(withCellsJoined(plain)))
    .replace(/(?<=[\p{L})\].])\*+$/u, "")
    .replace(/^([^"]*[^"\d\s])"$/, "$1")
    .trim();
}

/** A table row as a line: "| 60 ml | gin |" → "60 ml gin", "| gin | 60 ml |" → "gin - 60 ml". */
function withCellsJoined(text: string): string {
  const row = text.replace(/^(?:\|\s*)+|(?:\s*\|)+$/g, "");
  const isAmountFirst = /^[\d.]/.test(row);
  return row
    .replace(/\s*\|\s*(?=\p{L})/gu, isAmountFirst ? " " : " - ")
    .replace(/^([^\d|]+?)\s*\|\s*/, "$1 - ");
}

/** Without quotes or brackets around the whole line, as in a list cut out of a program. */
function unwrapped(text: string): string {
  const inner =
    /^"([^"]+)"[,;]?$/.exec(text)?.[1] ??
    /^'(.+)'[,;]?$/.exec(text)?.[1] ??
    /^\[([^[\]]+)\]$/.exec(text)?.[1] ??
    /^\(([^()]+)\)$/.exec(text)?.[1];
  return inner === undefined ? text : withoutBullets(inner.trim());
}

function withoutBullets(text: string): string {
  const rest = text.replace(SIGNS, "").replace(BULLET, "");
  return rest === text ? rest.replace(/^\*+|\*+$/g, "").trim() : withoutBullets(rest.trim());
}
