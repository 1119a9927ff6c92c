/** What a fruit or herb is cut or picked into; one of them is one piece of the item so named. */
const PIECES: Record<string, string> = {
  slice: "slice",
  slices: "slice",
  sprig: "sprig",
  sprigs: "sprig",
  wedge: "wedge",
  wedges: "wedge",
  leaf: "leaf",
  leaves: "leaf",
  leafs: "leaf",
  twist: "twist",
  twists: "twist",
  peel: "peel",
  peels: "peel",
  wheel: "wheel",
  wheels: "wheel",
  "half-wheel": "half-wheel",
  "half-wheels": "half-wheel",
  "half-moon": "half-moon",
  "half-moons": "half-moon",
  strip: "strip",
  strips: "strip",
  zest: "zest",
  zests: "zest",
  chunk: "chunk",
  chunks: "chunk",
  cube: "cube",
  cubes: "cube",
  lump: "lump",
  lumps: "lump",
  stick: "stick",
  sticks: "stick",
  spear: "spear",
  spears: "spear",
  ring: "ring",
  rings: "ring",
  round: "round",
  rounds: "round",
  ribbon: "ribbon",
  ribbons: "ribbon",
  swath: "swath",
  swaths: "swath",
  swathe: "swathe",
  swathes: "swathe",
  coin: "coin",
  coins: "coin",
  pod: "pod",
  pods: "pod",
  stalk: "stalk",
  stalks: "stalk",
  stem: "stem",
  stems: "stem",
  petal: "petal",
  petals: "petal",
  disc: "disc",
  discs: "disc",
  disk: "disk",
  disks: "disk",
  quarter: "quarter",
  quarters: "quarter",
  half: "half",
  halves: "half",
  segment: "segment",
  segments: "segment",
  frond: "frond",
  fronds: "frond",
  spiral: "spiral",
  spirals: "spiral",
  tip: "tip",
  tips: "tip",
  shell: "shell",
  shells: "shell",
  blossom: "blossom",
  blossoms: "blossom",
  flower: "flower",
  flowers: "flower",
  crescent: "crescent",
  crescents: "crescent",
  seed: "seed",
  seeds: "seed",
  bouquet: "bouquet",
  bouquets: "bouquet",
  ball: "ball",
  balls: "ball",
  clove: "clove",
  cloves: "clove",
  bean: "bean",
  beans: "bean",
  plume: "plume",
  plumes: "plume",
  floret: "floret",
  florets: "floret",
  circle: "circle",
  circles: "circle",
  segs: "segment",
  sli: "slice",
  spg: "sprig",
  spgs: "sprig",
  twst: "twist",
  wdg: "wedge",
  wdgs: "wedge",
  lf: "leaf",
  lvs: "leaf",
};

/** Things that are counted whole. */
const COUNTABLE = new Set(
  (
    "egg yolk lime lemon orange grapefruit grape-fruit pine-apple mandarin tangerine clementine kumquat calamansi yuzu apple pear peach " +
    "apricot plum fig date grape pineapple banana mango kiwi kiwifruit papaya guava lychee melon watermelon cantaloupe " +
    "pomegranate passionfruit strawberry raspberry blackberry blueberry cranberry berry cherry olive onion cucumber " +
    "tomato pepper peppercorn chili chilli chile jalapeno jalapeño habanero radish carrot beet anise almond hazelnut " +
    "raisin marshmallow cookie biscuit straw umbrella pick skewer oyster shrimp pickle cornichon cardamom allspice " +
    "clove fruit nectarine persimmon rambutan currant avocado shallot star espresso lozenge capsule tablet pod pea honeydew gherkin caperberry physalis satsuma loquat gooseberry tamarillo tomatillo " +
    "walnut pecan pistachio cashew chestnut coconut pumpkin nasturtium hibiscus lollipop gummy macaron wafer pretzel cane " +
    "cone nutmeg block sphere teabag bag sheet bud orchid pansy viola"
  ).split(" "),
);

/** Plural words that are nonetheless poured: "2 bitters" is no count of anything. */
const POURED_PLURALS = new Set(["bitters", "schnapps", "molasses", "lees", "dregs", "ounces"]);

const LEADING_OF = /^\s*(?:of\s+|from\s+)?(?:an?\s+|the\s+|one\s+)?/i;

/**
 * The item of which a text names one piece: "slices of cucumber" or "cucumber slices" → "cucumber slice".
 *
 * Undefined when it names no cut piece.
 */
