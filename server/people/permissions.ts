import type { Role } from "#server/people/actor.ts";

// The one table of who may do what. A route that has no rule here is refused to everybody, and fails the tests.

const ALL = ["owner", "manager", "counter", "prep"] as const;
/** Whoever counts and takes deliveries in. */
const COUNTING = ["owner", "manager", "counter"] as const;
/** Whoever runs the bar: sees money, changes specs and prices, orders. */
const RUNNING = ["owner", "manager"] as const;
const OWNER = ["owner"] as const;

/** What roles may see and do beyond single routes; the screens follow it too. */
export const POWERS = {
  count: COUNTING,
  /** Costs, prices, margins, the till's money, variance in money, the owner's report. */
  seeCosts: RUNNING,
  /** Who entered what, in the lists of movements and in the history. One's own name everybody sees. */
  seeNames: RUNNING,
  /** Correct and take back what others entered, or what is older than a day. */
  changePast: RUNNING,
  runBar: RUNNING,
  undoImports: RUNNING,
  /** Whether names of staff are kept with sales, and erasing them. */
  keepStaff: OWNER,
  enrolDevices: RUNNING,
  reopenPast: OWNER,
  managePeople: OWNER,
} as const satisfies Record<string, readonly Role[]>;
export type Power = keyof typeof POWERS;

export function may(role: Role, power: Power): boolean {
  return (POWERS[power] as readonly Role[]).includes(role);
}

export function powersOf(role: Role): Power[] {
  return (Object.keys(POWERS) as Power[]).filter((power) => may(role, power));
}

export type Rule = {
  /** "anyone" needs no sign-in. */
  may: readonly Role[] | "anyone";
  /** A POST that writes nothing: a token that may only read may call it. */
  readsOnly?: true;
  /** For somebody in person: no token, whatever its role, gets past it. */
  inPerson?: true;
  /** Fields of the answer, at any depth, that are emptied for roles without seeCosts. */
  costs?: readonly string[];
  /** The same without seeNames, unless the name is one's own. */
  names?: readonly string[];
  /** The same without runBar: what concerns the machine and its files. */
  machine?: readonly string[];
};

const ENTRY_NAMES = ["by", "enteredBy"] as const;

