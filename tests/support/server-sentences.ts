import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { parseSync } from "vite";
import { childrenOf, isPassedOver, lineOf, type Node } from "./syntax.ts";

/** A sentence that the server can say, with its places as {0}, {1} …, and where it stands. */
export type Found = { sentence: string; file: string; line: number };

const ROOT = join(import.meta.dirname, "../..");

/**
 * What no screen shows in words of the server: the command line, the scripts of the build, tables, the words by which till
 * files are read, why the fast reader leaves a file to the other, and what is written in the reader's language already.
 */
const UNSEEN =
  /^server\/(cli|bin|words)\/|^server\/(main|serve|version|api-document)\.ts|^server\/backups\/|^db\/(schema|migrations)\/|drizzle\.config|^engine\/sales\/(packed\/|read\/((headings|months)\.ts|regular\/))|^server\/static\.ts|^engine\/demand\/holiday-words\.ts|^engine\/(known-words\/|specs\/text\/german\/write\.ts)/;

/** Every sentence that a source of engine, db or server can send to a screen. */
export function serverSentences(): Found[] {
  const files = ["engine", "db", "server"].flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
      .map((entry) => relative(ROOT, join(entry.parentPath, entry.name))),
  );
  return files
    .filter((file) => !UNSEEN.test(file))
    .sort()
    .flatMap(sentencesOf);
}

function sentencesOf(file: string): Found[] {
  const source = readFileSync(join(ROOT, file), "utf8");
  const found: Found[] = [];
  const visit = (node: Node) => {
    if (isPassedOver(node)) return;
    // What a route is for stands in the API's document, which is for programmers.
    if (node.type === "CallExpression" && (node.callee as { name?: string }).name === "about") return;
    if (node.type === "Property" && (node.key as { name?: string }).name === "description") return;
    // Lists of words to compare with.
    if (
      node.type === "CallExpression" &&
      (node.callee as { property?: { name?: string } }).property?.name === "split"
    )
      return;
    const words = wordsOf(node);
    if (words !== undefined && looksSaid(words)) {
      found.push({ sentence: words, file, line: lineOf(source, node.start) });
    }
    // What a sum of texts is made of is no sentence of its own; what stands in its places may be.
    if (node.type === "BinaryExpression" && words !== undefined) return visitPlaces(node);
    for (const child of childrenOf(node)) visit(child);
  };
  const visitPlaces = (node: Node) => {
    if (node.type === "Literal") return;
    if (node.type === "BinaryExpression" && node.operator === "+") {
      visitPlaces(node.left as Node);
      visitPlaces(node.right as Node);
    } else if (node.type === "TemplateLiteral") for (const inner of node.expressions as Node[]) visit(inner);
    else visit(node);
  };
  visit(parseSync(file, source).program as unknown as Node);
  return found;
}

/** The words of a literal, a template or several joined by +, with the places numbered; undefined of anything else. */
function wordsOf(node: Node): string | undefined {
  const pieces = piecesOf(node);
  if (pieces === undefined || !pieces.some((piece) => piece !== null)) return undefined;
  let place = 0;
  // Two places without words between them cannot be told apart: they are one.
  const kept = pieces.filter((piece, at) => piece !== "" && (piece !== null || pieces[at - 1] !== null));
  return kept.map((piece) => piece ?? `{${place++}}`).join("");
}

/** Words, and null for a place; undefined of what is no text. */
function piecesOf(node: Node): (string | null)[] | undefined {
  if (node.type === "Literal") return typeof node.value === "string" ? [node.value] : undefined;
  if (node.type === "TemplateLiteral") {
    const quasis = node.quasis as { value: { cooked: string } }[];
    const words = quasis.flatMap(({ value }, at) => (at === 0 ? [value.cooked] : [null, value.cooked]));
    return words.filter((piece) => piece !== "");
  }
  if (node.type !== "BinaryExpression" || node.operator !== "+") return undefined;
  const left = piecesOf(node.left as Node);
  const right = piecesOf(node.right as Node);
  if (left === undefined && right === undefined) return undefined;
  return [...(left ?? [null]), ...(right ?? [null])];
}

/** At least two plain words after each other, and neither a query nor a pattern. */
function looksSaid(text: string): boolean {
  if (
    /^\s*(select|insert|update|delete|create|drop|with|pragma|begin|vacuum)\b|^\{0\} where |^[a-z_]+(\.[a-z_]+)+$/i.test(
      text,
    )
  )
    return false;
  // Words to compare with, one after another or as the ways of a pattern.
  if (/\|.*\|/.test(text) || /^(\{0\} )?([\p{L}\d]+ ){12,}[\p{L}\d]+$/u.test(text)) return false;
  return (
    / /.test(text) &&
    /(^|[a-z…,}] )[a-z]{2,}[,.:;]? ([a-z]|\{|$)|^[A-Z][a-z]+ [a-z]{2,}|^[A-Z][a-z]+[:.] \{/.test(text)
  );
}
