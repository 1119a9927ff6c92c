import { ByteReader, ByteWriter } from "#engine/sales/packed/bytes.ts";
import type { DayColumns } from "#engine/sales/packed/day-columns.ts";

const writer = new ByteWriter();

/** Who rang the lines of a sorted day, as bytes beside its block; null where no line says it. */
export function packStaff({ staff, count }: DayColumns): Uint8Array | null {
  if (staff === null) return null;
  writer.clear();
  writer.wholeColumn(staff, count);
  return writer.written();
}

/** Puts names back beside the lines of an unpacked block. Throws for bytes of another number of lines. */
export function unpackStaff(bytes: Uint8Array, day: DayColumns): void {
  const staff = new Int32Array(day.at.length);
  const reader = new ByteReader(bytes);
  reader.wholeColumn(staff.subarray(0, day.count));
  if (!reader.isAtEnd) throw new Error("The names beside a block of sales are more than its lines.");
  day.staff = staff;
}
