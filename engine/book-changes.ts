/** A fact of a sheet, whichever sheet. */
export type AnyFact = Readonly<Record<string, unknown>>;

/** Facts of some sheets, by the sheet's name in the book. */
export type Sheets = Readonly<Record<string, readonly AnyFact[] | undefined>>;

/** One thing that an act changed in the book. */
export type FactChange = {
  sheet: string;
  fact: AnyFact;
  way: "added" | "takenOut" | "changed";
  /** Of a change, those that are other than before. */
  fields: readonly { field: string; was: unknown; is: unknown }[];
};

type Naming = { title: string; keys: readonly string[] };

const UNNAMED: Naming = { title: "", keys: [] };

/** By which field a fact of a sheet is called, and which of its fields only say whose it is. */
const SHEETS: Readonly<Record<string, Naming>> = {
  venue: { title: "", keys: [] },
  salesShapes: { title: "files", keys: ["files"] },
  items: { title: "name", keys: ["name"] },
  drinks: { title: "name", keys: ["name"] },
  suppliers: { title: "name", keys: ["name"] },
  supplierDays: { title: "orderDay", keys: ["supplier", "orderDay"] },
  closures: { title: "from", keys: ["supplier"] },
  packs: { title: "pack", keys: ["item", "pack", "supplier", "from"] },
  areas: { title: "item", keys: ["area", "item"] },
  preps: { title: "prep", keys: ["prep", "from"] },
  specs: { title: "item", keys: ["makes", "from", "item"] },
  cuts: { title: "gives", keys: ["source", "gives", "from"] },
  ringNames: { title: "ringName", keys: ["ringName"] },
  modifiers: { title: "modifier", keys: ["modifier", "effect"] },
  events: { title: "event", keys: ["date", "event"] },
  plans: { title: "drink", keys: ["date", "drink"] },
  orders: { title: "item", keys: ["order", "item", "pack"] },
};

/** What was changed between facts taken away and facts put there: those of one key are one fact that changed. */
export function bookChanges({ before, after }: { before: Sheets; after: Sheets }): FactChange[] {
  return Object.keys(SHEETS).flatMap((sheet) => changesIn(sheet, before[sheet] ?? [], after[sheet] ?? []));
}

function changesIn(sheet: string, gone: readonly AnyFact[], come: readonly AnyFact[]): FactChange[] {
  const { keys } = SHEETS[sheet] ?? UNNAMED;
  const left = [...gone];
  const changes = come.map((fact): FactChange => {
    const at = left.findIndex((old) => keyOf(old, keys) === keyOf(fact, keys));
    if (at === -1) return { sheet, fact, way: "added", fields: [] };
    const [old = {}] = left.splice(at, 1);
    const fields = Object.keys(fact)
      .filter((field) => !keys.includes(field) && !isSame(old[field], fact[field]))
      .map((field) => ({ field, was: old[field], is: fact[field] }));
    return { sheet, fact, way: "changed", fields };
  });
  return [...changes, ...left.map((fact): FactChange => ({ sheet, fact, way: "takenOut", fields: [] }))];
}

/** The field by which a fact of a sheet is called; "" for one that needs no name. */
export function titleField(sheet: string): string {
  return (SHEETS[sheet] ?? UNNAMED).title;
}

/** As many changes of an act are told in one line; the rest are counted. */
export const CHANGES_SHOWN = 4;

const VALUES_SHOWN = 4;

/** The fields that say most of a fact, without those that only say whose it is. */
export function tellingFields(sheet: string, fact: AnyFact): string[] {
  const { keys } = SHEETS[sheet] ?? UNNAMED;
  return Object.keys(fact)
    .filter((field) => !keys.includes(field) && !isNothing(fact[field]) && field !== "line")
    .slice(0, VALUES_SHOWN);
}

/** Whether a field of a fact says nothing. */
export function isNothing(value: unknown): boolean {
  return (
    value === null || value === undefined || value === "" || (Array.isArray(value) && value.length === 0)
  );
}

function keyOf(fact: AnyFact, keys: readonly string[]): string {
  return JSON.stringify(keys.map((key) => fact[key] ?? null));
}

function isSame(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
