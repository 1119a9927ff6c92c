import { currencyDigits } from "#engine/currency.ts";
import { type Report, section } from "#server/cli/output.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { withWorld } from "#server/cli/session.ts";
import { numberText } from "#server/cli/table.ts";
import { readMoment, readMoneyMinor } from "#server/reading.ts";
import { type OrderReport, orderFor } from "#server/reports/order.ts";

type OrderOptions = CommonOptions & {
  at?: string;
  supplier?: string;
  budget?: string;
  replay?: boolean;
  weeks?: string;
  whatIf?: string;
};

export async function orderCommand(options: OrderOptions) {
  if (options.replay === true) return (await import("#server/cli/commands/replay.ts")).replayCommand(options);
  const { whatIf } = options;
  if (whatIf !== undefined)
    return (await import("#server/cli/commands/what-if.ts")).whatIfCommand({ ...options, whatIf });
  return withWorld(options, async (world) => {
    const { venue } = world.facts.catalogue;
    const report = await orderFor(world, {
      at: options.at === undefined ? undefined : readMoment(options.at, venue, "--at"),
      supplier: options.supplier,
      budgetMinor:
        options.budget === undefined
          ? undefined
          : readMoneyMinor(options.budget, currencyDigits(venue.currency), "--budget"),
    });
    return orderView(report, venue.currency);
  });
}

/** The order as it is read out: a table a supplier, each line with its reason. */
export function orderView(report: OrderReport, currency: string): Report {
  const digits = currencyDigits(currency);
  return {
    json: report,
    head: [`Order as of ${report.at}`],
    sections: [
      ...report.suppliers.map((supplier) =>
        section({
          title: supplierTitle(supplier),
          columns: [
            { head: "supplier", cell: () => supplier.supplier },
            { head: "item", cell: (row) => row.item },
            { head: "order", cell: (row) => row.quantity, digits: 0 },
            { head: "of", cell: (row) => `${row.of} (${row.pack})` },
            { head: "on hand", cell: (row) => row.onHand, digits: 0 },
            { head: "on order", cell: (row) => row.onOrder, digits: 0 },
            { head: "par", cell: (row) => row.par, digits: 0 },
            { head: "use", cell: (row) => row.expectedUse, digits: 0 },
            { head: "unit", cell: (row) => row.base },
            { head: currency, cell: (row) => row.cost, digits },
            { head: "why", cell: (row) => row.why },
          ],
          rows: supplier.lines,
          empty: "Nothing to order.",
          notes: [
            `Total ${numberText(supplier.total, digits)} ${currency}${supplier.minimumMet ? "" : "; below the supplier's minimum"}${supplier.deposits === 0 ? "" : `; ${numberText(supplier.deposits, digits)} ${currency} deposit on top`}.`,
          ],
        }),
      ),
      ...apart(
        "Used, but no pack names a supplier",
        report.noSupplier.map(({ item }) => item),
      ),
      ...apart("Used, but never counted: nobody knows what there is", report.notCounted),
      ...apart(
        "Ordered and late",
        report.late.map(
          ({ item, supplier, order, ordered, received, daysLate }) =>
            `${item}, ${supplier} ${order}: ${numberText(ordered - received, 0)} of ${numberText(ordered, 0)} to come, ${daysLate} ${daysLate === 1 ? "day" : "days"} late`,
        ),
      ),
    ],
  };
}

function supplierTitle({
  supplier,
  orderBy,
  arrives,
  coversUntil,
}: OrderReport["suppliers"][number]): string {
  if (orderBy === null) return `${supplier}: no order days are known, so no arrival can be reckoned`;
  return `${supplier}: order by ${orderBy}, arrives ${arrives ?? "–"}, has to last until ${coversUntil ?? "–"}`;
}

function apart(title: string, items: readonly string[]) {
  if (items.length === 0) return [];
  return [section({ title, columns: [{ head: "item", cell: (row: string) => row }], rows: items })];
}
