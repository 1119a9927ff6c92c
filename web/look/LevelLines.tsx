import { LevelLine } from "../parts/LevelLine.tsx";
import { say } from "../texts/say.ts";

const EXAMPLES = [
  { text: "look.abovePar", onHand: 4200, sd: 60, par: 3500, expectedUse: 1400 },
  { text: "look.belowPar", onHand: 1400, sd: 260, par: 3500, expectedUse: 900 },
  { text: "look.runsOut", onHand: 700, sd: 40, par: 2100, expectedUse: 1100 },
  { text: "look.onOrder", onHand: 1400, sd: 60, par: 4200, expectedUse: 1000, onOrder: 2100 },
  { text: "look.noPar", onHand: 1800, sd: null, par: null, expectedUse: null },
  { text: "look.noneLeft", onHand: 0, sd: null, par: 2100, expectedUse: 600 },
] as const;

/** The level line in the states a bar's stock can be in. */
export function LevelLines() {
  return (
    <section>
      <h2>{say("look.level")}</h2>
      <p>{say("look.levelText")}</p>
      <ul className="look-levels">
        {EXAMPLES.map(({ text, ...stock }) => (
          <li key={text}>
            <LevelLine {...stock} base="ml" />
            {say(text)}
          </li>
        ))}
      </ul>
    </section>
  );
}
