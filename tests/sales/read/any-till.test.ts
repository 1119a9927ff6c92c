import fc from "fast-check";
import { expect, it } from "vitest";
import { businessDateOfLocal, localToInstant } from "#engine/sales/read/clock.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import { previewSales, readSales } from "#engine/sales/read/read-sales.ts";

const clock = { timeZone: "Europe/Berlin", dayEnds: "04:00" };

type Sale = {
  day: number;
  minute: number;
  item: string;
  modifiers: string;
  quantity: number;
  netMinor: number;
  check: number;
};

/** A till's habits: everything about its file but what was sold. */
type Till = {
  headings: string[];
  delimiter: string;
  end: string;
  date: "iso" | "dmy" | "mdy" | "dotted" | "named";
  time: "24" | "12" | "joined";
  decimal: "." | ",";
  quotesAll: boolean;
  title: boolean;
  total: boolean;
  encoding: "utf-8" | "utf-8-bom" | "utf-16le";
  order: number[];
};

/** Date, time, check, item, modifiers, quantity, net, staff. */
const HEADINGS = [
  ["Date", "Time", "Check no", "Item", "Modifiers", "Qty", "Net sales", "Server"],
  ["sale_date", "sale_time", "order_id", "product_name", "options", "quantity", "net_amount", "employee"],
  ["Datum", "Uhrzeit", "Bon-Nr.", "Artikel", "Zusätze", "Menge", "Netto", "Bediener"],
  ["Date", "Heure", "N° ticket", "Désignation", "Suppléments", "Quantité", "Montant HT", "Serveur"],
  ["Fecha", "Hora", "Nº pedido", "Artículo", "Modificadores", "Cantidad", "Importe neto", "Camarero"],
  ["Data", "Ora", "Scontrino", "Prodotto", "Varianti", "Quantità", "Importo netto", "Cameriere"],
  ["Datum", "Tijd", "Bonnummer", "Omschrijving", "Opties", "Aantal", "Netto omzet", "Medewerker"],
];

const sale: fc.Arbitrary<Sale> = fc.record({
  day: fc.integer({ min: 1, max: 31 }),
  minute: fc.integer({ min: 0, max: 1439 }),
  item: fc.constantFrom(
    "House Sour",
    'Sour "No. 1"',
    "Gin, Tonic; large",
    "Crème d'été",
    "Two\nlines",
    "=SUM(1)",
    "Total Eclipse",
    "9 Old Road",
  ),
  modifiers: fc.constantFrom("", "no egg", "no egg; extra lime", "half, half"),
  quantity: fc.integer({ min: -3, max: 12 }).filter((quantity) => quantity !== 0),
  netMinor: fc.integer({ min: 0, max: 250_000 }),
  check: fc.integer({ min: 1, max: 9999 }),
});

const till: fc.Arbitrary<Till> = fc.record({
  headings: fc.constantFrom(...HEADINGS),
  delimiter: fc.constantFrom(",", ";", "\t", "|"),
  end: fc.constantFrom("\n", "\r\n"),
  date: fc.constantFrom("iso", "dmy", "mdy", "dotted", "named"),
  time: fc.constantFrom("24", "12", "joined"),
  decimal: fc.constantFrom(".", ","),
  quotesAll: fc.boolean(),
  title: fc.boolean(),
  total: fc.boolean(),
  encoding: fc.constantFrom("utf-8", "utf-8-bom", "utf-16le"),
  order: fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7], { minLength: 8 }),
});

const two = (value: number): string => String(value).padStart(2, "0");

function dateText({ day }: Sale, style: Till["date"]): string {
  if (style === "iso") return `2025-03-${two(day)}`;
  if (style === "mdy") return `3/${day}/2025`;
  if (style === "dotted") return `${two(day)}.03.2025`;
  return style === "named" ? `${day} Mar 2025` : `${two(day)}/03/2025`;
}

