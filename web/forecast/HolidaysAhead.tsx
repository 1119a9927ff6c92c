import type { HolidayAhead } from "#engine/demand/forecast.ts";
import { holidayWords } from "#engine/demand/holiday-words.ts";
import { formatDate } from "../format.ts";

/** The holidays and eves of the days to come, and what is expected of each. */
export function HolidaysAhead({ holidays }: { holidays: readonly HolidayAhead[] }) {
  if (holidays.length === 0) return null;
  return (
    <section>
      <h2>Public holidays</h2>
      <ul>
        {holidays.map((day) => (
          <li key={day.date}>
            {formatDate(day.date)} · {holidayWords(day)}.
          </li>
        ))}
      </ul>
    </section>
  );
}
