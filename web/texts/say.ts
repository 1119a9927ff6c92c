import { createElement, Fragment, isValidElement, type ReactNode } from "react";
import type { TextId } from "./catalogues.ts";

/** What stands in a text's places: numbers that decide its plural, and words or amounts as they are to be read. */
export type Values = Readonly<Record<string, string | number>>;

/** Texts of one language by file and key, each a function of its values; the build makes them from the ICU messages. */
export type Texts = Record<string, Record<string, (values: Values) => string>>;

const known: Texts = {};

/** Adds texts to those that `say` knows. */
export function takeTexts(texts: Texts): void {
  Object.assign(known, texts);
}

/**
 * A text of the catalogue in the language of this device: say("week.notCounted", { count: 3 }).
 *
 * Only to be called while something is drawn or done: when a module is first read its texts may still be on their way.
 */
export function say(id: TextId, values: Values = {}): string {
  const [file = "", key = ""] = id.split(".");
  const text = known[file]?.[key];
  if (text !== undefined) return text(values);
  console.error(`The text ${id} is not loaded.`);
  return key;
}

const PLACE = /\uE000(\w+)\uE001/;

/** A text with things to be drawn among its words: sayWith("week.loose", { link: <Link to="/sales">…</Link> }). */
export function sayWith(id: TextId, values: Readonly<Record<string, ReactNode>>): ReactNode {
  const words: Record<string, string | number> = {};
  for (const [name, value] of Object.entries(values)) {
    const isWord = typeof value === "string" || typeof value === "number";
    words[name] = isWord ? value : `\uE000${name}\uE001`;
  }
  // Every second piece is the name of something drawn.
  const pieces = say(id, words).split(PLACE);
  const drawn = pieces.map((piece, at) => (at % 2 === 0 ? piece : keyed(values[piece], `${piece}${at}`)));
  return createElement(Fragment, null, ...drawn);
}

function keyed(node: ReactNode, key: string): ReactNode {
  return isValidElement(node) ? node : createElement(Fragment, { key }, node);
}
