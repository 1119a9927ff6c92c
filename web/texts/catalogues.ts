/**
 * The English catalogue, a file for each folder of screens, and `steps` for what is done in a count besides counting; every
 * other language has the same files and names.
 */
export type Catalogues = {
  count: typeof import("./en/count.json", { with: { type: "json" }});
  forecast: typeof import("./en/forecast.json", { with: { type: "json" }});
  history: typeof import("./en/history.json", { with: { type: "json" }});
  look: typeof import("./en/look.json", { with: { type: "json" }});
  movements: typeof import("./en/movements.json", { with: { type: "json" }});
  order: typeof import("./en/order.json", { with: { type: "json" }});
  parts: typeof import("./en/parts.json", { with: { type: "json" }});
  people: typeof import("./en/people.json", { with: { type: "json" }});
  plan: typeof import("./en/plan.json", { with: { type: "json" }});
  prep: typeof import("./en/prep.json", { with: { type: "json" }});
  prices: typeof import("./en/prices.json", { with: { type: "json" }});
  report: typeof import("./en/report.json", { with: { type: "json" }});
  sales: typeof import("./en/sales.json", { with: { type: "json" }});
  shell: typeof import("./en/shell.json", { with: { type: "json" }});
  specs: typeof import("./en/specs.json", { with: { type: "json" }});
  steps: typeof import("./en/steps.json", { with: { type: "json" }});
  stock: typeof import("./en/stock.json", { with: { type: "json" }});
  variance: typeof import("./en/variance.json", { with: { type: "json" }});
  venue: typeof import("./en/venue.json", { with: { type: "json" }});
  week: typeof import("./en/week.json", { with: { type: "json" }});
};

/** The files that the frame and the count need; a phone in a cellar doorway loads these alone. */
export const FIRST: readonly (keyof Catalogues)[] = ["shell", "parts", "count"];

/** The name of a text: its file and its key there, as "week.title". */
export type TextId = {
  [Name in keyof Catalogues]: `${Name}.${keyof Catalogues[Name] & string}`;
}[keyof Catalogues];
