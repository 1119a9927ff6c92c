import { OutOfRangeError } from "#engine/measure/range.ts";
import { spiritStrength } from "#engine/measure/spirit-density.ts";
import { brixFromDensity, brixFromGPerL, sucroseDensity } from "#engine/measure/sucrose.ts";
import { brixFromGravity, readWithAcid } from "#engine/measure/sugar-reading.ts";
import { printReport, type Report, section } from "#server/cli/output.ts";
import { type CommonOptions, formatOf } from "#server/cli/program.ts";
import { InputError } from "#server/input-error.ts";
import { readFigure } from "#server/reading.ts";

type Options = CommonOptions & {
  gravity?: string;
  density?: string;
  sugar?: string;
  brix?: string;
  acid?: string;
  spirit?: string;
  celsius?: string;
};

/** What was read off a meter, as the figures a book is kept in; null where the reading does not tell. */
type Meaning = {
  reading: string;
  brix: number | null;
  /** Soluble solids and the sugar among them, in % of the weight. */
  solidsPct: number | null;
  sugarPct: number | null;
  densityGPerMl: number | null;
  abvPct: number | null;
};

/** Turns readings into °Brix, solids and strength; each that is given is one row. */
export async function meterCommand(options: Options): Promise<undefined> {
  const rows = meaningsOf(options);
  if (rows.length === 0) {
    throw new InputError("Give a reading, as --gravity 1.083; see: ullage meter --help.");
  }
  printReport(meterView(rows), formatOf(options));
  return undefined;
}

function meaningsOf(options: Options): Meaning[] {
  const temperatureC = figure(options.celsius, "--celsius", { low: -20, high: 80 }) ?? 20;
  const acidPct = figure(options.acid, "--acid", { low: 0, high: 25 }) ?? 0;
  const sg = figure(options.gravity, "--gravity", { low: 1, high: 1.44 });
  const density = figure(options.density, "--density", { low: 0.9, high: 1.5 });
  const gPerL = figure(options.sugar, "--sugar", { low: 0, high: 1300 });
  const brix = figure(options.brix, "--brix", { low: 0, high: 85 });
  const spirit = figure(options.spirit, "--spirit", { low: 0.7, high: 1.1 });
  if (acidPct > 0 && brix === undefined) throw new InputError("--acid goes with --brix.");
  try {
    return [
      ...(sg === undefined ? [] : [sweet(`gravity ${sg}`, brixFromGravity(sg), { acidPct: 0 })]),
      ...(density === undefined
        ? []
        : [
            sweet(`density ${density}`, brixFromDensity({ densityGPerMl: density, temperatureC }), {
              acidPct: 0,
            }),
          ]),
      ...(gPerL === undefined
        ? []
        : [sweet(`${gPerL} g in a litre`, brixFromGPerL({ gPerL, temperatureC }), { acidPct: 0 })]),
      ...(brix === undefined ? [] : [sweet(`${brix} °Bx`, brix, { acidPct })]),
      ...(spirit === undefined
        ? []
        : [strong(`spirit of ${spirit}`, { densityGPerMl: spirit, temperatureC })]),
    ];
  } catch (error) {
    if (error instanceof OutOfRangeError) throw new InputError(error.message);
    throw error;
  }
}

function figure(text: string | undefined, name: string, range: { low: number; high: number }) {
  return text === undefined ? undefined : readFigure(text, name, range);
}

function sweet(reading: string, brix: number, { acidPct }: { acidPct: number }): Meaning {
  const { solidsPct, sugarPct } = readWithAcid({ brix, acidPct });
  const densityGPerMl = sucroseDensity({ brix: Math.min(solidsPct, 85) });
  return { reading, brix, solidsPct, sugarPct, densityGPerMl, abvPct: null };
}

function strong(reading: string, measured: { densityGPerMl: number; temperatureC: number }): Meaning {
  const abvPct = spiritStrength(measured);
  return {
    reading,
    brix: null,
    solidsPct: null,
    sugarPct: null,
    densityGPerMl: measured.densityGPerMl,
    abvPct,
  };
}

function meterView(rows: readonly Meaning[]): Report {
  return {
    json: rows,
    sections: [
      section({
        columns: [
          { head: "reading", cell: (row) => row.reading },
          { head: "°Bx", cell: (row) => row.brix, digits: 1 },
          { head: "solids %", cell: (row) => row.solidsPct, digits: 1 },
          { head: "sugar %", cell: (row) => row.sugarPct, digits: 1 },
          { head: "g/ml", cell: (row) => row.densityGPerMl, digits: 4 },
          { head: "% vol at 20 °C", cell: (row) => row.abvPct, digits: 1 },
        ],
        rows: [...rows],
      }),
    ],
  };
}