export function pieceItem(text: string): string | undefined {
  const words = text.trim().split(" ");
  const first = PIECES[words[0]?.toLowerCase() ?? ""];
  // "half orange wheel" is a kind of wheel; "half of an orange" is a half.
  const isShareOfPiece =
    (first === "half" || first === "quarter") && pieceWord(words.at(-1) ?? "") !== undefined;
  if (first !== undefined && words.length > 1 && !isShareOfPiece) {
    const of = words.slice(1).join(" ").replace(LEADING_OF, "");
    const item = withoutSizes(of);
    if (item === "") return undefined;
    // A sprig bears its leaves.
    if (first === "sprig" && /\s(?:leaf|leaves)$/i.test(item))
      return `${singularTail(item.replace(/\s(?:leaf|leaves)$/i, ""))} sprig`;
    const isSaidTwice = pieceWord(item.split(" ").at(-1) ?? "") === first && item.includes(" ");
    return isSaidTwice ? pieceItem(item) : `${singularTail(item)} ${first}`;
  }
  const last = words.at(-1) ?? "";
  const piece = PIECES[last.toLowerCase()];
  if (piece === undefined || words.length < 2) return undefined;
  const isPlain = last.toLowerCase() === piece;
  return [...words.slice(0, -1), isPlain ? last : likeCase(last, piece)].join(" ");
}

/**
 * What may stand in for a piece that was named before its fruit: of "sprig of mint or basil" a basil sprig. A name that
 * is a piece already, or a thing counted whole, stays.
 */
export function pieceOfOther(written: string, other: string): string {
  const piece = pieceWord(written.trim().split(" ")[0] ?? "");
  const isOwn = piece === undefined || pieceWord(other) !== undefined || pieceItem(other) !== undefined;
  return isOwn || written.trim().split(" ").length < 2
    ? (pieceItem(other) ?? other)
    : `${singularTail(other)} ${piece}`;
}

/** The piece that a single word is: "leaves" → "leaf"; undefined for any other text. */
export function pieceWord(text: string): string | undefined {
  return PIECES[text.trim().toLowerCase()];
}

/** Whether a text names something that is counted whole, by its last word: "large egg white", "raspberries". */
export function isCountable(text: string): boolean {
  const last = (text.trim().split(" ").at(-1) ?? "").toLowerCase();
  return COUNTABLE.has(last) || COUNTABLE.has(singular(last)) || /\begg whites?$/i.test(text.trim());
}

/** Whether a text without an amount means one of the thing: "egg white", "maraschino cherry"; not "black pepper". */
export function isUsuallyOne(text: string): boolean {
  return /\b(?:egg(?: white| yolk)?|cherry|olive|strawberry|raspberry|blackberry|star anise|umbrella|orchid|pansy|viola|straw|candy cane|wafer|lollipop)$/i.test(
    text.trim(),
  );
}

/** Whether a text speaks of more than one: "slices of cucumber", "cherries". */
export function namesSeveral(text: string): boolean {
  const words = text.trim().toLowerCase().split(" ");
  const last = words.at(-1) ?? "";
  return isPlural(last) || words.some((word) => PIECES[word] !== undefined && PIECES[word] !== word);
}

/** Whether a text's last word is a plural that can be counted: "coffee beans", not "bitters". */
export function isPlural(text: string): boolean {
  const last = (text.trim().split(" ").at(-1) ?? "").toLowerCase();
  return /[^su]s$/.test(last) && !POURED_PLURALS.has(last);
}

/** One of a plural, for the words a bar uses: "leaves" → "leaf", "cherries" → "cherry", "dashes" → "dash". */
export function singular(word: string): string {
  const piece = PIECES[word];
  if (piece !== undefined) return piece;
  if (POURED_PLURALS.has(word) || /(?:ss|us|is)$/.test(word) || word.length < 4) return word;
  if (/[^aeiou]ies$/.test(word)) return word.replace(/ies$/, "y");
  if (/(?:ch|sh|x|ss|toe|tatoe|mato|mango)es$/.test(word)) return word.replace(/es$/, "");
  return word.replace(/s$/, "");
}

function singularTail(item: string): string {
  const words = item.split(" ");
  const last = words.at(-1) ?? "";
  return [...words.slice(0, -1), last === last.toLowerCase() ? singular(last) : last].join(" ");
}

function withoutSizes(item: string): string {
  return item.replace(/^(?:fresh|large|small|thin|thick|long|medium|big)\s+/i, "").trim();
}

function likeCase(model: string, word: string): string {
  return /^\p{Lu}/u.test(model) ? (word[0] ?? "").toUpperCase() + word.slice(1) : word;
}
