import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import type { Db } from "#db/open.ts";
import {
  type DaySales,
  daySales,
  type ImportDetails,
  importInDetail,
  importReadAlike,
  isSizeKnown,
  previewInDetail,
  salesTexts,
} from "#db/sales-repository.ts";
import { isMoved } from "#db/stored/day-changes.ts";
import type { SameImport } from "#db/stored/sales.ts";
import { type ChangedDay, type Explained, explainImport } from "#engine/sales/explain.ts";
import type { DayColumns } from "#engine/sales/packed/day-columns.ts";
import { linesOf } from "#engine/sales/packed/packed-sales.ts";
import { quantityOf } from "#engine/sales/packed/tally.ts";
import type { TextTable } from "#engine/sales/packed/texts.ts";
import { refuseLarge } from "#engine/sales/read/decode.ts";
import type { RefusedRow } from "#engine/sales/read/line.ts";
import { type ByteSource, type PackedReading, packReading } from "#engine/sales/read/regular/read-regular.ts";
import { shapeFor } from "#engine/sales/read/shape.ts";
import type { SaleGroup } from "#engine/sales/tally.ts";
import { dividedDates } from "#engine/stock/counts.ts";
import type { BusinessDate } from "#engine/time.ts";
import { InputError } from "#server/input-error.ts";
import { bytesSource, fileSource, type ReadHow, readPieces, SMALL_BYTES } from "#server/sales-bytes.ts";
import { readSalesFile } from "#server/sales-files.ts";
import { dayNotices } from "#server/sales-notices.ts";
import type { World } from "#server/world.ts";

/** A sales file to be read: on disk, or sent. */
export type SalesSource = { name: string; path: string } | { name: string; bytes: Uint8Array };

/** What was read of a file; or, where the very same bytes were imported in the same way before, that import. */
export type FileReading = { name: string; readDigest: string | null } & (
  | { reading: PackedReading }
  | { sameAs: SameImport }
);

/**
 * Reads a sales file: a long and regular one piece by piece from its bytes, any other as a whole; not at all when the same bytes
 * were imported before.
 * Throws InputError with the question it leaves open, SalesFileError for what is no sales file.
 */
export async function readForImport(db: Db, source: SalesSource, how: ReadHow): Promise<FileReading> {
  const { name } = source;
  const bytes = "bytes" in source ? bytesSource(source.bytes) : fileSource(source.path);
  let readDigest: string | null = null;
  try {
    if (bytes.size > SMALL_BYTES) {
      const digest = new ReadDigest(name, bytes.size, how);
      // The bytes are gone over beforehand only where a file of their length was read before.
      if (await isSizeKnown(db, digest.sizePart)) {
        readDigest = digest.ofAll(bytes);
        const sameAs = await importReadAlike(db, readDigest);
        if (sameAs !== undefined) return { name, readDigest, sameAs };
      }
      const regular = readPieces(name, readDigest === null ? digest.watching(bytes) : bytes, how);
      readDigest ??= digest.ofAll(bytes);
      if (typeof regular !== "string") return { name, readDigest, reading: regular };
    }
  } finally {
    bytes.close();
  }
  refuseLarge(bytes.size, name);
  const whole = "bytes" in source ? source.bytes : readFileSync(source.path);
  const read = readSalesFile({ name, bytes: whole }, how.book, how.shape);
  return { name, readDigest, reading: packReading(read, how.texts) };
}

/** Changes with every change of how files are read, so that a file is then read anew. */
const READER = 2;
const PIECE_BYTES = 1 << 20;

/** A digest of a file's bytes, and of all that the lines made of them depend on. Its first part tells the length. */
class ReadDigest {
  readonly sizePart: string;
  readonly #hash = createHash("sha256");
  #done = 0;

  constructor(name: string, size: number, { book, shape }: ReadHow) {
    const { timeZone, dayEnds, currency, keepStaff = false } = book.venue;
    const used = shape ?? shapeFor(name, book.salesShapes) ?? null;
    this.sizePart = `${size}:`;
    this.#hash.update(JSON.stringify([READER, timeZone, dayEnds, currency, keepStaff, used]));
  }

  /** The same source, whose bytes are taken note of where they are read in their order. */
  watching(source: ByteSource): ByteSource {
    const read: ByteSource["read"] = (into, at, position) => {
      const count = source.read(into, at, position);
      // Some is read twice: to understand the file, and to read it.
      if (position <= this.#done && position + count > this.#done) {
        this.#hash.update(into.subarray(at + this.#done - position, at + count));
        this.#done = position + count;
      }
      return count;
    };
    return { ...source, read };
  }

