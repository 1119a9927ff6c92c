import { type DateOrder, dayNumber, type WrittenDate } from "#engine/sales/read/moment.ts";

/** How a column writes its dates: decided, not decidable, or against itself. */
export type OrderFinding =
  | { kind: "decided"; order: DateOrder }
  | { kind: "ambiguous"; orders: DateOrder[]; example: string }
  | { kind: "contradictory"; examples: [string, string] };

const EARLIEST_LIKELY_YEAR = 2010;

/** Gathers the dates of a column and decides, from all of them together, in which order their parts are written. */
export class DateOrderWitness {
  readonly #seen = new Map<string, WrittenDate>();

  /** Takes one date of the column; `cell` is how it was written, for the question that may follow. */
  add(date: WrittenDate, cell: string): void {
    if (date.order !== null) return;
    const key = date.parts.join("/") + (date.shortYear ? "s" : "");
    if (!this.#seen.has(key)) {
      this.#seen.set(key, date);
      this.#cells.set(key, cell);
    }
  }

  readonly #cells = new Map<string, string>();

  get isNeeded(): boolean {
    return this.#seen.size > 0;
  }

  /**
   * The only order in which all dates are real days. Orders that read every date as the same day are one.
   *
   * `holds`, where given, is further evidence: whether an order agrees with what other columns say.
   * 03/04/2025 with 13/04/2025 → "dmy"; 03/04/2025 alone → ambiguous; 13/04/2025 with 04/13/2025 → contradictory.
   */
  decide(holds: (order: DateOrder) => boolean = () => true): OrderFinding {
    const readable = [...this.#seen].filter(([, date]) =>
      this.#candidates().some((order) => reads(date, order)),
    );
    const fitting = this.#candidates().filter((order) => readable.every(([, date]) => reads(date, order)));
    if (readable.length > 0 && fitting.length === 0) return this.#contradiction(readable);
    const agreeing = fitting.length > 1 ? fitting.filter(holds) : fitting;
    const [order = "dmy", ...others] = agreeing.length > 0 ? agreeing : fitting;
    const unlike = others.filter((other) =>
      readable.some(([, date]) => dayNumber(date, order) !== dayNumber(date, other)),
    );
    if (unlike.length === 0) return { kind: "decided", order };
    const differs = readable.find(([, date]) =>
      unlike.some((other) => dayNumber(date, order) !== dayNumber(date, other)),
    );
    return {
      kind: "ambiguous",
      orders: [order, ...unlike],
      example: this.#cells.get(differs?.[0] ?? "") ?? "",
    };
  }

  /** Two digits of year in front are considered only where the column looks like it: else 13/03/25 would have two readings. */
  #candidates(): DateOrder[] {
    const dates = [...this.#seen.values()];
    const firsts = new Set(dates.map(({ parts }) => parts[0]));
    const lasts = new Set(dates.map(({ parts }) => parts[2]));
    const isEarly = dates.some(({ parts }) => 2000 + parts[2] < EARLIEST_LIKELY_YEAR);
    const mayStartWithYear =
      dates.every(({ shortYear }) => shortYear) && (lasts.size > firsts.size || isEarly);
    const isYearFirst = mayStartWithYear || dates.some(({ parts, shortYear }) => shortYear && parts[0] > 31);
    return isYearFirst ? ["dmy", "mdy", "ymd"] : ["dmy", "mdy"];
  }

  #contradiction(readable: [string, WrittenDate][]): OrderFinding {
    const oneWay = readable.find(([, date]) => !reads(date, "mdy"))?.[0] ?? readable[0]?.[0] ?? "";
    const otherWay = readable.find(([, date]) => !reads(date, "dmy"))?.[0] ?? readable.at(-1)?.[0] ?? "";
    return {
      kind: "contradictory",
      examples: [this.#cells.get(oneWay) ?? "", this.#cells.get(otherWay) ?? ""],
    };
  }
}

function reads(date: WrittenDate, order: DateOrder): boolean {
  return dayNumber(date, order) !== undefined;
}
