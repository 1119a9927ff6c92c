/** A piece of a source as the parser gives it. */
export type Node = { type: string; start: number } & Record<string, unknown>;

export function isNode(value: unknown): value is Node {
  return typeof value === "object" && value !== null && typeof (value as Node).type === "string";
}

/** The pieces that a piece is made of, in their order. */
export function childrenOf(node: Node): Node[] {
  return Object.values(node)
    .flatMap((value) => (Array.isArray(value) ? value : [value]))
    .filter(isNode);
}

/** Types are nothing that is said, and imports are looked through elsewhere; a value behind a type is. */
export function isPassedOver({ type }: Node): boolean {
  return /^(TS(?!(As|Satisfies|NonNull)Expression)|Import|ExportAll)/.test(type);
}

/** The line that a place in a source is on, from 1. */
export function lineOf(source: string, start: number): number {
  return source.slice(0, start).split("\n").length;
}
