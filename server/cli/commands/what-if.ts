import { readFileSync } from "node:fs";
import { z } from "zod";
import { currencyDigits } from "#engine/currency.ts";
import { Change } from "#engine/demand/changed-book.ts";
import { type Report, section } from "#server/cli/output.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { withWorld } from "#server/cli/session.ts";
import { InputError } from "#server/input-error.ts";
import { type WhatIfReport, whatIfFor } from "#server/reports/what-if.ts";

const DAYS = 14;

/** `ullage order --what-if FILE`: what the changes listed in a JSON file would do to the next two weeks. */
export async function whatIfCommand(options: CommonOptions & { whatIf: string }) {
  const changes = readChanges(options.whatIf);
  return withWorld(options, async (world) => whatIfView(await whatIfFor(world, { changes, days: DAYS })));
}

function readChanges(file: string): Change[] {
  const read = z.array(Change).min(1).safeParse(jsonOf(file));
  if (read.success) return read.data;
  const [first] = read.error.issues;
  const place = first?.path.length ? `, ${first.path.join(".")}` : "";
  throw new InputError(
    `${file}${place}: ${first?.message ?? "no changes"}. It holds a list such as [{"kind": "closed", "date": "2026-11-30"}]; the kinds are party, closed, price and menu.`,
  );
}

function jsonOf(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch (error) {
    throw new InputError(`${file}: ${error instanceof Error ? error.message : "cannot be read as JSON"}`);
  }
}

function whatIfView(report: WhatIfReport): Report {
  const { totals, currency } = report;
  const digits = currencyDigits(currency);
  const pair = (digits: number) => [
    { head: "now", cell: (row: { before: number }) => row.before, digits },
    { head: "then", cell: (row: { after: number }) => row.after, digits },
  ];
  return {
    json: report,
    head: [`From ${report.from} to ${report.to}, as it stands and with the changes. Nothing is stored.`],
    sections: [
      section({
        columns: [{ head: "over these days", cell: (row) => row.name }, ...pair(digits)],
        rows: [
          { name: "serves", ...totals.serves },
          { name: `sales, ${currency}`, ...totals.sales },
          { name: `cost of what is used, ${currency}`, ...totals.cost },
          { name: `left over the drinks' cost, ${currency}`, ...totals.contribution },
          { name: `the next orders, ${currency}`, ...totals.order },
        ],
      }),
      section({
        title: "Order lines that change",
        columns: [
          { head: "supplier", cell: (row) => row.supplier },
          { head: "item", cell: (row) => row.item },
          { head: "of", cell: (row) => `${row.of} (${row.pack})` },
          ...pair(0),
        ],
        rows: report.order,
        empty: "The next orders stay as they are.",
      }),
      section({
        title: "Items that change",
        columns: [
          { head: "item", cell: (row) => row.item },
          ...pair(0),
          { head: "unit", cell: (row) => row.base },
          { head: `${currency} more`, cell: (row) => row.moneyMore, digits },
          { head: "order by", cell: (row) => row.orderBy ?? "" },
        ],
        rows: report.items,
        empty: "Nothing else is used than before.",
      }),
    ],
  };
}
