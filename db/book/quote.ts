const SHOWN_MOST = 60;

/** A text in quotation marks as a message shows it: on one line, cut when long. */
export function quote(text: string): string {
  const line = text.replace(/\s+/g, " ").trim();
  return `"${line.length > SHOWN_MOST ? `${line.slice(0, SHOWN_MOST)}…` : line}"`;
}

/** Names in quotation marks, the first few. ["1 L", "700 ml"] → `"1 L" and "700 ml"`. */
export function quoteList(names: readonly string[]): string {
  const shown = names.slice(0, 5).map(quote);
  if (names.length > shown.length) return `${shown.join(", ")} and ${names.length - shown.length} more`;
  const last = shown.pop() ?? "none";
  return shown.length === 0 ? last : `${shown.join(", ")} and ${last}`;
}
