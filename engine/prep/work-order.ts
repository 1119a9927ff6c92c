import type { BusinessDate } from "#engine/time.ts";

/** What decides when a batch is begun. */
export type Job = {
  prep: string;
  /** Preps it is made of; those not among the jobs are on hand already. */
  uses: readonly string[];
  standingHours: number;
  /** The first day on which stock on hand no longer lasts; null when it does. */
  neededOn: BusinessDate | null;
};

/**
 * The order of work: inputs before users; then what stands longest, counting what is built on it; then what is
 * needed first; then as listed. The uses of the jobs must not go round in a circle.
 *
 * Syrup (no standing), cordial of syrup (12 h), juice (none) → syrup, cordial, juice.
 */
export function workOrder(jobs: readonly Job[]): string[] {
  const waiting = [...jobs].sort(byUrgency(standingBehind(jobs)));
  const open = new Set(jobs.map(({ prep }) => prep));
  const order: string[] = [];
  while (waiting.length > 0) {
    const next = waiting.findIndex(({ uses }) => !uses.some((input) => open.has(input)));
    const [job] = waiting.splice(next, 1);
    if (next < 0 || job === undefined) throw new Error("Batches that wait for each other have no order.");
    order.push(job.prep);
    open.delete(job.prep);
  }
  return order;
}

/** The longest standing time that waits on each job: its own and that of every job built on it, end to end. */
function standingBehind(jobs: readonly Job[]): Map<string, number> {
  const hours = new Map<string, number>();
  const hoursOf = (job: Job): number => {
    const known = hours.get(job.prep);
    if (known !== undefined) return known;
    const after = jobs.filter(({ uses }) => uses.includes(job.prep)).map(hoursOf);
    const total = job.standingHours + Math.max(0, ...after);
    hours.set(job.prep, total);
    return total;
  };
  for (const job of jobs) hoursOf(job);
  return hours;
}

function byUrgency(hours: Map<string, number>) {
  return (a: Job, b: Job): number =>
    (hours.get(b.prep) ?? 0) - (hours.get(a.prep) ?? 0) ||
    compareText(a.neededOn ?? "9999", b.neededOn ?? "9999");
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
