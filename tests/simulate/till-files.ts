import Papa from "papaparse";
import { localTime } from "./calendar.ts";
import { type Bar, dateOf, type RungLine } from "./state.ts";

export type SalesFile = { file: string; text: string };

/** The till is replaced twice, so that a quarter holds three kinds of export. */
type Export = "orders" | "register" | "journal";

const EXPORT_UNTIL: [number, Export][] = [
  [6, "orders"],
  [11, "register"],
  [Number.POSITIVE_INFINITY, "journal"],
];

/** Weeks whose file begins a day early, so that its first day stands in the file before it too. */
const OVERLAPPING_WEEKS = [3, 9];

/** One file a week, each a different till's idea of an export. */
export function tillFiles(bar: Bar): SalesFile[] {
  return Array.from({ length: bar.weeks }, (_, index) => {
    const week = index + 1;
    const firstDay = index * 7 - (OVERLAPPING_WEEKS.includes(week) ? 1 : 0);
    const lines = bar.rung.filter(({ day }) => day >= firstDay && day < week * 7);
    const from = dateOf(bar, firstDay);
    const to = dateOf(bar, week * 7 - 1);
    const kind = EXPORT_UNTIL.find(([until]) => week <= until)?.[1] ?? "journal";
    const number = String(week).padStart(2, "0");
    return { file: `${number}-${kind}-${from}.csv`, text: WRITERS[kind](bar, lines, { from, to }) };
  });
}

type Span = { from: string; to: string };

const WRITERS: Record<Export, (bar: Bar, lines: RungLine[], span: Span) => string> = {
  orders: ordersExport,
  register: registerExport,
  journal: journalExport,
};

function momentOf(bar: Bar, line: RungLine): { date: string; time: string } {
  return localTime(dateOf(bar, line.day), line.minutes);
}

/** "17:05" → "5:05 PM". */
function twelveHour(time: string): string {
  const [hours = 0, minutes = 0] = time.split(":").map(Number);
  return `${hours % 12 || 12}:${String(minutes).padStart(2, "0")} ${hours < 12 ? "AM" : "PM"}`;
}

/** US dates and a 12-hour clock in one column; voids are negative. */
function ordersExport(bar: Bar, lines: RungLine[]): string {
  const rows = lines.map((line) => {
    const { date, time } = momentOf(bar, line);
    const [year, month, day] = date.split("-");
    return {
      "Order #": line.check,
      Opened: `${month}/${day}/${year} ${twelveHour(time)}`,
      "Menu Item": line.ring,
      Modifiers: line.modifiers.join("; "),
      Qty: line.quantity,
      "Gross Sales": line.gross.toFixed(2),
      "Net Sales": line.net.toFixed(2),
      Terminal: line.till,
    };
  });
  return csv(rows);
}

/** A title above, totals below, date and time apart, a kind column for refunds, money with its sign. */
function registerExport(bar: Bar, lines: RungLine[], { from, to }: Span): string {
  const money = (value: number) => `${value < 0 ? "-" : ""}$${Math.abs(value).toFixed(2)}`;
  const rows = lines.map((line) => {
    const { date, time } = momentOf(bar, line);
    return [
      date,
      time,
      line.check,
      line.isVoid ? "Void" : "Sale",
      line.ring,
      line.modifiers.join(", "),
      line.quantity.toFixed(1),
      money(line.gross),
      money(line.net),
    ];
  });
  const total = (of: (line: RungLine) => number) => lines.reduce((sum, line) => sum + of(line), 0);
  return Papa.unparse(
    [
      [`${bar.catalogue.venue}: item sales by line`],
      [`Period: ${from} to ${to}`],
      [],
      ["Date", "Time", "Check", "Type", "Item", "Item Modifiers", "Quantity", "Gross Amount", "Net Amount"],
      ...rows,
      [
        "Total",
        "",
        "",
        "",
        "",
        "",
        total((line) => line.quantity).toFixed(1),
        money(total((line) => line.gross)),
        money(total((line) => line.net)),
      ],
    ],
    { newline: "\n" },
  );
}

/** Semicolons, ISO moments, the business day beside them, several modifiers in one cell split by "|". */
function journalExport(bar: Bar, lines: RungLine[]): string {
  const rows = lines.map((line, index) => {
    const { date, time } = momentOf(bar, line);
    return {
      "Business Date": dateOf(bar, line.day),
      "Sold At": `${date}T${time}:00`,
      Receipt: `R${line.check}`,
      Line: index + 1,
      Product: line.ring,
      Options: line.modifiers.join(" | "),
      Units: line.quantity,
      Total: line.net.toFixed(2),
      Register: line.till,
    };
  });
  return csv(rows, ";");
}

function csv(rows: Record<string, string | number>[], delimiter = ","): string {
  return `${Papa.unparse(rows, { newline: "\n", delimiter })}\n`;
}
