import { LevelLine } from "../parts/LevelLine.tsx";

const EXAMPLES = [
  { words: "Above par, counted closely", onHand: 4200, sd: 60, par: 3500, expectedUse: 1400 },
  { words: "Below par, a wide count", onHand: 1400, sd: 260, par: 3500, expectedUse: 900 },
  { words: "Will run out: all of it is dots", onHand: 700, sd: 40, par: 2100, expectedUse: 1100 },
  { words: "Some on order", onHand: 1400, sd: 60, par: 4200, expectedUse: 1000, onOrder: 2100 },
  { words: "No par, nothing expected", onHand: 1800, sd: null, par: null, expectedUse: null },
  { words: "None left", onHand: 0, sd: null, par: 2100, expectedUse: 600 },
];

/** The level line in the states a bar's stock can be in. */
export function LevelLines() {
  return (
    <section>
      <h2>The level line</h2>
      <p>
        As long as what is on hand, with its ± at the end. Dots are likely used over the days to cover, the
        dashes are on order, the brass mark is par.
      </p>
      <ul className="look-levels">
        {EXAMPLES.map(({ words, ...stock }) => (
          <li key={words}>
            <LevelLine {...stock} base="ml" />
            {words}
          </li>
        ))}
      </ul>
    </section>
  );
}
