/** Most wrong cells that are listed one by one; a sheet in the wrong columns would otherwise fill the screen. */
const LISTED_MOST = 100;
/** Beyond that, what is found is counted and no longer kept: every cell of a giant sheet may be wrong. */
const KEPT_MOST = 10_000;

/** A book that cannot be loaded: every wrong cell as one line, the first hundred and how many more. */
export class BookError extends Error {
  override name = "BookError";
  readonly problems: string[];
  constructor(problems: readonly string[], notKept = 0) {
    const more = problems.length - LISTED_MOST + notKept;
    const listed = more > 0 ? [...problems.slice(0, LISTED_MOST), `… and ${more} more`] : [...problems];
    super(listed.join("\n"));
    this.problems = listed;
  }
}

/** Where something stands in the book; `row` counts from 1 with the headings, as a spreadsheet shows it. */
export type Place = { file: string; row?: number; column?: string };

/** Something found in the book: where, and what about it. */
export type Noted = { place: Place; message: string };

/** Gathers what is wrong (and what is merely worth a notice) while the sheets are read, whatever the order. */
export class Findings {
  readonly #problems: Noted[] = [];
  readonly #notices: Noted[] = [];
  #problemsNotKept = 0;

  problem(place: Place, message: string): void {
    if (this.#problems.length < KEPT_MOST) this.#problems.push({ place, message });
    else this.#problemsNotKept += 1;
  }

  notice(place: Place, message: string): void {
    if (this.#notices.length < KEPT_MOST) this.#notices.push({ place, message });
  }

  get hasProblems(): boolean {
    return this.#problems.length > 0;
  }

  /** How many were found beyond those that are kept. */
  get problemsNotKept(): number {
    return this.#problemsNotKept;
  }

  /** In the order of the sheets given, then by row, then as found. */
  problemsBy(files: readonly string[]): Noted[] {
    return inPlaceOrder(this.#problems, files);
  }

  problemLines(files: readonly string[]): string[] {
    return this.problemsBy(files).map(lineOf);
  }

  noticeLines(files: readonly string[]): string[] {
    return inPlaceOrder(this.#notices, files).map(lineOf);
  }
}

function lineOf({ place: { file, row, column }, message }: Noted): string {
  const where = row === undefined ? file : `${file} row ${row}`;
  return column === undefined ? `${where}: ${message}` : `${where}, ${column}: ${message}`;
}

function inPlaceOrder(found: readonly Noted[], files: readonly string[]): Noted[] {
  const rank = new Map(files.map((file, at) => [file, at]));
  const rankOf = ({ file }: Place) => rank.get(file) ?? files.length;
  return [...found].sort(
    (a, b) => rankOf(a.place) - rankOf(b.place) || (a.place.row ?? 0) - (b.place.row ?? 0),
  );
}
