import fc from "fast-check";

/** The part of JSON Schema that the API's document uses. */
export type Schema = {
  type?: string | string[];
  enum?: unknown[];
  const?: unknown;
  anyOf?: Schema[];
  oneOf?: Schema[];
  allOf?: Schema[];
  properties?: Record<string, Schema>;
  required?: string[];
  additionalProperties?: boolean | Schema;
  items?: Schema;
  prefixItems?: Schema[];
  minItems?: number;
  maxItems?: number;
  minimum?: number;
  maximum?: number;
  exclusiveMinimum?: number;
  exclusiveMaximum?: number;
  minLength?: number;
  maxLength?: number;
  pattern?: string;
  format?: string;
};

const DATES = [
  "2026-03-02",
  "2026-03-07",
  "2026-03-08",
  "2025-12-31",
  "2028-02-29",
  "9999-12-31",
  "0001-01-01",
];
const MOMENTS = [
  "2026-03-02T10:00:00Z",
  "2026-03-08T23:59:59Z",
  "2026-03-29T01:30:00Z",
  "9999-12-31T23:59:59Z",
];
const TIMES = ["00:00", "04:00", "23:59"];

/** Values as the document asks for them; texts are mostly words that the bar knows, so that checks behind the form are reached. */
export function valuesOf(schema: Schema, known: fc.Arbitrary<string>): fc.Arbitrary<unknown> {
  const of = (part: Schema): fc.Arbitrary<unknown> => valuesOf(part, known);
  if (schema.const !== undefined) return fc.constant(schema.const);
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
  const choices = schema.anyOf ?? schema.oneOf;
  if (choices !== undefined) return fc.oneof(...choices.map(of));
  if (schema.allOf !== undefined)
    return fc.tuple(...schema.allOf.map(of)).map((parts) => Object.assign({}, ...(parts as object[])));
  const [first = "any", ...others] = [schema.type ?? []].flat();
  if (others.length > 0) return fc.oneof(...[first, ...others].map((type) => of({ ...schema, type })));
  switch (first) {
    case "object":
      return objectOf(schema, of, known);
    case "array":
      return arrayOf(schema, of);
    case "string":
      return textOf(schema, known);
    case "integer":
      return numberOf(schema, true);
    case "number":
      return fc.oneof(numberOf(schema, true), numberOf(schema, false));
    case "boolean":
      return fc.boolean();
    case "null":
      return fc.constant(null);
    default:
      return fc.oneof(known, fc.integer(), fc.constant(null));
  }
}

type Of = (part: Schema) => fc.Arbitrary<unknown>;

function objectOf(
  { properties = {}, required = [], additionalProperties }: Schema,
  of: Of,
  known: fc.Arbitrary<string>,
) {
  const fields = Object.fromEntries(Object.entries(properties).map(([name, part]) => [name, of(part)]));
  const own = fc.record(fields, { requiredKeys: required.filter((name) => name in fields) });
  if (typeof additionalProperties !== "object") return own;
  const more = fc.dictionary(known, of(additionalProperties), { maxKeys: 3 });
  return fc.tuple(own, more).map(([fixed, free]) => ({ ...free, ...fixed }));
}

function arrayOf({ items = {}, prefixItems, minItems = 0, maxItems = 4 }: Schema, of: Of) {
  if (prefixItems !== undefined) return fc.tuple(...prefixItems.map(of));
  return fc.array(of(items), { minLength: minItems, maxLength: Math.max(minItems, Math.min(maxItems, 4)) });
}

function textOf(
  { pattern = "", format, minLength = 0, maxLength = 100_000 }: Schema,
  known: fc.Arbitrary<string>,
) {
  if (format === "date" || pattern.includes("-02-29")) return fc.constantFrom(...DATES);
  if (pattern.includes("T\\d")) return fc.constantFrom(...MOMENTS);
  if (pattern.includes(":") && pattern !== "") return fc.constantFrom(...TIMES);
  if (/^\^\\d\{(\d+),(\d+)\}\$$/.test(pattern)) return fc.constantFrom("1357", "4711", "90210");
  const fits = (text: string): boolean => text.length >= minLength && text.length <= maxLength;
  return fc
    .oneof({ weight: 5, arbitrary: known }, { weight: 1, arbitrary: fc.string({ maxLength: 20 }) })
    .map((text) => (fits(text) ? text : text.padEnd(minLength, "x").slice(0, maxLength)));
}

function numberOf({ minimum, maximum, exclusiveMinimum, exclusiveMaximum }: Schema, isWhole: boolean) {
  const low = Math.max(
    minimum ?? -1e6,
    exclusiveMinimum === undefined ? -1e6 : exclusiveMinimum + (isWhole ? 1 : 1e-6),
  );
  const high = Math.min(
    maximum ?? 1e6,
    exclusiveMaximum === undefined ? 1e6 : exclusiveMaximum - (isWhole ? 1 : 1e-6),
  );
  const small = Math.max(low, Math.min(high, low <= 1 && high >= 1 ? 1 : low));
  if (!isWhole) return fc.oneof(fc.constant(small), fc.double({ min: low, max: high, noNaN: true }));
  return fc.oneof(
    fc.constant(Math.ceil(small)),
    fc.integer({ min: Math.ceil(low), max: Math.max(Math.ceil(low), Math.floor(high)) }),
  );
}

/** What breaks programs: wrong kinds, giants, names that mean something to JavaScript, a database, a file system, a spreadsheet. */
export const HOSTILE: readonly unknown[] = [
  null,
  true,
  "",
  " ",
  "\u0000",
  "\ud800",
  "\u202e\u0301",
  "__proto__",
  "constructor",
  "toString",
  "=1+1",
  "'; drop table items; --",
  "../../../../etc/passwd",
  "%00",
  "<script>alert(1)</script>",
  "x".repeat(20_000),
  "9".repeat(400),
  "2026-02-30",
  "2026-13-45T99:99:99Z",
  "99999-01-01",
  "-0",
  "1e400",
  "NaN",
  0,
  -1,
  0.1,
  1e308,
  -1e308,
  5e-324,
  Number.MAX_SAFE_INTEGER + 2,
  [],
  {},
  [[[[[[]]]]]],
  { __proto__: null, length: -1 },
  Array.from({ length: 2000 }, () => null),
  JSON.parse('{"__proto__": {"isOwner": true}, "constructor": {"prototype": {"isOwner": true}}}'),
];

/** The same value with something hostile put in one place of it, or with a field gone or one too many. */
export function spoilt(value: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  return fc
    .tuple(
      value,
      fc.constantFrom(...HOSTILE),
      fc.array(fc.nat(12), { maxLength: 4 }),
      fc.constantFrom("put", "drop", "add"),
    )
    .map(([whole, hostile, path, how]) => changedAt(whole, path, hostile, how));
}

function changedAt(
  value: unknown,
  [step, ...path]: readonly number[],
  hostile: unknown,
  how: string,
): unknown {
  if (step === undefined || typeof value !== "object" || value === null) return hostile;
  const names = Object.keys(value);
  const name = names[step % Math.max(1, names.length)];
  if (name === undefined) return hostile;
  const copy: Record<string, unknown> | unknown[] = Array.isArray(value) ? [...value] : { ...value };
  const fields = copy as Record<string, unknown>;
  if (path.length > 0) fields[name] = changedAt(fields[name], path, hostile, how);
  else if (how === "drop") delete fields[name];
  else if (how === "add") fields[`${name}2`] = hostile;
  else fields[name] = hostile;
  return copy;
}
