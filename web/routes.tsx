import { createRootRoute, createRoute, createRouter, lazyRouteComponent } from "@tanstack/react-router";
import type { ComponentType } from "react";
import { NotFound } from "./shell/NotFound.tsx";
import { RouteProblem } from "./shell/RouteProblem.tsx";
import { Shell } from "./shell/Shell.tsx";
import { withTexts } from "./texts/load.ts";

const root = createRootRoute({ component: Shell, notFoundComponent: NotFound });
const getParentRoute = () => root;

/** A screen whose code and texts are loaded when it is first gone to. */
function screen<Screen extends Record<string, ComponentType>, Name extends keyof Screen & string>(
  load: () => Promise<Screen>,
  name: Name,
) {
  return lazyRouteComponent(() => withTexts(load), name);
}

/** The two counts a variance lies between, as they stand in the address. */
function periodSearch(search: Record<string, unknown>): {
  count?: string | undefined;
  since?: string | undefined;
} {
  const text = (value: unknown) => (value === undefined ? undefined : String(value));
  return { count: text(search.count), since: text(search.since) };
}

/** Where in which count one stands, so that the device's back key works and a reload loses no place. */
function countSearch(search: Record<string, unknown>): {
  count?: string | undefined;
  area?: string | undefined;
  item?: string | undefined;
  items?: string | undefined;
  step?: CountStep | undefined;
} {
  const text = (value: unknown) => (value === undefined ? undefined : String(value));
  const { count, area, item, items } = search;
  const step = COUNT_STEPS.find((known) => known === search.step);
  return { count: text(count), area: text(area), item: text(item), items: text(items), step };
}

/** What is done in a count besides counting: its end, on paper, from paper, a shelf put in order, something found. */
const COUNT_STEPS = ["review", "sheet", "paper", "order", "found"] as const;
type CountStep = (typeof COUNT_STEPS)[number];

/** The day of a prep plan, and on a batch card how much to make. */
function prepSearch(search: Record<string, unknown>): {
  date?: string | undefined;
  make?: number | undefined;
} {
  const make = Number(search.make);
  return {
    date: search.date === undefined ? undefined : String(search.date),
    make: Number.isFinite(make) && make > 0 ? make : undefined,
  };
}

/** Whose history, and of which days. */
function historySearch(search: Record<string, unknown>): {
  subject?: string | undefined;
  from?: string | undefined;
  to?: string | undefined;
} {
  const text = (value: unknown) => (value === undefined ? undefined : String(value));
  return { subject: text(search.subject), from: text(search.from), to: text(search.to) };
}

/** Which kind of movement is shown. */
function movementSearch(search: Record<string, unknown>): { kind?: MovementKind | undefined } {
  return { kind: MOVEMENT_KINDS.find((kind) => kind === search.kind) };
}

const MOVEMENT_KINDS = ["deliveries", "losses", "transfers", "batches"] as const;
type MovementKind = (typeof MOVEMENT_KINDS)[number];

const routeTree = root.addChildren([
  createRoute({
    getParentRoute,
    path: "/",
    component: screen(() => import("./week/WeekPage.tsx"), "WeekPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/count",
    validateSearch: countSearch,
    component: lazyRouteComponent(() => import("./count/CountPage.tsx"), "CountPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/sales",
    component: screen(() => import("./sales/SalesPage.tsx"), "SalesPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/variance",
    validateSearch: periodSearch,
    component: screen(() => import("./variance/VariancePage.tsx"), "VariancePage"),
  }),
  createRoute({
    getParentRoute,
    path: "/variance/$item",
    validateSearch: periodSearch,
    component: screen(() => import("./variance/VarianceItemPage.tsx"), "VarianceItemPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/report",
    validateSearch: periodSearch,
    component: screen(() => import("./report/ReportPage.tsx"), "ReportPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/order",
    component: screen(() => import("./order/OrderPage.tsx"), "OrderPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/order/pars",
    component: screen(() => import("./order/ParsPage.tsx"), "ParsPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/order/check/$order",
    component: screen(() => import("./order/OrderCheckPage.tsx"), "OrderCheckPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/forecast",
    component: screen(() => import("./forecast/ForecastPage.tsx"), "ForecastPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/plan",
    component: screen(() => import("./plan/PlanPage.tsx"), "PlanPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/prep",
    validateSearch: prepSearch,
    component: screen(() => import("./prep/PrepPage.tsx"), "PrepPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/prep/$prep",
    validateSearch: prepSearch,
    component: screen(() => import("./prep/BatchCardPage.tsx"), "BatchCardPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/specs",
    component: screen(() => import("./specs/SpecsPage.tsx"), "SpecsPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/specs/$name",
    component: screen(() => import("./specs/SpecPage.tsx"), "SpecPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/stock",
    component: screen(() => import("./stock/StockPage.tsx"), "StockPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/prices",
    component: screen(() => import("./prices/PriceListPage.tsx"), "PriceListPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/movements",
    validateSearch: movementSearch,
    component: screen(() => import("./movements/MovementsPage.tsx"), "MovementsPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/welcome",
    component: screen(() => import("./people/WelcomePage.tsx"), "WelcomePage"),
  }),
  createRoute({
    getParentRoute,
    path: "/me",
    component: screen(() => import("./people/MePage.tsx"), "MePage"),
  }),
  createRoute({
    getParentRoute,
    path: "/venue",
    component: screen(() => import("./venue/VenuePage.tsx"), "VenuePage"),
  }),
  createRoute({
    getParentRoute,
    path: "/people",
    component: screen(() => import("./people/PeoplePage.tsx"), "PeoplePage"),
  }),
  createRoute({
    getParentRoute,
    path: "/history",
    validateSearch: historySearch,
    component: screen(() => import("./history/HistoryPage.tsx"), "HistoryPage"),
  }),
  createRoute({
    getParentRoute,
    path: "/look",
    component: screen(() => import("./look/LookPage.tsx"), "LookPage"),
  }),
]);

export const router = createRouter({
  routeTree,
  defaultPreload: "intent",
  scrollRestoration: true,
  defaultErrorComponent: RouteProblem,
});

declare module "@tanstack/react-router" {
  interface Register {
    router: typeof router;
  }
}
