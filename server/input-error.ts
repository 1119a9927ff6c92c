/** Wrong input or use: said in one line on standard error with exit status 2, or as a 422 over HTTP. */
export class InputError extends Error {
  readonly problems: readonly string[];
  constructor(problems: string | readonly string[]) {
    const list = typeof problems === "string" ? [problems] : problems;
    super(list.join("\n"));
    this.name = "InputError";
    this.problems = list;
  }
}
