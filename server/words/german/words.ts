import type { Sentences } from "#server/words/translator.ts";

/** Single words that stand in the places of sentences; alone they are never translated. */
export const WORDS: Sentences = {
  Mon: "Mo",
  Tue: "Di",
  Wed: "Mi",
  Thu: "Do",
  Fri: "Fr",
  Sat: "Sa",
  Sun: "So",
  "over 99 %": "über 99 %",
  "under 1 %": "unter 1 %",
  "{0} until {1} {2}": "{0} bis {1} {2}",
  "1 trading day": "1 Tag mit Betrieb",
  Most: "Das meiste",
  pieces: "Stück",
  today: "heute",
  yesterday: "gestern",
  supplier: "Lieferant",
  batch: "Charge",
  less: "weniger",
  more: "mehr",
};
