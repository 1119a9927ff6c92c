import type { Answer, server } from "./api.ts";

// What the server answers, in the server's own types.
// Money is in major units of the venue's currency, amounts are in the item's base unit.

export type Week = Answer<typeof server.week.$get>;
export type WeekStep = Week["steps"][number];
export type Discard = Week["expiring"][number];
export type NextOrder = Week["nextOrders"][number];

export type VarianceAnswer = Answer<typeof server.reports.variance.$get>;
export type VarianceRow = VarianceAnswer["items"][number];
export type Cause = VarianceAnswer["causes"][number];
export type VarianceOfItem = Answer<typeof server.reports.variance.item.$get>;

export type OrderReport = Answer<typeof server.reports.order.$get>;
export type SupplierOrder = OrderReport["suppliers"][number];
export type OrderReportLine = SupplierOrder["lines"][number];
export type OpenOrder = Answer<typeof server.orders.$get>[number];

export type Stock = Answer<typeof server.stock.$get>;
export type StockRow = Stock["items"][number];

export type CatalogueAnswer = Answer<typeof server.catalogue.$get>;
