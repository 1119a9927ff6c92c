import { memo, type PointerEvent, useRef } from "react";
import { say } from "../texts/say.ts";
import { readContainers } from "./entry.ts";
import { tenthsWords } from "./found-words.ts";

type Props = { typed: string; onLevel: (tenths: number) => void; onAnother: () => void };

const TENTHS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

/** Long enough not to happen to a thumb in haste, short enough not to be waited for. */
const HOLD_MS = 400;

/** One row of tenths for open containers: a press sets the last one's level, held half a tenth more; "another" begins the next. */
export const OpenLevels = memo(function OpenLevels({ typed, onLevel, onAnother }: Props) {
  const { parts } = readContainers(typed) ?? { parts: [] };
  const isWaiting = typed.endsWith(".");
  const current = isWaiting ? undefined : parts.at(-1);
  const others = isWaiting ? parts : parts.slice(0, -1);
  return (
    <fieldset className="levels">
      <legend>
        {others.length === 0
          ? say("count.open")
          : say("count.openAnd", { others: others.map((part) => `${tenthsWords(part)}/10`).join(", ") })}
      </legend>
      {TENTHS.map((tenths) => (
        <Level key={tenths} tenths={tenths} current={current} onSet={onLevel} />
      ))}
      <button type="button" className="level-more" disabled={current === undefined} onClick={onAnother}>
        {say("count.anotherOpen")}
      </button>
    </fieldset>
  );
});

type LevelProps = { tenths: number; current: number | undefined; onSet: (tenths: number) => void };

function Level({ tenths, current, onSet }: LevelProps) {
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const wasHeld = useRef(false);
  const half = tenths + 0.5;
  const isHalf = current === half / 10;
  const press = (event: PointerEvent) => {
    event.preventDefault();
    wasHeld.current = false;
    clearTimeout(timer.current);
    if (tenths === 10) return;
    timer.current = setTimeout(() => {
      wasHeld.current = true;
      if (!isHalf) onSet(half);
    }, HOLD_MS);
  };
  const release = () => clearTimeout(timer.current);
  return (
    <button
      type="button"
      className="level"
      aria-pressed={isHalf || current === tenths / 10}
      aria-label={say("count.openAt", { tenths: isHalf ? tenthsWords(current) : tenths })}
      onPointerDown={press}
      onPointerUp={release}
      onPointerLeave={release}
      onPointerCancel={release}
      onContextMenu={(event) => event.preventDefault()}
      onClick={() => {
        // The click that ends a hold has had its say.
        if (!wasHeld.current) onSet(tenths);
        wasHeld.current = false;
      }}
    >
      {isHalf ? tenthsWords(current) : tenths}
    </button>
  );
}
