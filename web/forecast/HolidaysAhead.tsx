import type { HolidayAhead } from "#engine/demand/forecast.ts";
import { formatDate } from "../format.ts";
import { say } from "../texts/say.ts";
import { holidayText } from "./holiday-text.ts";

/** The holidays and eves of the days to come, and what is expected of each. */
export function HolidaysAhead({ holidays }: { holidays: readonly HolidayAhead[] }) {
  if (holidays.length === 0) return null;
  return (
    <section>
      <h2>{say("forecast.holidays")}</h2>
      <ul>
        {holidays.map((day) => (
          <li key={day.date}>
            {formatDate(day.date)} · {holidayText(day)}.
          </li>
        ))}
      </ul>
    </section>
  );
}
