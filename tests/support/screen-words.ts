import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { parseSync } from "vite";
import { childrenOf, isPassedOver, lineOf, type Node } from "./syntax.ts";

/** A text that a screen asks for: its name, or as a pattern where the name is put together. */
export type Said = {
  file: string;
  line: number;
  id: string | RegExp;
  values: string[] | null;
  isAtTop: boolean;
};

/** Words that a person would read and that are not from the catalogue. */
export type LooseWords = { file: string; line: number; words: string };

const WEB = join(import.meta.dirname, "../../web");

/** Attributes whose text nobody reads. */
const UNREAD =
  /^(className|d|viewBox|href|to|type|role|id|key|name|list|inputMode|autoComplete|pattern|transform|accept|fill|stroke|textAnchor|style|points|value|fileName|scope|lang|rel|target|form|method|slot|popover.*|aria-(live|haspopup|sort|current|describedby|labelledby|controls))$/;

/** The sources of the screens, by their path from web/. */
export function screenFiles(): string[] {
  return readdirSync(WEB, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(WEB, join(entry.parentPath, entry.name)))
    .filter((file) => !/^(texts|offline|docs)\/|\.d\.ts$|vite\.config/.test(file))
    .sort();
}

/** What a source asks of the catalogue, and the words it says without it. */
export function readScreen(file: string): { said: Said[]; loose: LooseWords[]; literals: Set<string> } {
  const source = readFileSync(join(WEB, file), "utf8");
  const { program } = parseSync(file, source);
  const said: Said[] = [];
  const loose: LooseWords[] = [];
  const literals = new Set<string>();
  const find = (words: string, start: number) =>
    loose.push({ file, line: lineOf(source, start), words: words.trim().replace(/\s+/g, " ") });

  const visit = (node: Node, depth: number, isRead: boolean) => {
    if (isPassedOver(node)) return;
    if (node.type === "JSXAttribute") {
      const name = (node.name as { name: unknown }).name;
      if (typeof name === "string" && UNREAD.test(name)) return descend(node, depth, false);
    }
    if (node.type === "ThrowStatement") return;
    if (node.type === "JSXText" && hasWords(String(node.value))) find(String(node.value), node.start);
    if (node.type === "Literal" && typeof node.value === "string") {
      literals.add(node.value);
      if (isRead && looksWritten(node.value)) find(node.value, node.start);
    }
    if (node.type === "TemplateLiteral" && isRead) {
      const text = (node.quasis as { value: { cooked: string } }[])
        .map(({ value }) => value.cooked)
        .join("…");
      if (looksWritten(text)) find(text, node.start);
    }
    if (node.type === "CallExpression" && /^(say|sayWith)$/.test(nameOf(node.callee as Node))) {
      const [id, values] = node.arguments as (Node | undefined)[];
      for (const one of idsOf(id)) {
        said.push({
          file,
          line: lineOf(source, node.start),
          id: one,
          values: namesOf(values),
          isAtTop: depth === 0,
        });
      }
    }
    const deeper = /Function/.test(node.type) ? depth + 1 : depth;
    descend(node, deeper, isRead);
  };
  const descend = (node: Node, depth: number, isRead: boolean) => {
    for (const child of childrenOf(node)) visit(child, depth, isRead);
  };
  visit(program as unknown as Node, 0, true);
  return { said, loose, literals };
}

function nameOf(callee: Node): string {
  return callee.type === "Identifier" ? String(callee.name) : "";
}

/** The names that a first argument can have: a literal, either way of a choice, a template as a pattern. */
function idsOf(node: Node | undefined): (string | RegExp)[] {
  if (node === undefined) return [];
  if (node.type === "Literal") return [String(node.value)];
  if (node.type === "ConditionalExpression") {
    return [...idsOf(node.consequent as Node), ...idsOf(node.alternate as Node)];
  }
  if (node.type !== "TemplateLiteral") return [];
  const parts = (node.quasis as { value: { cooked: string } }[]).map(({ value }) =>
    value.cooked.replaceAll(".", "\\."),
  );
  return [new RegExp(`^${parts.join("[\\w-]+")}$`)];
}

function namesOf(node: Node | undefined): string[] | null {
  if (node === undefined) return [];
  if (node.type !== "ObjectExpression") return null;
  const properties = node.properties as Node[];
  if (properties.some(({ type }) => type !== "Property")) return null;
  return properties.map(({ key }) => String((key as Node).name ?? (key as Node).value));
}

function hasWords(text: string): boolean {
  return /\p{L}{2,}/u.test(text);
}

/** A sentence or a title rather than a key, a class or a unit: several plain words, or one with a capital. */
function looksWritten(text: string): boolean {
  if (/^[A-Z][A-Z_]+$|^[a-z-]+:|^\/|^\.|[{}<>;]|^--|^[MLHVCSQTAZ][\d.,\s-]/.test(text)) return false;
  return /^[A-Z][a-z]+([ ,.:…]|$)/.test(text) || /(^|[a-z…,] )[a-z]{2,}[,.]? [a-z…]/.test(text);
}
