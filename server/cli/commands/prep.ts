import { weekdayOf } from "#engine/time.ts";
import { type Report, section } from "#server/cli/output.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { withWorld } from "#server/cli/session.ts";
import { numberText } from "#server/cli/table.ts";
import { readCount, readDate, readFigure } from "#server/reading.ts";
import { type PrepReport, prepFor } from "#server/reports/prep.ts";

export async function prepCommand(
  options: CommonOptions & { for?: string; days?: string; certainty?: string },
) {
  const choice = {
    date: options.for === undefined ? undefined : readDate(options.for, "--for"),
    days: options.days === undefined ? undefined : readCount(options.days, "--days"),
    certainty:
      options.certainty === undefined
        ? undefined
        : readFigure(options.certainty, "--certainty", { low: 0.5, high: 0.999 }),
  };
  return withWorld(options, async (world) => prepView(await prepFor(world, choice)));
}

/** The prep list as the cook reads it: what to make in order, what can wait, what to cut and fetch, what to throw out. */
export function prepView(plan: PrepReport): Report {
  return {
    json: plan,
    head: [
      `Prep for ${weekdayOf(plan.date)} ${plan.date}`,
      "Dates and temperatures: follow your local food code; what a label or a date says here is no promise of safety.",
    ],
    csv: batchesSection(plan.batches),
    sections: [
      batchesSection(
        plan.batches.filter(({ canWait }) => !canWait),
        {
          title: "Make today",
          empty: "Nothing has to be made today: what is on hand lasts.",
          notes: [timeText(plan)],
        },
      ),
      batchesSection(
        plan.batches.filter(({ canWait }) => canWait),
        { title: "Can wait until tomorrow", empty: "Nothing." },
      ),
      cutsSection(plan.cuts),
      section({
        title: "To fetch, for all of it",
        columns: [
          { head: "item", cell: (row) => row.item },
          { head: "amount", cell: (row) => row.amount, digits: 0 },
          { head: "unit", cell: (row) => row.base },
          { head: "weight, g", cell: (row) => row.weightG, digits: 0 },
          { head: "on hand", cell: (row) => row.onHand, digits: 0 },
          { head: "short", cell: (row) => (row.short > 0 ? row.short : null), digits: 0 },
        ],
        rows: plan.pickList,
        empty: "Nothing.",
      }),
      section({
        title: "Past its date: throw out and record as a loss",
        columns: [
          { head: "prep", cell: (row) => row.prep },
          { head: "amount", cell: (row) => row.amount, digits: 0 },
          { head: "unit", cell: (row) => row.unit },
          { head: "made", cell: (row) => row.madeAt },
        ],
        rows: plan.discard,
        empty: "Nothing.",
      }),
    ],
  };
}

function batchesSection(
  batches: PrepReport["batches"],
  words: { title?: string; empty?: string; notes?: string[] } = {},
) {
  return section({
    empty: "Nothing to make: what is on hand lasts.",
    ...words,
    columns: [
      { head: "#", cell: (row) => row.order, digits: 0 },
      { head: "prep", cell: (row) => row.prep },
      { head: "make", cell: (row) => row.make, digits: 0 },
      { head: "unit", cell: (row) => row.unit },
      { head: "vessels", cell: (row) => row.batches, digits: 0 },
      { head: "on hand", cell: (row) => row.onHand, digits: 0 },
      { head: "use by", cell: (row) => row.useBy },
      { head: "°Bx", cell: (row) => row.brix, digits: 1 },
      {
        head: "from",
        cell: (row) =>
          row.inputs
            .map(({ item, amount, base }) => `${numberText(amount, base === "each" ? 1 : 0)} ${base} ${item}`)
            .join(", "),
      },
      {
        head: "short of",
        cell: (row) => row.missing.map(({ item }) => item).join(", "),
        style: () => "yellow" as const,
      },
    ],
    rows: batches,
  });
}

function cutsSection(cuts: PrepReport["cuts"]) {
  return section({
    title: "Fruit to cut",
    columns: [
      { head: "fruit", cell: (row) => row.source },
      { head: "pieces", cell: (row) => row.likely.pieces, digits: 0 },
      { head: "may take", cell: (row) => `${row.likely.piecesLow}–${row.likely.piecesHigh}` },
      {
        head: "gives",
        cell: (row) =>
          row.gives.map(({ item, amount, unit }) => `${numberText(amount, 0)} ${unit} ${item}`).join(", "),
      },
      {
        head: "left over",
        cell: (row) =>
          row.spare
            .filter(({ share }) => share > 0.05)
            .map(({ part, share }) => `${part} of ${numberText(share, 1)}`)
            .join(", "),
      },
    ],
    rows: cuts,
    empty: "No fruit is needed.",
  });
}

function timeText({ activeMinutes: { today, canWait, notKnown } }: PrepReport): string {
  const known = `Work: ${numberText(today, 0)} min today, ${numberText(canWait, 0)} min can wait.`;
  return notKnown.length === 0 ? known : `${known} No time is on record for ${notKnown.join(", ")}.`;
}
