import { isHeading } from "#engine/sales/read/header.ts";
import type { Role } from "#engine/sales/read/headings.ts";
import type { SalesColumns } from "#engine/sales/read/shape.ts";

/** What the shape says: columns by role, and the roles that are settled so that nothing is to be detected for them. */
export type StatedColumns = { columns: Map<Role, number[]>; settled: Set<Role>; question: string | null };

/** The columns a shape names, by heading or number; or a question where the file has none of that heading. */
export function statedColumns(headings: readonly string[], columns: SalesColumns): StatedColumns {
  const stated: StatedColumns = { columns: new Map(), settled: new Set(), question: null };
  for (const [role, named] of Object.entries(columns) as [Role, string | string[] | undefined][]) {
    for (const heading of [named ?? []].flat()) {
      stated.settled.add(role);
      if (heading !== "") place(role, heading);
    }
  }
  // A shape that says where the time is has said it: a second clock elsewhere in the file must not join in.
  if (stated.columns.has("when")) for (const role of ["date", "time"] as const) stated.settled.add(role);
  if (stated.columns.has("date") || stated.columns.has("time")) stated.settled.add("when");
  return stated;

  function place(role: Role, heading: string): void {
    const number = /^#(\d+)$/.exec(heading)?.[1];
    const column =
      number === undefined ? headings.findIndex((cell) => isHeading(cell, heading)) : Number(number) - 1;
    if (column >= 0 && column < headings.length)
      stated.columns.set(role, [...(stated.columns.get(role) ?? []), column]);
    else stated.question ??= missingHeading(role, heading, headings);
  }
}

function missingHeading(role: Role, heading: string, headings: readonly string[]): string {
  const list = headings.map((cell) => `"${cell}"`).join(", ");
  return `the shape says that ${role} is in the column "${heading}", which the file does not have; it has ${list.slice(0, 600)}. Which one is it?`;
}
