import { ACTS } from "#server/words/german/acts.ts";
import { BOOK } from "#server/words/german/book.ts";
import { MEASURES } from "#server/words/german/measures.ts";
import { REPORTS } from "#server/words/german/reports.ts";
import { SALES } from "#server/words/german/sales.ts";
import { SERVER } from "#server/words/german/server.ts";
import { SPECS } from "#server/words/german/specs.ts";
import { VARIANCE } from "#server/words/german/variance.ts";
import { WORDS } from "#server/words/german/words.ts";
import type { Sentences } from "#server/words/translator.ts";

/** What engine, db and server say, in German, by the English of the source. */
export const GERMAN: Sentences = {
  ...WORDS,
  ...ACTS,
  ...BOOK,
  ...MEASURES,
  ...REPORTS,
  ...SALES,
  ...SERVER,
  ...SPECS,
  ...VARIANCE,
};
