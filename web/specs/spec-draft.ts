import { keep, kept } from "../kept.ts";

/** A spec that is half written, and the day it shall hold from; it stays in this window until it is saved. */
export type SpecDraft = { from: string; text: string };

const keyOf = (makes: string) => `ullage-spec-draft ${makes}`;

/** What was typed for a drink or prep and not saved; undefined when nothing was. */
export function keptDraft(makes: string): SpecDraft | undefined {
  return kept<SpecDraft>(keyOf(makes), sessionStorage);
}

export function keepDraft(makes: string, draft: SpecDraft): void {
  keep(keyOf(makes), draft, sessionStorage);
}

export function dropDraft(makes: string): void {
  sessionStorage.removeItem(keyOf(makes));
}
