import { readContainers, withLevel } from "./entry.ts";

type Props = { typed: string; onType: (typed: string) => void };

const TENTHS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

/** One row of tenths for open containers: a press sets the last one's level, "another" begins the next. */
export function OpenLevels({ typed, onType }: Props) {
  const { parts } = readContainers(typed) ?? { parts: [] };
  const isWaiting = typed.endsWith(".");
  const current = isWaiting ? undefined : parts.at(-1);
  const others = isWaiting ? parts : parts.slice(0, -1);
  return (
    <fieldset className="levels">
      <legend>
        {others.length === 0
          ? "Open, in tenths"
          : `Open: ${others.map((part) => `${Math.round(part * 10)}/10`).join(", ")} and`}
      </legend>
      {TENTHS.map((tenths) => (
        <button
          key={tenths}
          type="button"
          className="level"
          aria-pressed={current === tenths / 10}
          aria-label={`Open at ${tenths} tenths`}
          onPointerDown={(event) => event.preventDefault()}
          onClick={() => onType(withLevel(typed, tenths))}
        >
          {tenths}
        </button>
      ))}
      <button
        type="button"
        className="level-more"
        disabled={current === undefined}
        onClick={() => onType(`${typed}.`)}
      >
        another open one
      </button>
    </fieldset>
  );
}
