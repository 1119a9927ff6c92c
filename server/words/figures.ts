/** Units that the server writes behind a number; of what stands behind any other word nothing is known. */
const UNIT = "(?:[mcd]?l|oz|k?g|lb|min|h|%(?: vol)?|°C|°Brix|°Bx|g/ml|mm|cm)";

/** A number as the server writes it: a point before the decimals, nothing between thousands. */
const FIGURE = new RegExp(`^([-−+]?|± ?)(\\d+)(?:\\.(\\d+))?( ?%| ${UNIT})?$`);

const DAY = /^((?:Mon|Tue|Wed|Thu|Fri|Sat|Sun) )?(\d{4}-\d\d-\d\d)(?:[ T](\d\d:\d\d))?$/;

/** Behind these words a thing is called by what may only look like a figure: counts have days for names, packs sizes. */
const CALLED =
  /(?:\b(?:counts?|invoice|order|import|file|sheet|called|named?|version|row|line|lot|batch|no\.|token|account|device|address|pack|as|by the|it has|full)|[#×]) $/i;

/** What fills a place of a sentence, as another language writes it, given the words before it. */
export type Figures = (place: string, before: string) => string;

/**
 * Numbers and days that fill a place of a sentence by themselves, as a language writes them: "1.5 l" → "1,5 l",
 * "2026-11-25" → "25.11.2026". Digits of whole numbers without a unit stay as they are, since they may be numbers of things. So does
 * what a word such as "count" makes a name, and what holds any other word.
 *
 * @param language BCP 47.
 */
export function figuresIn(language: string): Figures {
  const days = new Intl.DateTimeFormat(language, { timeZone: "UTC" });
  const daysOfWeek = new Intl.DateTimeFormat(language, {
    timeZone: "UTC",
    weekday: "short",
    year: "numeric",
    month: "numeric",
    day: "numeric",
  });
  // Making a formatter takes far longer than using it; there are as many as numbers of decimals are met.
  const numbers = new Map<number, Intl.NumberFormat>();
  const numbersOf = (decimals: number): Intl.NumberFormat => {
    const made =
      numbers.get(decimals) ?? new Intl.NumberFormat(language, { minimumFractionDigits: decimals });
    numbers.set(decimals, made);
    return made;
  };
  const amountOf = (whole: string, decimals: string) =>
    numbersOf(decimals.length).format(Number(`${whole}.${decimals || "0"}`));

  const dayOf = (text: string): string | undefined => {
    const [, weekday, date, clock] = DAY.exec(text) ?? [];
    const at = new Date(`${date}T00:00:00Z`);
    if (date === undefined || Number.isNaN(at.getTime())) return undefined;
    const day = (weekday === undefined ? days : daysOfWeek).format(at);
    return clock === undefined ? day : `${day}, ${clock}`;
  };
  const numberOf = (text: string): string | undefined => {
    const [, sign = "", whole, decimals, unit = ""] = FIGURE.exec(text) ?? [];
    if (whole === undefined) return undefined;
    // A number with decimals or a unit is an amount; any other may be the number of a thing.
    const isAmount = decimals !== undefined || unit !== "";
    const number = isAmount ? amountOf(whole, decimals ?? "") : whole;
    return `${sign.replace("-", "−")}${number}${unit}`.replaceAll(" ", "\u00a0");
  };
  const figures = (text: string) => dayOf(text) ?? numberOf(text);
  return (place, before) => {
    if (CALLED.test(before)) return place;
    const all = place.split(", ").map(figures);
    return all.every((one) => one !== undefined) ? all.join(", ") : place;
  };
}

/** Whether words end within quotation marks. */
export function isQuoted(words: string): boolean {
  const straight = words.split('"').length - 1;
  return straight % 2 === 1 || words.lastIndexOf("“") > words.lastIndexOf("”");
}
