import { z } from "zod";
import { Of } from "#engine/stock/movement.ts";
import { BusinessDate, ClockTime, Instant, Weekday } from "#engine/time.ts";

export const Supplier = z.strictObject({
  name: z.string().min(1),
  email: z.string(),
  minimumValueMinor: z.number().int().nonnegative().nullable(),
  minimumCases: z.number().nonnegative().nullable(),
});
export type Supplier = z.infer<typeof Supplier>;

/** One ordering chance a week: ordered by this time, it arrives at that. */
export const SupplierDay = z.strictObject({
  supplier: z.string(),
  orderDay: Weekday,
  orderBy: ClockTime,
  deliveryDay: Weekday,
  deliveryAt: ClockTime,
});
export type SupplierDay = z.infer<typeof SupplierDay>;

/** Days without orders or deliveries, of one supplier or (null) of all. */
export const Closure = z.strictObject({
  supplier: z.string().nullable(),
  from: BusinessDate,
  to: BusinessDate,
});
export type Closure = z.infer<typeof Closure>;

export const OrderLine = z.strictObject({
  order: z.string().min(1),
  placed: Instant,
  supplier: z.string(),
  item: z.string(),
  pack: z.string(),
  quantity: z.number().nonnegative(),
  of: Of,
  expected: BusinessDate,
});
export type OrderLine = z.infer<typeof OrderLine>;