function timeText({ minute }: Sale, style: Till["time"]): string {
  const hour = Math.floor(minute / 60);
  if (style !== "12") return `${two(hour)}:${two(minute % 60)}`;
  return `${hour % 12 === 0 ? 12 : hour % 12}:${two(minute % 60)} ${hour < 12 ? "AM" : "PM"}`;
}

function moneyText({ netMinor, quantity }: Sale, { decimal }: Till): string {
  const whole = String(Math.floor(netMinor / 100));
  const grouped = whole.replace(/(?=(?:\d{3})+$)(?<=\d)/g, decimal === "." ? "," : ".");
  return `${quantity < 0 && netMinor > 0 ? "-" : ""}${grouped}${decimal}${two(netMinor % 100)}`;
}

function fileOf(sales: Sale[], style: Till): Uint8Array {
  const quote = (cell: string): string =>
    style.quotesAll || /["\n\r,;\t|]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
  const isJoined = style.time === "joined";
  const columns = style.order.filter((column) => !(isJoined && column === 1));
  const row = (cells: string[]): string =>
    columns.map((column) => quote(cells[column] ?? "")).join(style.delimiter);
  const rows = sales.map((one) => {
    const date = dateText(one, style.date);
    const time = timeText(one, style.time);
    const money = moneyText(one, style);
    return row([
      isJoined ? `${date} ${time}` : date,
      time,
      String(one.check),
      one.item,
      one.modifiers,
      String(one.quantity),
      money,
      "Robin",
    ]);
  });
  const lines = [
    ...(style.title ? ["Sales of the bar", ""] : []),
    row(style.headings),
    ...rows,
    ...(style.total ? ["", row(["", "", "", "Total", "", "99", "", ""])] : []),
  ];
  const text = `${style.encoding === "utf-8" ? "" : "\ufeff"}${lines.join(style.end)}${style.end}`;
  return style.encoding === "utf-16le"
    ? new Uint8Array(Buffer.from(text, "utf16le"))
    : new TextEncoder().encode(text);
}

function lineOf({ day, minute, item, modifiers, quantity, netMinor, check }: Sale): SaleLine {
  const local = `2025-03-${two(day)} ${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
  const back = quantity < 0 && netMinor > 0 ? -netMinor : netMinor;
  return {
    businessDate: businessDateOfLocal(local, clock),
    at: localToInstant(local, clock),
    ringName: item,
    modifiers,
    quantity,
    grossMinor: null,
    netMinor: back,
    check: String(check),
    lineNo: null,
  };
}

it("reads the file of any till, whatever its language, delimiter, dates, clock, money and order of columns, to the same lines", () => {
  fc.assert(
    fc.property(fc.array(sale, { minLength: 1, maxLength: 25 }), till, (sales, style) => {
      // One sale past the twelfth shows which part is the day; one past midnight shows that the times are times.
      const base = { item: "House Sour", modifiers: "", quantity: 1, netMinor: 1250, check: 1 };
      const all = [...sales, { ...base, day: 13, minute: 1290 }, { ...base, day: 15, minute: 75 }];
      // Rows in the till's order of moments, as calendar dates run.
      all.sort((one, other) => one.day - other.day || one.minute - other.minute);
      const bytes = fileOf(all, style);
      const options = { fileName: "till.csv", clock, currencyDigits: 2 };
      const result = readSales(bytes, options);
      expect(result.question).toBeNull();
      expect(result.refused).toEqual([]);
      expect(result.lines).toEqual(all.map(lineOf));
      const preview = previewSales(bytes, options);
      expect(preview.lines).toEqual(result.lines.slice(0, preview.lines.length));
      expect(preview.columns.filter(({ role }) => role === "staff")).toHaveLength(1);
      expect(readSales(bytes, { ...options, shape: result.shape }).lines).toEqual(result.lines);
    }),
    { numRuns: 150 },
  );
});
