import { z } from "zod";

const ENCODINGS: Record<string, "utf-8" | "utf-16le" | "utf-16be" | "windows-1252"> = {
  utf8: "utf-8",
  utf8sig: "utf-8",
  utf16: "utf-16le",
  utf16le: "utf-16le",
  utf16be: "utf-16be",
  windows1252: "windows-1252",
  cp1252: "windows-1252",
  ansi: "windows-1252",
  latin1: "windows-1252",
  iso88591: "windows-1252",
  iso885915: "windows-1252",
};
const DELIMITERS: Record<string, string> = {
  tab: "\t",
  "\\t": "\t",
  comma: ",",
  semicolon: ";",
  pipe: "|",
};

/** A heading as the file writes it; "#3" is the third column; "" says that the file has no such column. */
const heading = z.string().trim();

const encoding = z
  .string()
  .transform((name) => ENCODINGS[name.toLowerCase().replace(/[^a-z0-9]/g, "")] ?? name)
  .pipe(z.enum(["utf-8", "utf-16le", "utf-16be", "windows-1252"]));

const delimiter = z
  .string()
  .transform((name) => DELIMITERS[name.toLowerCase()] ?? name)
  .pipe(z.string().length(1, 'write one character, or "tab"'));

/** Which heading of a till's file holds what. `businessDate`, `lineNo`, … beyond the book's own keys are optional. */
export const SalesColumns = z.object({
  when: heading.optional(),
  date: heading.optional(),
  time: heading.optional(),
  businessDate: heading.optional(),
  item: heading.optional(),
  /** One heading, or several where the till has a column for each modifier. */
  modifiers: z.union([heading, z.array(heading)]).optional(),
  parent: heading.optional(),
  quantity: heading.optional(),
  gross: heading.optional(),
  discount: heading.optional(),
  net: heading.optional(),
  unitPrice: heading.optional(),
  check: heading.optional(),
  lineNo: heading.optional(),
  till: heading.optional(),
  kind: heading.optional(),
  /** Read only where the venue keeps the names of staff. */
  staff: heading.optional(),
});
export type SalesColumns = z.infer<typeof SalesColumns>;

/** One row of sales-shapes.json: how the files of one till are to be read. All but `files` may be left to detection. */
export const SalesShape = z.object({
  /** The files it is for: a glob on the file's name, e.g. "till-2-*.csv". */
  files: z.string().min(1),
  name: z.string().optional(),
  encoding: encoding.optional(),
  delimiter: delimiter.optional(),
  dateOrder: z.enum(["dmy", "mdy", "ymd"]).optional(),
  decimal: z.enum([".", ","]).optional(),
  /** The business date of a whole file that names none. */
  day: z.iso.date().optional(),
  columns: SalesColumns.optional(),
});
export type SalesShape = z.infer<typeof SalesShape>;

export const SalesShapes = z.array(SalesShape);

/**
 * The first shape whose glob fits the file; undefined when none does. `*` is any run of characters, `?` is one;
 * case does not matter, and folders count only where both the glob and the file have them.
 *
 * "till-*.csv" fits "sales/Till-07.csv".
 */
export function shapeFor(fileName: string, shapes: readonly SalesShape[]): SalesShape | undefined {
  const path = fileName.replaceAll("\\", "/").toLowerCase();
  const name = path.slice(path.lastIndexOf("/") + 1);
  return shapes.find(({ files }) => {
    const glob = files.toLowerCase();
    // A file known by its bare name may still be meant by a glob with a folder.
    const lastPart = glob.slice(glob.lastIndexOf("/") + 1);
    return fitsGlob(glob, path) || fitsGlob(path.includes("/") ? glob : lastPart, name);
  });
}

/** Greedy matching with one point to return to, so that no glob can take long. */
function fitsGlob(glob: string, text: string): boolean {
  let at = 0;
  let place = 0;
  let starAt = -1;
  let starPlace = 0;
  while (place < text.length) {
    if (glob[at] === "*") {
      starAt = at;
      starPlace = place;
      at += 1;
    } else if (glob[at] === "?" || glob[at] === text[place]) {
      at += 1;
      place += 1;
    } else if (starAt >= 0) {
      at = starAt + 1;
      starPlace += 1;
      place = starPlace;
    } else return false;
  }
  return /^\**$/.test(glob.slice(at));
}
