import { readSpecText } from "#engine/specs/text/read.ts";
import { BUDGETS } from "#tests/bench/budgets.ts";

const LINES = [
  "60 ml gin",
  "Gin – 60 ml (2 oz)",
  "2-3 dashes bitters",
  "Soda water, to top",
  "1 dash salt and pepper",
  "4 cl Gin",
  "2 Spritzer Bitter",
  "mit Soda auffüllen",
];
const COUNT = 10_000;
const ROUNDS = 5;

/** `npm run bench -- spec`: what reading 10 000 lines of recipe text takes of the processor, in English and in German. */
export function benchSpecText(): void {
  const text = Array.from({ length: COUNT }, (_, at) => LINES[at % LINES.length]).join("\n");
  const tookMs = Array.from({ length: ROUNDS }, () => {
    const started = process.cpuUsage();
    readSpecText(text);
    const { user, system } = process.cpuUsage(started);
    return (user + system) / 1000;
  }).sort((a, b) => a - b);
  const medianMs = tookMs[Math.floor(ROUNDS / 2)] ?? Number.NaN;
  process.stdout.write(
    `${COUNT} lines of recipe text: ${medianMs.toFixed(0)} ms of processor (budget ${BUDGETS.specTextMostMs})\n`,
  );
  process.exitCode = medianMs <= BUDGETS.specTextMostMs ? 0 : 1;
}
