import type { ColumnFinding } from "#engine/sales/read/columns.ts";
import type { SalesColumns, SalesShape } from "#engine/sales/read/shape.ts";

type Role = ColumnFinding["role"];

/** How a person says that a file is to be read: the role of each column, and what no column shows. */
export type Correction = {
  roles: Role[];
  dateOrder: "" | "dmy" | "mdy" | "ymd";
  decimal: "" | "." | ",";
  /** The business date of a file that names none. */
  day: string;
  isRowOneSale: boolean;
};

/** Roles a person can give, in the order of the choice. */
export const ROLES: readonly Role[] = [
  "unknown",
  "item",
  "quantity",
  "when",
  "date",
  "time",
  "businessDate",
  "modifiers",
  "gross",
  "net",
  "discount",
  "unitPrice",
  "check",
  "lineNo",
  "kind",
  "parent",
  "till",
];

type Looked = { columns: readonly ColumnFinding[]; shape: SalesShape };

/** What was understood, to be corrected from. A column of persons is not read whatever it is called. */
export function asUnderstood({ columns, shape }: Looked): Correction {
  return {
    roles: columns.map(({ role }) => (role === "other" ? "unknown" : role)),
    dateOrder: shape.dateOrder ?? "",
    decimal: shape.decimal ?? "",
    day: shape.day ?? "",
    isRowOneSale: shape.columns?.quantity === "",
  };
}

/**
 * The shape that says what a person said. A role that was found and taken away is said to be in no column, so that it is not found
 * again; which column it is, is said by its heading, or by its number where the heading is empty or there twice.
 */
export function shapeFrom({ columns, shape }: Looked, said: Correction): SalesShape {
  const nameOf = (column: number): string => {
    const heading = columns[column]?.heading ?? "";
    const isTwin = columns.filter((other) => other.heading === heading).length > 1;
    return heading === "" || isTwin ? `#${column + 1}` : heading;
  };
  const stated: Partial<Record<keyof SalesColumns, string | string[]>> = {};
  for (const { role } of columns) if (isStated(role)) stated[role] = "";
  const modifiers = said.roles.flatMap((role, column) => (role === "modifiers" ? [nameOf(column)] : []));
  said.roles.forEach((role, column) => {
    if (isStated(role) && role !== "modifiers") stated[role] = nameOf(column);
  });
  const [only] = modifiers;
  if (only !== undefined) stated.modifiers = modifiers.length === 1 ? only : modifiers;
  if (!said.roles.includes("quantity")) {
    delete stated.quantity;
    if (said.isRowOneSale) stated.quantity = "";
  }
  const { dateOrder: _, decimal: __, day: ___, columns: ____, ...rest } = shape;
  return {
    ...rest,
    ...(said.dateOrder === "" ? {} : { dateOrder: said.dateOrder }),
    ...(said.decimal === "" ? {} : { decimal: said.decimal }),
    ...(said.day === "" ? {} : { day: said.day }),
    columns: stated as SalesColumns,
  };
}

export function isSame(one: Correction, other: Correction): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

function isStated(role: Role): role is keyof SalesColumns {
  return role !== "unknown" && role !== "other" && role !== "staff";
}

/** Names of files like this one, with any digits: "sales 2026-11-23.csv" → "sales *.csv". */
export function filesLike(name: string): string {
  const ending = /\.[a-z]{1,5}$/i.exec(name)?.[0] ?? "";
  const stem = name.slice(0, name.length - ending.length).replace(/\d+(?:[-_. ]?\d+)*/g, "*");
  return `${stem.replace(/\*+/g, "*")}${ending}`;
}
