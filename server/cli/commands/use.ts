import { type UseReport, useReport } from "#engine/sales/use-report.ts";
import { type Report, section } from "#server/cli/output.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { withWorld } from "#server/cli/session.ts";
import { InputError } from "#server/input-error.ts";
import { readDate } from "#server/reading.ts";

export async function useCommand(options: CommonOptions & { from?: string; to?: string; raw?: boolean }) {
  const { from: first, to: last } = options;
  if (first === undefined || last === undefined) {
    throw new InputError("Give the period: ullage use --from 2026-11-16 --to 2026-11-22");
  }
  const from = readDate(first, "--from");
  const to = readDate(last, "--to");
  if (from > to) throw new InputError(`--from ${from} is after --to ${to}; swap them.`);
  return withWorld(options, async (world) =>
    useView(
      useReport(world.facts, await world.salesBetween({ from, to }), { from, to, raw: options.raw ?? false }),
    ),
  );
}

function useView(report: UseReport): Report {
  const { from, to, items, unmapped, unmappedModifiers, coverage } = report;
  return {
    json: report,
    head: [`Expected use, ${from} to ${to}. ${(coverage * 100).toFixed(1)} % of what was sold is mapped.`],
    sections: [
      section({
        columns: [
          { head: "item", cell: (row) => row.item },
          { head: "expected", cell: (row) => row.expected, digits: 1 },
          { head: "±", cell: (row) => row.sd, digits: 1 },
          { head: "unit", cell: (row) => row.base },
        ],
        rows: items,
        empty: "Nothing was sold or made in these days.",
      }),
      ...(unmapped.length === 0
        ? []
        : [
            section({
              title: "Sold, but not known to the book",
              columns: [
                { head: "ring name", cell: (row) => row.ringName },
                { head: "quantity", cell: (row) => row.quantity, digits: 0 },
                { head: "net", cell: (row) => row.net, digits: 2 },
                {
                  head: "why",
                  cell: (row) =>
                    row.reason === "unknown" ? "no such drink or item" : "no spec on that day yet",
                },
              ],
              rows: unmapped,
            }),
          ]),
      ...(unmappedModifiers.length === 0
        ? []
        : [
            section({
              title: "Modifiers not known to the book (they changed nothing)",
              columns: [
                { head: "modifier", cell: (row) => row.modifier },
                { head: "quantity", cell: (row) => row.quantity, digits: 0 },
              ],
              rows: unmappedModifiers,
            }),
          ]),
    ],
  };
}
