/** A kind of prep, and what its form asks for and reminds of. */
export type PrepKind = {
  kind: string;
  label: string;
  category: string;
  unit: "ml" | "g" | "each";
  /** Whether its weights are reckoned from a strength or ratio. */
  isSyrup: boolean;
  /** Whether it is pressed or cut from a fruit. */
  isCut: boolean;
  /** Lines as an example of its kind. */
  example: string;
  /** What to think of before its days are written: no number of ours, and never a promise. */
  keeps: string;
  method: string;
};

const LOCAL_CODE = "Write what your local food code and your own checks allow.";

export const PREP_KINDS: readonly PrepKind[] = [
  {
    kind: "syrup",
    label: "a syrup",
    category: "syrup",
    unit: "ml",
    isSyrup: true,
    isCut: false,
    example: "1000 g white sugar\n1000 ml water",
    keeps: `Thin syrups spoil sooner than rich ones, and clean, cold bottles matter. ${LOCAL_CODE}`,
    method: "Weigh sweetener and water. Stir until clear. Measure °Brix, cool, label, date.",
  },
  {
    kind: "juice",
    label: "juice, pressed or squeezed",
    category: "juice",
    unit: "ml",
    isSyrup: false,
    isCut: true,
    example: "",
    keeps: `Fresh juice is among the first things a food code limits. ${LOCAL_CODE}`,
    method: "Wash the fruit. Press, strain, chill, label, date.",
  },
  {
    kind: "cordial",
    label: "a cordial, with acid and peels",
    category: "cordial",
    unit: "ml",
    isSyrup: false,
    isCut: false,
    example: "900 g white sugar\n45 g citric acid\n900 ml water\n10 grapefruit peels",
    keeps: `Sugar and acid slow spoiling, they do not stop it. ${LOCAL_CODE}`,
    method: "Rub the peels with the sugar. Stand. Add acid and water, strain, bottle, label, date.",
  },
  {
    kind: "infusion",
    label: "an infusion",
    category: "infusion",
    unit: "ml",
    isSyrup: false,
    isCut: false,
    example: "1000 ml blanco agave\n10 g red chilli",
    keeps: `What is steeped in weak spirit or oil can spoil unseen. ${LOCAL_CODE}`,
    method: "Steep, taste, strain, bottle, label, date.",
  },
  {
    kind: "batch",
    label: "a batched drink",
    category: "batched drink",
    unit: "ml",
    isSyrup: false,
    isCut: false,
    example: "3000 ml dry gin\n600 ml dry vermouth\n800 ml water",
    keeps: `With juice or dairy in it, it keeps no longer than they do. ${LOCAL_CODE}`,
    method: "Measure, stir with the water, bottle, chill, label with its strength, date.",
  },
  {
    kind: "other",
    label: "something else: a saline, a tincture, a garnish",
    category: "prep",
    unit: "ml",
    isSyrup: false,
    isCut: false,
    example: "20 g salt\n80 ml water",
    keeps: LOCAL_CODE,
    method: "",
  },
];
