import type { Sentences } from "#server/words/translator.ts";

/** Single words that stand in the places of sentences; alone they are never translated. */
export const WORDS: Sentences = {
  Mon: "Mo.",
  Tue: "Di.",
  Wed: "Mi.",
  Thu: "Do.",
  Fri: "Fr.",
  Sat: "Sa.",
  Sun: "So.",
  "over 99 %": "über 99 %",
  "under 1 %": "unter 1 %",
  "{0} until {1} {2}": "{0} bis {1}, {2}",
  "1 trading day": "1 Tag mit Betrieb",
  Most: "Das meiste",
  pieces: "Stück",
  today: "heute",
  yesterday: "gestern",
  supplier: "Lieferant",
  batch: "Charge",
  // What an older history says, and what was found on a shelf.
  "{0}, on {1}": "{0}, am {1}",
  "{0} full": "{0} volle",
  none: "nichts",
  // Kinds of losses, as the history tells them.
  "waste, {0}": "Abfall, {0}",
  "spill, {0}": "verschüttet, {0}",
  "breakage, {0}": "Bruch, {0}",
  "staff, {0}": "Personalgetränk, {0}",
  "tasting, {0}": "Verkostung, {0}",
  "comp, {0}": "Freigetränk, {0}",
  "expired, {0}": "abgelaufen, {0}",
  less: "weniger",
  more: "mehr",
};

/** Measures that are words, between an amount and the name of what is measured; of ml, oz and g each language has its own. */
export const MEASURE_WORDS: Sentences = {
  each: "{0} Stück",
  piece: "{0} Stück",
  serve: "{0, plural, one {# Portion} other {# Portionen}}",
  tsp: "{0} TL",
  tbsp: "{0} EL",
  dash: "{0} Spritzer",
  barspoon: "{0} Barlöffel",
  drop: "{0} Tropfen",
  splash: "{0} Schuss",
};
