/**
 * A fault of the program as it goes into a log: where it happened and why, without what was being written. The query builder
 * puts a statement's values into its message, and those can be a person's name, a hash of a password, a note.
 */
export function faultText(error: unknown): string {
  const lines: string[] = [];
  for (let deeper: unknown = error; deeper !== undefined; ) {
    if (!(deeper instanceof Error)) {
      lines.push(`something was thrown that is no error, of type ${typeof deeper}`);
      break;
    }
    lines.push(`${lines.length === 0 ? "" : "caused by "}${withoutValues(deeper)}`);
    deeper = deeper.cause;
  }
  return lines.join("\n");
}

function withoutValues({ name, message, stack = "" }: Error): string {
  const told = message.replace(/\nparams: [\s\S]*$/, "\nparams: (left out)");
  const places = stack.split("\n").filter((line) => /^\s+at /.test(line));
  return [`${name}: ${told}`, ...places].join("\n");
}
