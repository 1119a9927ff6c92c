import { createHash } from "node:crypto";
import type { Db } from "#db/open.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";

/**
 * One line as it is packed: seconds since 1970 (null without a time), ring name, modifiers, quantity, gross, net, check, line
 * number; names by their number in sale_names. What a line is, is all of this: two lines are equal if their JSON is.
 */
export type PackedLine = [
  at: number | null,
  ringName: number,
  modifiers: number,
  quantity: number,
  grossMinor: number | null,
  netMinor: number | null,
  check: string | null,
  lineNo: string | null,
];

/** The texts of the till by number, read and added as they are met. */
export class SaleNames {
  readonly #byText = new Map<string, number>();
  readonly #byId = new Map<number, string>();
  readonly #insert;

  constructor({ sqlite }: Db) {
    const rows = sqlite.prepare("select id, text from sale_names").raw().all() as [number, string][];
    for (const [id, text] of rows) this.#remember(id, text);
    this.#insert = sqlite.prepare("insert into sale_names (text) values (?)");
  }

  /** The number of a text; one not met before is added. */
  idOf(text: string): number {
    return this.#byText.get(text) ?? this.#remember(Number(this.#insert.run(text).lastInsertRowid), text);
  }

  textOf(id: number): string {
    const text = this.#byId.get(id);
    if (text === undefined) throw new Error(`No text of the till has the number ${id}.`);
    return text;
  }

  #remember(id: number, text: string): number {
    this.#byText.set(text, id);
    this.#byId.set(id, text);
    return id;
  }
}

/** The lines of each business day, packed, each as its JSON. */
export function packByDay(lines: readonly SaleLine[], names: SaleNames): Map<string, string[]> {
  const days = new Map<string, string[]>();
  for (const line of lines) {
    const text = JSON.stringify(packed(line, names));
    const day = days.get(line.businessDate);
    if (day === undefined) days.set(line.businessDate, [text]);
    else day.push(text);
  }
  return days;
}

function packed(line: SaleLine, names: SaleNames): PackedLine {
  return [
    line.at === null ? null : Date.parse(line.at) / 1000,
    names.idOf(line.ringName),
    names.idOf(line.modifiers),
    line.quantity,
    line.grossMinor,
    line.netMinor,
    line.check,
    line.lineNo,
  ];
}

export function unpacked(businessDate: string, line: PackedLine, names: SaleNames): SaleLine {
  const [at, ringName, modifiers, quantity, grossMinor, netMinor, check, lineNo] = line;
  return {
    businessDate,
    at: at === null ? null : `${new Date(at * 1000).toISOString().slice(0, 19)}Z`,
    ringName: names.textOf(ringName),
    modifiers: names.textOf(modifiers),
    quantity,
    grossMinor,
    netMinor,
    check,
    lineNo,
  };
}

/** A day's lines as one text, in an order that does not depend on the file's. */
export function blockText(lines: readonly string[]): string {
  return `[${[...lines].sort().join(",\n")}]`;
}

/** The lines of a block's text, each as its JSON. */
export function linesOfBlock(text: string): string[] {
  return text === "[]" ? [] : text.slice(1, -1).split(",\n");
}

export function digestOf(text: string): string {
  return createHash("sha256").update(text).digest("hex");
}

/**
 * The lines that several files together show: each as often as in the file that has it most.
 *
 * [["a", "a", "b"], ["a", "c"]] → ["a", "a", "b", "c"].
 */
export function unionOf(files: readonly (readonly string[])[]): string[] {
  const [first, ...others] = files;
  if (first === undefined) return [];
  if (others.length === 0) return [...first];
  const most = new Map<string, number>();
  for (const file of files) {
    for (const [line, times] of timesEach(file)) most.set(line, Math.max(times, most.get(line) ?? 0));
  }
  return [...most].flatMap(([line, times]) => Array<string>(times).fill(line)).sort();
}

export function timesEach(lines: readonly string[]): Map<string, number> {
  const times = new Map<string, number>();
  for (const line of lines) times.set(line, (times.get(line) ?? 0) + 1);
  return times;
}
