import { formatShare } from "../figures.ts";
import { formatDate, formatNumber } from "../format.ts";
import { say } from "../texts/say.ts";
import { RefusedRows } from "./RefusedRows.tsx";
import type { SalesReport } from "./sales-queries.ts";

type Props = {
  report: Omit<SalesReport, "unmapped" | "importId">;
  /** Whether it is what an import would do, or what it did. */
  isLook?: boolean;
};

/** An import in figures: what became of its lines, which days it has, what is missing or unlike itself, what was refused. */
export function Explained({ report, isLook = false }: Props) {
  const { lines, new: fresh, known, changed, refused, coverage, notices, daysTouched } = report;
  return (
    <div className="explained">
      <dl className="figures">
        <Figure label={say("sales.linesRead")} value={formatNumber(lines)} />
        <Figure label={say("sales.new")} value={formatNumber(fresh)} isStrong />
        <Figure label={say("sales.knownBefore")} value={formatNumber(known)} />
        {changed === 0 ? null : <Figure label={say("sales.changed")} value={formatNumber(changed)} />}
        <Figure label={say("sales.refused")} value={formatNumber(refused.length)} />
        <Figure label={say("sales.businessDays")} value={daysWords(daysTouched)} />
        {lines === 0 ? null : (
          <Figure
            label={say("sales.knownToBook")}
            value={say("sales.knownShares", {
              quantity: formatShare(coverage.quantity),
              money: formatShare(coverage.money),
            })}
          />
        )}
      </dl>
      {notices.length === 0 ? null : (
        <ul className="notices">
          {notices.map((notice) => (
            <li key={notice}>{withoutOptions(notice)}</li>
          ))}
        </ul>
      )}
      <Days report={report} isLook={isLook} />
      {refused.length === 0 ? null : (
        <div className="refused">
          <h3>{say(isLook ? "sales.rowsUnreadable" : "sales.rowsUnread", { count: refused.length })}</h3>
          <RefusedRows refused={refused} />
        </div>
      )}
    </div>
  );
}

function Figure({ label, value, isStrong = false }: { label: string; value: string; isStrong?: boolean }) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>{isStrong ? <strong>{value}</strong> : value}</dd>
    </div>
  );
}

const DATES_SHOWN = 10;

function Days({ report, isLook }: Required<Props>) {
  const { daysMissing, daysUnlike } = report;
  return (
    <>
      {daysMissing.length === 0 ? null : (
        <p>{say(isLook ? "sales.missingStill" : "sales.missing", { dates: datesWords(daysMissing) })}</p>
      )}
      {daysUnlike.length === 0 ? null : (
        <div>
          <p>{say("sales.unlike")}</p>
          <ul>
            {daysUnlike.slice(0, DATES_SHOWN).map(({ date, quantity, usual }) => (
              <li key={date}>
                {say("sales.unlikeDay", {
                  date: formatDate(date),
                  quantity: formatNumber(quantity),
                  usual: formatNumber(usual),
                })}
              </li>
            ))}
            {daysUnlike.length > DATES_SHOWN ? (
              <li>{say("sales.andMore", { count: daysUnlike.length - DATES_SHOWN })}</li>
            ) : null}
          </ul>
        </div>
      )}
    </>
  );
}

function datesWords(dates: readonly string[]): string {
  const shown = dates.slice(0, DATES_SHOWN).map(formatDate).join("; ");
  if (dates.length <= DATES_SHOWN) return shown;
  return say("sales.datesAndMore", { dates: shown, count: dates.length - DATES_SHOWN });
}

function daysWords(days: readonly string[]): string {
  const [first] = days;
  const last = days.at(-1);
  if (first === undefined || last === undefined) return say("sales.noDays");
  return days.length === 1
    ? formatDate(first)
    : say("sales.daysFromTo", {
        count: formatNumber(days.length),
        from: formatDate(first),
        to: formatDate(last),
      });
}

/** On a screen there are buttons for what the command line has options for. */
function withoutOptions(notice: string): string {
  return notice
    .replace(/ and read the file in with --add\b/, " and read the file in again, adding its sums")
    .replace(/ with --undo\b/, "");
}
