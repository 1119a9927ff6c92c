import { formatDate, formatNumber, formatShare, plural } from "../format.ts";
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
        <Figure label="Lines read" value={formatNumber(lines)} />
        <Figure label="New" value={formatNumber(fresh)} isStrong />
        <Figure label="Known before" value={formatNumber(known)} />
        {changed === 0 ? null : <Figure label="Changed" value={formatNumber(changed)} />}
        <Figure label="Refused" value={formatNumber(refused.length)} />
        <Figure label="Business days" value={daysWords(daysTouched)} />
        {lines === 0 ? null : (
          <Figure
            label="Known to the book"
            value={`${formatShare(coverage.quantity)} of what was sold, ${formatShare(coverage.money)} of the money`}
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
          <h3>
            {plural(refused.length, "row")} {isLook ? "cannot" : "could not"} be read
          </h3>
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
        <p>
          {isLook ? "Sales would still be missing of " : "Sales are missing of "}
          {datesWords(daysMissing)}, between days that have some.
        </p>
      )}
      {daysUnlike.length === 0 ? null : (
        <div>
          <p>Days unlike themselves; part of an export, or a party?</p>
          <ul>
            {daysUnlike.slice(0, DATES_SHOWN).map(({ date, quantity, usual }) => (
              <li key={date}>
                {formatDate(date)}: {formatNumber(quantity)} sold, usually {formatNumber(usual)}
              </li>
            ))}
            {daysUnlike.length > DATES_SHOWN ? <li>and {daysUnlike.length - DATES_SHOWN} more.</li> : null}
          </ul>
        </div>
      )}
    </>
  );
}

function datesWords(dates: readonly string[]): string {
  const shown = dates.slice(0, DATES_SHOWN).map(formatDate).join("; ");
  return dates.length > DATES_SHOWN ? `${shown} and ${dates.length - DATES_SHOWN} more` : shown;
}

function daysWords(days: readonly string[]): string {
  const [first] = days;
  const last = days.at(-1);
  if (first === undefined || last === undefined) return "none";
  return days.length === 1
    ? formatDate(first)
    : `${formatNumber(days.length)}: ${formatDate(first)} to ${formatDate(last)}`;
}

/** On a screen there are buttons for what the command line has options for. */
function withoutOptions(notice: string): string {
  return notice
    .replace(/ and read the file in with --add\b/, " and read the file in again, adding its sums")
    .replace(/ with --undo\b/, "");
}
