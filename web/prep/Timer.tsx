import { useEffect, useState } from "react";
import { Button } from "../parts/Button.tsx";

/** Counts down in the page; it says aloud to screen readers, and in the title, when it is over. */
export function Timer({ minutes, hours }: { minutes: number | null; hours: number | null }) {
  const [endsAt, setEndsAt] = useState<number | null>(null);
  const [now, setNow] = useState(Date.now());
  useEffect(() => {
    if (endsAt === null) return;
    const tick = setInterval(() => setNow(Date.now()), 500);
    return () => clearInterval(tick);
  }, [endsAt]);
  const start = (length: number) => {
    setNow(Date.now());
    setEndsAt(Date.now() + length * 60_000);
  };
  const leftS = endsAt === null ? null : Math.ceil((endsAt - now) / 1000);
  const choices = [
    ...(minutes === null || minutes === 0 ? [] : [{ label: `Work, ${minutes} min`, length: minutes }]),
    ...(hours === null || hours === 0 ? [] : [{ label: `Standing, ${hours} h`, length: hours * 60 }]),
    { label: "5 min", length: 5 },
    { label: "1 min", length: 1 },
  ];
  return (
    <section className="timer" aria-label="Timer">
      {leftS === null ? (
        <>
          <span>Timer</span>
          {choices.map(({ label, length }) => (
            <Button key={label} className="wet-key" onClick={() => start(length)}>
              {label}
            </Button>
          ))}
        </>
      ) : (
        <>
          <span className="timer-left" role="timer">
            {clock(Math.max(0, leftS))}
          </span>
          <span role="status">{leftS <= 0 ? "Time is up." : ""}</span>
          <Button className="wet-key" onClick={() => setEndsAt(null)}>
            {leftS <= 0 ? "Done" : "Stop"}
          </Button>
        </>
      )}
    </section>
  );
}

function clock(seconds: number): string {
  const two = (value: number) => String(value).padStart(2, "0");
  const hours = Math.floor(seconds / 3600);
  const rest = `${two(Math.floor((seconds % 3600) / 60))}:${two(seconds % 60)}`;
  return hours === 0 ? rest : `${hours}:${rest}`;
}
