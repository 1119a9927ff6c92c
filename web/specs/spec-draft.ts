/** A spec that is half written, and the day it shall hold from; it stays in this window until it is saved. */
export type SpecDraft = { from: string; text: string };

const keyOf = (makes: string) => `ullage-spec-draft ${makes}`;

/** What was typed for a drink or prep and not saved; undefined when nothing was. */
export function keptDraft(makes: string): SpecDraft | undefined {
  const kept = sessionStorage.getItem(keyOf(makes));
  return kept === null ? undefined : (JSON.parse(kept) as SpecDraft);
}

export function keepDraft(makes: string, draft: SpecDraft): void {
  sessionStorage.setItem(keyOf(makes), JSON.stringify(draft));
}

export function dropDraft(makes: string): void {
  sessionStorage.removeItem(keyOf(makes));
}
