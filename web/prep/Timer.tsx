import { Button } from "../parts/Button.tsx";
import { say } from "../texts/say.ts";
import { plainNumber } from "./amounts.ts";
import { startTimer } from "./timers.ts";

/** Keys that start a timer for a card: its own times, and short ones. */
export function Timer({
  prep,
  minutes,
  hours,
}: {
  prep: string;
  minutes: number | null;
  hours: number | null;
}) {
  const choices = [
    ...(minutes === null || minutes === 0
      ? []
      : [{ label: say("prep.timerWork", { minutes: plainNumber(minutes) }), length: minutes }]),
    ...(hours === null || hours === 0
      ? []
      : [{ label: say("prep.timerStanding", { hours: plainNumber(hours) }), length: hours * 60 }]),
    { label: "5 min", length: 5 },
    { label: "1 min", length: 1 },
  ];
  return (
    <section className="timer" aria-label={say("prep.timer")}>
      <span>{say("prep.timer")}</span>
      {choices.map(({ label, length }) => (
        <Button key={label} className="wet-key" onClick={() => startTimer(prep, length)}>
          {label}
        </Button>
      ))}
    </section>
  );
}
