import Papa from "papaparse";
import type { SalesFile } from "./till-files.ts";

/** A line of a till's file as a person would read it off. */
export type ReadLine = {
  businessDate: string;
  ring: string;
  modifiers: string;
  quantity: number;
  /** All cells, to tell a line that stands in two files. */
  cells: string;
};

/** Reads one of the three exports; a plain second reader, independent of the product's. */
export function readTill({ file, text }: SalesFile): ReadLine[] {
  if (file.includes("-orders-")) return readOrders(text);
  return file.includes("-register-") ? readRegister(text) : readJournal(text);
}

/** Every sale once: what stands in two files was sold once. */
export function soldLines(files: readonly SalesFile[]): ReadLine[] {
  const most = new Map<string, ReadLine[]>();
  for (const file of files) {
    for (const [cells, lines] of byCells(readTill(file))) {
      if (lines.length > (most.get(cells)?.length ?? 0)) most.set(cells, lines);
    }
  }
  return [...most.values()].flat();
}

/** The trading day ends at 04:00. */
function businessDateOf(date: string, hour: number): string {
  const shift = hour < 4 ? 86_400_000 : 0;
  return new Date(Date.parse(`${date}T00:00:00Z`) - shift).toISOString().slice(0, 10);
}

function readOrders(text: string): ReadLine[] {
  const { data } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
  return data.map((row) => {
    const opened = /^(\d\d)\/(\d\d)\/(\d{4}) (\d+):\d\d (AM|PM)$/.exec(row.Opened ?? "");
    if (opened === null) throw new Error(`cannot read the moment "${row.Opened}"`);
    const [, month, day, year, hour, half] = opened;
    return {
      businessDate: businessDateOf(`${year}-${month}-${day}`, (Number(hour) % 12) + (half === "PM" ? 12 : 0)),
      ring: row["Menu Item"] ?? "",
      modifiers: row.Modifiers ?? "",
      quantity: Number(row.Qty),
      cells: JSON.stringify(row),
    };
  });
}

function readRegister(text: string): ReadLine[] {
  const rows = Papa.parse<string[]>(text).data.filter(([date]) => /^\d{4}-\d\d-\d\d$/.test(date ?? ""));
  return rows.map((row) => {
    const [date = "", time = "", , , ring = "", modifiers = "", quantity] = row;
    const businessDate = businessDateOf(date, Number(time.slice(0, 2)));
    return { businessDate, ring, modifiers, quantity: Number(quantity), cells: JSON.stringify(row) };
  });
}

function readJournal(text: string): ReadLine[] {
  const { data } = Papa.parse<Record<string, string>>(text, {
    header: true,
    skipEmptyLines: true,
    delimiter: ";",
  });
  return data.map((row) => ({
    businessDate: row["Business Date"] ?? "",
    ring: row.Product ?? "",
    modifiers: row.Options ?? "",
    quantity: Number(row.Units),
    cells: JSON.stringify(row),
  }));
}

function byCells(lines: readonly ReadLine[]): Map<string, ReadLine[]> {
  const groups = new Map<string, ReadLine[]>();
  for (const line of lines) groups.set(line.cells, [...(groups.get(line.cells) ?? []), line]);
  return groups;
}
