import { useEffect, useRef, useState } from "react";
import { Button } from "../parts/Button.tsx";
import { say } from "../texts/say.ts";
import { soundSignal } from "./sound-signal.ts";
import { stopTimer, useTimers } from "./timers.ts";

/** Every timer that runs or is over, also those of other cards; what ends is said, sounded and put in the title. */
export function RunningTimers() {
  const timers = useTimers();
  const now = useSeconds(Object.keys(timers).length > 0);
  const over = Object.entries(timers).filter(([, endsAt]) => endsAt <= now);
  const names = over.map(([name]) => name).join(", ");
  const sounded = useRef("");
  useEffect(() => {
    if (names === "") return;
    const title = document.title;
    document.title = say("prep.timeUpFor", { names });
    if (sounded.current !== names) soundSignal();
    sounded.current = names;
    return () => {
      document.title = title;
    };
  }, [names]);
  if (Object.keys(timers).length === 0) return null;
  return (
    <ul className="running-timers no-print">
      {Object.entries(timers).map(([name, endsAt]) => (
        <li key={name} className={endsAt <= now ? "timer-over" : ""}>
          <span>{name}</span>
          <span className="timer-left" role="timer" aria-label={say("prep.timerOf", { name })}>
            {clock(Math.max(0, Math.ceil((endsAt - now) / 1000)))}
          </span>
          <span role="status">{endsAt <= now ? say("prep.timeUp") : ""}</span>
          <Button
            className="wet-key"
            aria-label={say("prep.timerStop", { name })}
            onClick={() => stopTimer(name)}
          >
            {say(endsAt <= now ? "prep.timerDone" : "prep.stop")}
          </Button>
        </li>
      ))}
    </ul>
  );
}

/** This moment in ms, anew twice a second while something waits for it. */
function useSeconds(isWanted: boolean): number {
  const [now, setNow] = useState(Date.now());
  useEffect(() => {
    if (!isWanted) return;
    setNow(Date.now());
    const tick = setInterval(() => setNow(Date.now()), 500);
    return () => clearInterval(tick);
  }, [isWanted]);
  return now;
}

function clock(seconds: number): string {
  const two = (value: number) => String(value).padStart(2, "0");
  const hours = Math.floor(seconds / 3600);
  const rest = `${two(Math.floor((seconds % 3600) / 60))}:${two(seconds % 60)}`;
  return hours === 0 ? rest : `${hours}:${rest}`;
}
