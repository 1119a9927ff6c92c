import { z } from "zod";
import { EventDay, Plan } from "#engine/demand/plan.ts";
import { Closure, OrderLine, Supplier, SupplierDay } from "#engine/orders/supplier.ts";
import { SalesShape } from "#engine/sales/read/shape.ts";
import { Modifier, RingName } from "#engine/sales/ring.ts";
import { Cut, Drink, PrepVersion, SpecLine } from "#engine/specs/spec.ts";
import { Item, Pack, Shelf } from "#engine/stock/item.ts";
import { Batch, BatchInput, CountRow, Delivery, Loss, Transfer } from "#engine/stock/movement.ts";
import { Venue } from "#engine/venue.ts";

/**
 * Everything a venue knows but its sales lines: one list per sheet, in the sheet's order.
 * References are names, spelled as the sheet that defines them spells them.
 */
export const Book = z.strictObject({
  venue: Venue,
  items: z.array(Item),
  packs: z.array(Pack),
  suppliers: z.array(Supplier),
  supplierDays: z.array(SupplierDay),
  closures: z.array(Closure),
  areas: z.array(Shelf),
  drinks: z.array(Drink),
  preps: z.array(PrepVersion),
  specs: z.array(SpecLine),
  cuts: z.array(Cut),
  ringNames: z.array(RingName),
  modifiers: z.array(Modifier),
  counts: z.array(CountRow),
  deliveries: z.array(Delivery),
  batches: z.array(Batch),
  batchInputs: z.array(BatchInput),
  losses: z.array(Loss),
  transfers: z.array(Transfer),
  events: z.array(EventDay),
  plans: z.array(Plan),
  orders: z.array(OrderLine),
  salesShapes: z.array(SalesShape),
});
export type Book = z.infer<typeof Book>;
