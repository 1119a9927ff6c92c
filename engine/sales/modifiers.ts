import type { Catalogue } from "#engine/catalogue.ts";
import { foldName } from "#engine/name.ts";
import type { Modifier } from "#engine/sales/ring.ts";

/** What the till's modifier cell asks for, and the pieces of it that the book does not know. */
export type ReadModifiers = { effects: Modifier[]; unknown: string[] };

/**
 * Reads a modifier cell: split at `;`, `|`, `/` and line breaks, and at commas if every piece is known.
 *
 * A comma list with an unknown piece is one unknown modifier. A cell, or a piece of it, that the book
 * names whole is taken whole, whatever marks it holds.
 */
export function readModifiers(catalogue: Catalogue, cell: string): ReadModifiers {
  const effects: Modifier[] = [];
  const unknown: string[] = [];
  for (const piece of pieces(catalogue, cell)) {
    const known = catalogue.modifiers.get(foldName(piece));
    if (known === undefined) unknown.push(piece);
    else effects.push(...known);
  }
  return { effects, unknown };
}

function pieces(catalogue: Catalogue, cell: string): string[] {
  if (isKnown(catalogue, cell)) return [cell];
  return split(cell, /[;|\r\n]+/).flatMap((part) => {
    if (isKnown(catalogue, part)) return [part];
    return split(part, /\//).flatMap((piece) => commaPieces(catalogue, piece));
  });
}

function commaPieces(catalogue: Catalogue, piece: string): string[] {
  if (isKnown(catalogue, piece)) return [piece];
  const parts = split(piece, /,/);
  return parts.length > 1 && parts.every((part) => isKnown(catalogue, part)) ? parts : [piece];
}

function split(text: string, at: RegExp): string[] {
  return text
    .split(at)
    .map((part) => part.trim())
    .filter((part) => part !== "");
}

function isKnown(catalogue: Catalogue, text: string): boolean {
  return catalogue.modifiers.has(foldName(text));
}
