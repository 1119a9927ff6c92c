import { writeFileSync } from "node:fs";

/** The seven modules of each digit of an EAN-13, left half with odd parity (ISO/IEC 15420); even and right follow from it. */
const ODD = [
  "0001101",
  "0011001",
  "0010011",
  "0111101",
  "0100011",
  "0110001",
  "0101111",
  "0111011",
  "0110111",
  "0001011",
];
/** Which of the left six digits have even parity says the first digit. */
const EVEN_AT = [
  "OOOOOO",
  "OOEOEE",
  "OOEEOE",
  "OOEEEO",
  "OEOOEE",
  "OEEOOE",
  "OEEEOO",
  "OEOEOE",
  "OEOEEO",
  "OEEOEO",
];

const flipped = (bits: string) => bits.replace(/[01]/g, (bit) => (bit === "0" ? "1" : "0"));
const reversed = (bits: string) => [...bits].reverse().join("");

/** The 95 modules of an EAN-13, 1 = bar. */
function modulesOf(ean: string): string {
  const digits = [...ean].map(Number);
  const odd = (digit: number | undefined) => ODD[digit ?? 0] ?? "";
  const parity = EVEN_AT[digits[0] ?? 0] ?? "";
  const left = digits
    .slice(1, 7)
    .map((digit, at) => (parity[at] === "O" ? odd(digit) : reversed(flipped(odd(digit)))));
  const right = digits.slice(7).map((digit) => flipped(odd(digit)));
  return `101${left.join("")}01010${right.join("")}101`;
}

/** Writes a still film (YUV4MPEG2) of a label with the barcode, which Chromium can take for its camera. */
export function writeBarcodeVideo(file: string, ean: string): void {
  const [width, height, moduleWidth] = [640, 480, 4];
  const modules = modulesOf(ean);
  const begin = (width - modules.length * moduleWidth) / 2;
  const row = Buffer.alloc(width, 235);
  [...modules].forEach((bit, at) => {
    if (bit === "1") row.fill(16, begin + at * moduleWidth, begin + (at + 1) * moduleWidth);
  });
  const blank = Buffer.alloc(width, 235);
  const rows = Array.from({ length: height }, (_, y) => (y > 100 && y < 380 ? row : blank));
  const colour = Buffer.alloc((width * height) / 2, 128);
  const frame = Buffer.concat([Buffer.from("FRAME\n"), ...rows, colour]);
  writeFileSync(
    file,
    Buffer.concat([Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420\n`), frame, frame]),
  );
}