  /** The digest, for which what was not taken note of yet is read now. */
  ofAll(source: ByteSource): string {
    const piece = new Uint8Array(PIECE_BYTES);
    while (this.#done < source.size) {
      const read = source.read(piece, 0, this.#done);
      if (read === 0) break;
      this.#hash.update(piece.subarray(0, read));
      this.#done += read;
    }
    return this.sizePart + this.#hash.digest("hex");
  }
}

/** An import as the command line and the API tell it. */
export type ImportReport = {
  file: string;
  /** Null for a look beforehand. */
  importId: number | null;
  lines: number;
  new: number;
  known: number;
  /** Lines that take the place of a line read in before: corrected, or the newer sum of a day. */
  changed: number;
  refused: RefusedRow[];
  notices: string[];
  /** Business days on which the file has lines. */
  daysTouched: BusinessDate[];
  /** Those whose earlier sums give way to the sums of this file, as `addsSums` was not asked for. */
  sumsReplaced: BusinessDate[];
} & Explained;

export type ImportOptions = {
  /** Sums of days that have sums already are added to them: another till. Else they take their place. */
  addsSums?: boolean;
};

/**
 * Imports what was read (or, for a look, says what it would do and writes nothing), explained. Refused rows stand in the import
 * too.
 */
export async function importReading(
  db: Db,
  world: World,
  file: FileReading,
  doing: { now: string; by: string } | null,
  { addsSums = false }: ImportOptions = {},
): Promise<ImportReport> {
  const { name, readDigest } = file;
  const splitDates = dividedDates(world.facts.counts, world.facts.catalogue);
  const { refused, shape } = "sameAs" in file ? file.sameAs : file.reading;
  const lines = "sameAs" in file ? { sameAs: file.sameAs } : { packer: file.reading.packer };
  const digest = readDigest === null ? {} : { readDigest };
  const read = { file: name, refused, shape, splitDates, replacesSums: !addsSums, ...digest, ...lines };
  const details =
    doing === null ? await previewInDetail(db, read) : await importInDetail(db, { ...read, ...doing });
  const totals = await daySales(db, { from: "0001-01-01", to: "9999-12-31" });
  const notices =
    "sameAs" in file
      ? [`The very same file was read in before, as import ${file.sameAs.importId}.`]
      : file.reading.notices;
  return {
    file: name,
    importId: doing === null ? null : details.importId,
    lines: details.lines,
    new: details.new,
    known: details.known,
    changed: details.changed,
    refused: [...refused],
    notices: [...notices, ...dayNotices(details.changes)],
    daysTouched: details.daysTouched,
    sumsReplaced: details.changes.filter((day) => day.sumsReplaced > 0).map((day) => day.businessDate),
    ...explainImport(world.facts, changedDays(details), details.texts, withChanges(totals, details)),
  };
}

/** The day totals as they are after an import, whether it was written or not. */
function withChanges(totals: readonly DaySales[], { changes }: ImportDetails) {
  const byDate = new Map(totals.map(({ businessDate, quantity }) => [businessDate, quantity]));
  for (const { businessDate, after } of changes) byDate.set(businessDate, quantityOf(after));
  return [...byDate]
    .map(([businessDate, quantity]) => ({ businessDate, quantity }))
    .sort((one, other) => (one.businessDate < other.businessDate ? -1 : 1));
}

function changedDays({ changes, texts }: ImportDetails): ChangedDay[] {
  return changes.map((change): ChangedDay => {
    const { businessDate, columns, before, after } = change;
    const divided = columns && {
      before: groupsOf(businessDate, columns.before, texts),
      after: groupsOf(businessDate, columns.after, texts),
    };
    return { businessDate, isMoved: isMoved(change), before, after, divided };
  });
}

function groupsOf(date: BusinessDate, day: DayColumns, texts: TextTable): SaleGroup[] {
  return linesOf(date, day, texts).map((line) => ({
    businessDate: line.businessDate,
    at: line.at,
    timed: line.at !== null,
    ringName: line.ringName,
    modifiers: line.modifiers,
    quantity: line.quantity,
    netMinor: line.netMinor ?? line.grossMinor ?? 0,
  }));
}

/** An import of nothing is a mistake that should be said. Throws InputError. */
export function refuseEmpty(file: FileReading): void {
  if ("sameAs" in file || file.reading.packer.lines > 0) return;
  throw new InputError(`${file.name}: there is no sale in it; nothing was read in.`);
}

/** The texts to read files with, one table for all files of one command. */
export async function textsFor(db: Db): Promise<TextTable> {
  return salesTexts(db);
}
