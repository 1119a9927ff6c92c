import { readAmount } from "#engine/measure/amount.ts";
import { formatNumber, listWords } from "../format.ts";
import { Field } from "../parts/Field.tsx";
import type { PrepReport } from "./prep-queries.ts";
import { useDeviceSetting } from "./use-device-setting.ts";

/** Hands-on time of the list against the minutes there are; those are kept on the device. */
export function WorkTime({ time }: { time: PrepReport["activeMinutes"] }) {
  const [typed, setTyped] = useDeviceSetting("prep-minutes", "");
  if (time.total === 0) return null;
  const available = readAmount(typed, { decimalComma: true });
  return (
    <div className="work-time">
      <p>
        <strong>{hoursText(time.today)} of work</strong> today
        {time.canWait === 0 ? "" : `, ${hoursText(time.canWait)} more can wait until tomorrow`}.{" "}
        {available === undefined || available <= 0 ? "" : roomText(time, available)}
        {time.notKnown.length === 0 ? null : (
          <span className="soft"> Not timed: {listWords(time.notKnown)}.</span>
        )}
      </p>
      <Field
        label="Minutes you have"
        inputMode="decimal"
        className="no-print"
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
      />
    </div>
  );
}

function roomText({ today, total }: PrepReport["activeMinutes"], available: number): string {
  if (today > available)
    return `That is ${hoursText(today - available)} more than you have: get help, or cut the list.`;
  return total <= available ? "There is time for all of it." : "Leave what can wait.";
}

/** 45 → "45 min"; 155 → "2 h 35 min". */
export function hoursText(minutes: number): string {
  const whole = Math.round(minutes);
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  if (hours === 0) return `${formatNumber(rest)} min`;
  return rest === 0 ? `${formatNumber(hours)} h` : `${formatNumber(hours)} h ${formatNumber(rest)} min`;
}
