/** The texts of a till by number: ring names and modifiers, each kept once. Numbers count from 1. */
export class TextTable {
  readonly #byText = new Map<string, number>();
  readonly #byNumber = new Map<number, string>();
  readonly #added: [number, string][] = [];
  #next = 1;

  /** Starts with the texts that have a number already. */
  constructor(known: Iterable<readonly [number, string]> = []) {
    for (const [number, text] of known) this.#remember(number, text);
  }

  /** The number of a text; one not met before gets the next. */
  numberOf(text: string): number {
    const known = this.#byText.get(text);
    if (known !== undefined) return known;
    const number = this.#next;
    this.#remember(number, text);
    this.#added.push([number, text]);
    return number;
  }

  /** Throws when no text has the number: a fault of the program. */
  textOf(number: number): string {
    const text = this.#byNumber.get(number);
    if (text === undefined) throw new Error(`No text of the till has the number ${number}.`);
    return text;
  }

  /** The texts that were new to the table, with the numbers they got, ascending. */
  get added(): readonly (readonly [number, string])[] {
    return this.#added;
  }

  #remember(number: number, text: string): void {
    this.#byText.set(text, number);
    this.#byNumber.set(number, text);
    if (number >= this.#next) this.#next = number + 1;
  }
}
