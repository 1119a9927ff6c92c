import type { Week } from "../answers.ts";
import { formatMoment } from "../format.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";

type Warning = Week["warnings"][number];

/** What is wrong with the machine that keeps the book; nothing is drawn while all is well. */
export function Warnings({ warnings }: { warnings: readonly Warning[] }) {
  const venue = useVenue();
  const when = (at: string) => formatMoment(at, venue);
  if (warnings.length === 0) return null;
  return (
    <section className="warnings" aria-label={say("week.warnings")}>
      {warnings.map((warning) => (
        <p key={warning.kind}>{warningWords(warning, when)}</p>
      ))}
    </section>
  );
}

function warningWords(warning: Warning, when: (at: string) => string): string {
  if (warning.kind === "clock-set-back") {
    const { clock, lastActAt } = warning;
    return say("week.clockSetBack", { clock: when(clock), lastActAt: when(lastActAt) });
  }
  const { problem, since, lastBackupAt } = warning;
  return lastBackupAt === null
    ? say("week.noBackupYet", { problem, since: when(since) })
    : say("week.backupFailed", { problem, since: when(since), lastBackupAt: when(lastBackupAt) });
}
