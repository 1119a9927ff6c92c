const ENTITIES: Record<string, string> = {
  "&amp;": "&",
  "&nbsp;": " ",
  "&frac12;": "½",
  "&frac14;": "¼",
  "&frac34;": "¾",
  "&#8217;": "'",
  "&#39;": "'",
  "&quot;": '"',
};

const BULLET =
  /^(?:[-–—*•◦▪‣·●○■□+>]+\s*(?=\S)|\[[ xX]?\]\s*|(?:\(?\d{1,2}\)|\d{1,2}\.)\s+(?=\d|a\s|an\s|top\b|\[))/iu;

/**
 * A pasted line in plain characters: bullets, mark-up and footnote marks off, fractions as "1 1/2", one kind of
 * dash and quote, single spaces.
 *
 * "• 1½ oz. gin*" → "1 1/2 oz. gin"; "1) 2 oz rum" → "2 oz rum"; "½–¾ oz" → "1/2-3/4 oz".
 */
export function cleanLine(raw: string): string {
  const plain = raw
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
    .replace(/\*\*|__|[†‡§®™©]/g, "")
    .replace(/\s+/gu, " ")
    .trim();
  return withoutBullets(plain.replace(/^\|\s*|\s*\|$/g, ""))
    .replace(/(?<=[\p{L})\].])\*+$/u, "")
    .trim();
}

function withoutBullets(text: string): string {
  const rest = text.replace(BULLET, "");
  return rest === text ? rest.replace(/^\*+|\*+$/g, "").trim() : withoutBullets(rest.trim());
}
