import type { TextId } from "../texts/catalogues.ts";

/** A kind of prep, and what its form asks for and reminds of. */
export type PrepKind = {
  kind: string;
  label: TextId;
  /** As the book has it, in English: the cautions look for its words. */
  category: string;
  unit: "ml" | "g" | "each";
  /** Whether its weights are reckoned from a strength or ratio. */
  isSyrup: boolean;
  /** Whether it is pressed or cut from a fruit. */
  isCut: boolean;
  /** Lines as an example of its kind. */
  example: TextId | null;
  /** What to think of before its days are written, beside the local code: no number of ours, and never a promise. */
  keeps: TextId | null;
  method: TextId | null;
};

export const PREP_KINDS: readonly PrepKind[] = [
  {
    kind: "syrup",
    label: "specs.syrup",
    category: "syrup",
    unit: "ml",
    isSyrup: true,
    isCut: false,
    example: "specs.syrupLines",
    keeps: "specs.syrupKeeps",
    method: "specs.syrupMethod",
  },
  {
    kind: "juice",
    label: "specs.juice",
    category: "juice",
    unit: "ml",
    isSyrup: false,
    isCut: true,
    example: null,
    keeps: "specs.juiceKeeps",
    method: "specs.juiceMethod",
  },
  {
    kind: "cordial",
    label: "specs.cordial",
    category: "cordial",
    unit: "ml",
    isSyrup: false,
    isCut: false,
    example: "specs.cordialLines",
    keeps: "specs.cordialKeeps",
    method: "specs.cordialMethod",
  },
  {
    kind: "infusion",
    label: "specs.infusion",
    category: "infusion",
    unit: "ml",
    isSyrup: false,
    isCut: false,
    example: "specs.infusionLines",
    keeps: "specs.infusionKeeps",
    method: "specs.infusionMethod",
  },
  {
    kind: "batch",
    label: "specs.batch",
    category: "batched drink",
    unit: "ml",
    isSyrup: false,
    isCut: false,
    example: "specs.batchLines",
    keeps: "specs.batchKeeps",
    method: "specs.batchMethod",
  },
  {
    kind: "other",
    label: "specs.otherKind",
    category: "prep",
    unit: "ml",
    isSyrup: false,
    isCut: false,
    example: "specs.otherLines",
    keeps: null,
    method: null,
  },
];
