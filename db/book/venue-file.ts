import type { z } from "zod";
import type { Findings } from "#db/book/problem.ts";
import { quote } from "#db/book/quote.ts";
import { SHAPES_FILE, VENUE_FILE } from "#db/book/sheets/all.ts";
import { didYouMean } from "#db/book/suggest.ts";
import { DEFAULT_UNCERTAINTY } from "#engine/measure/uncertainty.ts";
import { DEFAULT_HOUSE_ML } from "#engine/measure/units.ts";
import { SalesColumns, SalesShape, SalesShapes } from "#engine/sales/read/shape.ts";
import { DEFAULT_THRESHOLDS } from "#engine/variance/verdict.ts";
import { Venue } from "#engine/venue.ts";

const NEEDED = ["name", "currency", "timeZone", "dayEnds", "oz"] as const;
const KNOWN: readonly string[] = [
  ...NEEDED,
  "show",
  "houseMl",
  "serviceLevel",
  "uncertainty",
  "thresholds",
  "areaTemperatureC",
  "country",
  "region",
  "keepStaff",
];

/** Reads venue.json; what it leaves out has the stated defaults. Undefined, with the problems noted, when wrong. */
export function readVenue(text: string, findings: Findings): Venue | undefined {
  const json = readJson(VENUE_FILE, text, findings);
  if (json === undefined) return undefined;
  if (!isRecord(json)) {
    findings.problem({ file: VENUE_FILE }, "the file must hold one object, { … }");
    return undefined;
  }
  const known = withoutUnknown(VENUE_FILE, "", json, KNOWN, findings);
  for (const key of NEEDED) {
    if (known[key] === undefined) {
      findings.problem({ file: VENUE_FILE, column: key }, `it is missing; add "${key}"`);
    }
  }
  if (NEEDED.some((key) => known[key] === undefined)) return undefined;
  const venue = {
    show: "ml",
    serviceLevel: null,
    ...known,
    ...(typeof known.currency === "string" ? { currency: known.currency.trim().toUpperCase() } : {}),
    ...(typeof known.country === "string" ? { country: known.country.trim().toUpperCase() } : {}),
    ...(typeof known.region === "string" ? { region: known.region.trim().toUpperCase() } : {}),
    ...(typeof known.dayEnds === "string" ? { dayEnds: known.dayEnds.trim().padStart(5, "0") } : {}),
    houseMl: withDefaults("houseMl", known.houseMl, DEFAULT_HOUSE_ML, findings),
    uncertainty: withDefaults("uncertainty", known.uncertainty, DEFAULT_UNCERTAINTY, findings),
    ...(known.thresholds === undefined
      ? {}
      : { thresholds: withDefaults("thresholds", known.thresholds, DEFAULT_THRESHOLDS, findings) }),
  };
  const parsed = Venue.safeParse(venue);
  if (!parsed.success) {
    noteIssues(VENUE_FILE, parsed.error, findings);
    return undefined;
  }
  if (!Intl.supportedValuesOf("currency").includes(parsed.data.currency)) {
    findings.problem(
      { file: VENUE_FILE, column: "currency" },
      `${quote(parsed.data.currency)} is no currency of ISO 4217`,
    );
    return undefined;
  }
  return parsed.data;
}

export function writeVenue(venue: Venue): string {
  return `${JSON.stringify(venue, null, 2)}\n`;
}

/** Reads sales-shapes.json; none when wrong, with the problems noted. */
export function readShapes(text: string, findings: Findings): SalesShape[] {
  const json = readJson(SHAPES_FILE, text, findings);
  if (json === undefined) return [];
  const parsed = SalesShapes.safeParse(json);
  if (!parsed.success) noteIssues(SHAPES_FILE, parsed.error, findings);
  else noteUnknownInShapes(json, findings);
  return parsed.data ?? [];
}

function noteUnknownInShapes(json: unknown, findings: Findings): void {
  const shapes = Array.isArray(json) ? json.filter(isRecord) : [];
  for (const [at, shape] of shapes.entries()) {
    const prefix = `entry ${at + 1}.`;
    withoutUnknown(SHAPES_FILE, prefix, shape, Object.keys(SalesShape.shape), findings);
    const columns = isRecord(shape.columns) ? shape.columns : {};
    withoutUnknown(SHAPES_FILE, `${prefix}columns.`, columns, Object.keys(SalesColumns.shape), findings);
  }
}

export function writeShapes(shapes: readonly SalesShape[]): string {
  return `${JSON.stringify(shapes, null, 2)}\n`;
}

function readJson(file: string, text: string, findings: Findings): unknown {
  try {
    return JSON.parse(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
  } catch (error) {
    const at = error instanceof Error ? lineOfFault(error.message, text) : "";
    findings.problem({ file }, `this is no JSON${at}; check its commas, brackets and quotation marks`);
    return undefined;
  }
}

/** Where the text goes wrong, as far as the reader of JSON says so. */
function lineOfFault(message: string, text: string): string {
  const position = /position (\d+)/.exec(message)?.[1];
  if (position === undefined) return "";
  return ` at line ${text.slice(0, Number(position)).split("\n").length}`;
}

/** An object's own values over defaults; anything but an object is passed on, to be refused. */
function withDefaults(key: string, given: unknown, defaults: Record<string, number>, findings: Findings) {
  if (given === undefined) return defaults;
  if (!isRecord(given)) return given;
  return { ...defaults, ...withoutUnknown(VENUE_FILE, `${key}.`, given, Object.keys(defaults), findings) };
}

function withoutUnknown(
  file: string,
  prefix: string,
  given: Record<string, unknown>,
  known: readonly string[],
  findings: Findings,
): Record<string, unknown> {
  const kept: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(given)) {
    // null is how a program writes that it has nothing to say.
    if (known.includes(key)) {
      if (value !== null) kept[key] = value;
    } else {
      findings.notice(
        { file },
        `${quote(prefix + key)} is not known and was not read${didYouMean(key, known)}`,
      );
    }
  }
  return kept;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function noteIssues(file: string, error: z.ZodError, findings: Findings): void {
  for (const { path, message } of error.issues) {
    const column = path
      .map((step) => (typeof step === "number" ? `entry ${step + 1}` : String(step)))
      .join(".");
    findings.problem(column === "" ? { file } : { file, column }, message);
  }
}
