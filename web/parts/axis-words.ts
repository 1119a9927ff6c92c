import { language, locale } from "../texts/language.ts";

type PlotOptions = import("@observablehq/plot").PlotOptions;

/** A chart's options with the marks of its axes in this device's language; Plot itself writes English. */
export function withAxisWords(options: PlotOptions): PlotOptions {
  if (language === "en") return options;
  const number = new Intl.NumberFormat(locale, { maximumFractionDigits: 2 });
  const tickFormat = (mark: unknown, place: number, marks: readonly unknown[] = [mark]) => {
    if (mark instanceof Date) return dateWords(mark, place, marks as Date[]);
    return typeof mark === "number" ? number.format(mark).replace("-", "−") : String(mark);
  };
  return { ...options, x: { tickFormat, ...options.x }, y: { tickFormat, ...options.y } };
}

/** Days above their month, months above their year; the lower word only where it begins. */
function dateWords(date: Date, place: number, dates: readonly Date[]): string {
  const isMonths = dates.every((one) => one.getUTCDate() === 1);
  const [upper, lower] = isMonths
    ? [inUtc({ month: "short" }), inUtc({ year: "numeric" })]
    : [inUtc({ day: "numeric" }), inUtc({ month: "short" })];
  const before = dates[place - 1];
  const begins = before === undefined || lower.format(before) !== lower.format(date);
  return begins ? `${upper.format(date)}\n${lower.format(date)}` : upper.format(date);
}

function inUtc(parts: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  return new Intl.DateTimeFormat(locale, { ...parts, timeZone: "UTC" });
}
