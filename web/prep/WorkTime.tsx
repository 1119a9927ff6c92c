import { readAmount } from "#engine/measure/amount.ts";
import { formatNumber, listWords } from "../format.ts";
import { Field } from "../parts/Field.tsx";
import { useDeviceSetting } from "../parts/use-device-setting.ts";
import { say, sayWith } from "../texts/say.ts";
import type { PrepReport } from "./prep-queries.ts";

/** Hands-on time of the list against the minutes there are; those are kept on the device. */
export function WorkTime({ time }: { time: PrepReport["activeMinutes"] }) {
  const [typed, setTyped] = useDeviceSetting("prep-minutes", "");
  if (time.total === 0) return null;
  const available = readAmount(typed, { decimalComma: true });
  const work = <strong>{say("prep.work", { time: hoursText(time.today) })}</strong>;
  return (
    <div className="work-time">
      <p>
        {time.canWait === 0
          ? sayWith("prep.workToday", { work })
          : sayWith("prep.workTodayAndLater", { work, later: hoursText(time.canWait) })}{" "}
        {available === undefined || available <= 0 ? "" : roomText(time, available)}
        {time.notKnown.length === 0 ? null : (
          <span className="soft"> {say("prep.notTimed", { preps: listWords(time.notKnown) })}</span>
        )}
      </p>
      <Field
        label={say("prep.minutes")}
        inputMode="decimal"
        className="no-print"
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
      />
    </div>
  );
}

function roomText({ today, total }: PrepReport["activeMinutes"], available: number): string {
  if (today > available) return say("prep.workTooMuch", { time: hoursText(today - available) });
  return say(total <= available ? "prep.workFits" : "prep.workLeave");
}

/** 45 → "45 min"; 155 → "2 h 35 min". */
export function hoursText(minutes: number): string {
  const whole = Math.round(minutes);
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  if (hours === 0) return `${formatNumber(rest)} min`;
  return rest === 0 ? `${formatNumber(hours)} h` : `${formatNumber(hours)} h ${formatNumber(rest)} min`;
}
