import { decodeAs, type Encoding, nonAsciiLetters } from "#engine/sales/read/decode.ts";
import type { ByteSource } from "#engine/sales/read/regular/byte-source.ts";

/** The parts in which a file is turned into UTF-8: where each begins in the file, and in UTF-8. */
type Parts = { starts: number[]; turnedStarts: number[]; size: number };

/**
 * The same file in UTF-8: its parts are turned when they are read, and none is held but the last.
 *
 * To know where a part begins in UTF-8, the file is turned once from end to end beforehand.
 */
export function inUtf8(source: ByteSource, encoding: Encoding, partBytes: number): ByteSource {
  const parts: Parts = { starts: [], turnedStarts: [], size: 0 };
  for (let start = 0; start < source.size; ) {
    const bytes = partAt(source, start, start + partBytes, encoding);
    if (bytes.length === 0) break;
    parts.starts.push(start);
    parts.turnedStarts.push(parts.size);
    parts.size += turned(bytes, encoding).length;
    start += bytes.length;
  }
  let held: { part: number; bytes: Uint8Array } = { part: -1, bytes: new Uint8Array(0) };
  const bytesOf = (part: number): Uint8Array => {
    if (held.part !== part) {
      const [from, to] = [parts.starts[part] as number, parts.starts[part + 1] ?? source.size];
      held = { part, bytes: turned(partAt(source, from, to, encoding), encoding) };
    }
    return held.bytes;
  };
  const read: ByteSource["read"] = (into, at, position) => {
    let done = 0;
    for (
      let part = partOf(parts, position);
      part < parts.starts.length && at + done < into.length;
      part += 1
    ) {
      const from = position + done - (parts.turnedStarts[part] as number);
      const piece = bytesOf(part).subarray(from, from + into.length - at - done);
      into.set(piece, at + done);
      done += piece.length;
    }
    return done;
  };
  return { size: parts.size, read, isUtf8: () => true };
}

/** Whether a file that is not sound UTF-8 is nevertheless meant as such (see decodeFile). */
export function isMostlyUtf8(source: ByteSource, pieceBytes: number): boolean {
  const decoder = new TextDecoder("utf-8");
  const piece = new Uint8Array(pieceBytes);
  const sum = { wrong: 0, right: 0 };
  for (let position = 0; position < source.size; ) {
    const count = source.read(piece, 0, position);
    if (count === 0) break;
    position += count;
    const { wrong, right } = nonAsciiLetters(decoder.decode(piece.subarray(0, count), { stream: true }));
    sum.wrong += wrong;
    sum.right += right;
  }
  const { wrong, right } = nonAsciiLetters(decoder.decode());
  return sum.right + right > sum.wrong + wrong;
}

/** The bytes from one place to another, less what belongs to a letter that ends after them. */
function partAt(source: ByteSource, from: number, to: number, encoding: Encoding): Uint8Array {
  const bytes = new Uint8Array(Math.min(to, source.size) - from);
  const count = source.read(bytes, 0, from);
  const whole = bytes.subarray(0, count);
  if (encoding === "windows-1252" || from + count >= source.size) return whole;
  const units = count - (count % 2);
  const high = whole[encoding === "utf-16le" ? units - 1 : units - 2] as number;
  const isHalf = high >= 0xd8 && high <= 0xdb;
  return whole.subarray(0, isHalf ? units - 2 : units);
}

function turned(bytes: Uint8Array, encoding: Encoding): Uint8Array {
  return new TextEncoder().encode(decodeAs(bytes, encoding));
}

function partOf({ turnedStarts }: Parts, position: number): number {
  let part = 0;
  for (let step = 1 << 30; step > 0; step >>= 1)
    if ((turnedStarts[part + step] ?? Number.POSITIVE_INFINITY) <= position) part += step;
  return part;
}