/** By method and path as the OpenAPI document writes them. */
export const RULES: Readonly<Record<string, Rule>> = {
  "GET /api/openapi.json": { may: "anyone" },

  "GET /api/sign-in": { may: "anyone" },
  "POST /api/sign-in/password": { may: "anyone" },
  "POST /api/sign-in/pin": { may: "anyone" },
  "POST /api/sign-in/link": { may: "anyone" },
  "POST /api/sign-in/link/look": { may: "anyone" },
  "POST /api/sign-in/out": { may: ALL, inPerson: true },
  "POST /api/sign-in/out-everywhere": { may: ALL, inPerson: true },
  "POST /api/sign-in/change": { may: ALL, inPerson: true },

  "GET /api/people": { may: OWNER, inPerson: true },
  "POST /api/people": { may: OWNER, inPerson: true },
  "POST /api/people/{id}": { may: OWNER, inPerson: true },
  "POST /api/people/{id}/link": { may: OWNER, inPerson: true },
  "POST /api/people/{id}/sign-out": { may: OWNER, inPerson: true },
  "GET /api/devices": { may: RUNNING, inPerson: true },
  "POST /api/devices": { may: RUNNING, inPerson: true },
  "POST /api/devices/{id}/remove": { may: RUNNING, inPerson: true },
  "GET /api/tokens": { may: OWNER, inPerson: true },
  "POST /api/tokens": { may: OWNER, inPerson: true },
  "POST /api/tokens/{id}/revoke": { may: OWNER, inPerson: true },

  "GET /api/week": { may: ALL, costs: ["totals", "top", "causes", "net", "total"], machine: ["warnings"] },
  "GET /api/venue": { may: ALL },
  "POST /api/venue": { may: RUNNING },
  "POST /api/venue/settings": { may: RUNNING },
  "GET /api/catalogue": { may: ALL, costs: ["price", "priceMinor", "minimumValueMinor"] },
  "GET /api/stock": { may: ALL, costs: ["costPerBase", "value"] },

  "GET /api/counts": { may: ALL },
  "GET /api/counts/sheet": { may: COUNTING },
  // Who counts together must see whom to ask, so names stay.
  "GET /api/counts/rows/{name}": { may: COUNTING },
  "POST /api/counts/entries": { may: COUNTING },
  "POST /api/areas": { may: COUNTING },

  "POST /api/batches": { may: ALL },
  "POST /api/losses": { may: ALL },
  "POST /api/deliveries": { may: COUNTING },
  "POST /api/transfers": { may: COUNTING },
  "GET /api/entries/{kind}": { may: ALL, costs: ["priceTotalMinor"], names: ENTRY_NAMES },
  // Without changePast only one's own, of the last day: server/people/own-entry.ts.
  "POST /api/entries/{kind}/{id}/correct": { may: ALL },
  "POST /api/entries/{kind}/{id}/withdraw": { may: ALL },

  "GET /api/reports/prep": { may: ALL },
  "GET /api/reports/prep/card": { may: ALL },
  "GET /api/reports/forecast": { may: ALL },
  "GET /api/reports/forecast/past": { may: ALL },
  "GET /api/reports/use": { may: RUNNING },
  "GET /api/reports/variance": { may: RUNNING },
  "GET /api/reports/variance/item": { may: RUNNING },
  "GET /api/reports/owner": { may: RUNNING },
  "GET /api/reports/trend": { may: RUNNING },
  "GET /api/reports/order": { may: RUNNING },
  "GET /api/reports/cost": { may: RUNNING },
  "GET /api/reports/make-or-buy": { may: RUNNING },
  "GET /api/reports/replay": { may: RUNNING },
  "POST /api/reports/replay": { may: RUNNING, readsOnly: true },
  "POST /api/reports/what-if": { may: RUNNING, readsOnly: true },

  "GET /api/orders": { may: COUNTING },
  "GET /api/orders/late": { may: COUNTING, costs: ["priceOrdered", "pricePaid", "paidMore"] },
  "GET /api/orders/check": { may: RUNNING },
  "GET /api/orders/par-effect": { may: RUNNING },
  "POST /api/orders/pars": { may: RUNNING },
  "POST /api/orders": { may: RUNNING },

  "POST /api/causes/settle": { may: RUNNING },
  "GET /api/causes/settled": { may: RUNNING },
  "POST /api/causes/settled/{id}/take-back": { may: RUNNING },

  "POST /api/sales/preview": { may: RUNNING, readsOnly: true },
  "POST /api/sales/import": { may: RUNNING },
  "POST /api/sales/jobs": { may: RUNNING },
  "GET /api/sales/jobs/{id}": { may: RUNNING },
  "POST /api/sales/jobs/{id}/look": { may: RUNNING },
  "POST /api/sales/jobs/{id}/import": { may: RUNNING },
  "POST /api/sales/jobs/{id}/cancel": { may: RUNNING },
  "GET /api/sales/imports": { may: RUNNING },
  "POST /api/sales/imports/{id}/undo": { may: POWERS.undoImports },
  "GET /api/sales/days": { may: RUNNING },
  "GET /api/sales/lines": { may: RUNNING, names: ["staff"] },
  "GET /api/sales/staff": { may: POWERS.keepStaff },
  "POST /api/sales/staff": { may: POWERS.keepStaff },
  "POST /api/sales/staff/erase": { may: POWERS.keepStaff, inPerson: true },
  "GET /api/sales/unmapped": { may: RUNNING },

  "POST /api/specs/read": { may: RUNNING, readsOnly: true },
  "POST /api/specs": { may: RUNNING },
  "POST /api/drinks": { may: RUNNING },
  "POST /api/preps": { may: RUNNING },
  "POST /api/preps/preview": { may: RUNNING, readsOnly: true },
  "POST /api/preps/new": { may: RUNNING },
  "POST /api/cuts": { may: RUNNING },
  "POST /api/items": { may: RUNNING },
  "POST /api/packs": { may: RUNNING },
  "POST /api/ring-names": { may: RUNNING },
  "GET /api/ring-names": { may: RUNNING },
  "POST /api/ring-names/accept": { may: RUNNING },
  "POST /api/ring-names/undo": { may: RUNNING },
  "POST /api/ring-names/remove": { may: RUNNING },
  "POST /api/modifiers": { may: RUNNING },
  "POST /api/price-lists/read": { may: RUNNING, readsOnly: true },
  "POST /api/price-lists": { may: RUNNING },
  "POST /api/suppliers": { may: RUNNING },

  "GET /api/history": { may: RUNNING },
  "POST /api/history/{seq}/undo": { may: POWERS.changePast },
  "GET /api/closing": { may: RUNNING },
  "POST /api/closing": { may: RUNNING },
  "POST /api/closing/reopen": { may: POWERS.reopenPast },
};

/** The rule of a route as the router knows it. ruleOf("GET", "/api/counts/rows/:name") → who may read a count's rows. */
export function ruleOf(method: string, routePath: string): Rule | undefined {
  const path = routePath.replace(/:(\w+)(\{[^}]*\})?/g, "{$1}").replace(/(.)\/$/, "$1");
  return RULES[`${method} ${path}`];
}
