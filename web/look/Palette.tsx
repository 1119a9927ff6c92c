import { say } from "../texts/say.ts";

const COLOURS = [
  ["paper", "look.paper"],
  ["leaf", "look.leaf"],
  ["leaf-pressed", "look.leafPressed"],
  ["ink", "look.ink"],
  ["ink-soft", "look.inkSoft"],
  ["rule", "look.rule"],
  ["rule-strong", "look.ruleStrong"],
  ["brass", "look.brass"],
  ["brass-fill", "look.brassFill"],
  ["brass-wash", "look.brassWash"],
  ["brass-solid", "look.brassSolid"],
  ["stock", "look.stock"],
  ["stock-band", "look.stockBand"],
  ["focus", "look.focus"],
] as const;

export function Palette() {
  return (
    <section>
      <h2>{say("look.palette")}</h2>
      <ul className="look-palette">
        {COLOURS.map(([name, use]) => (
          <li key={name}>
            <span className="look-colour" style={{ background: `var(--${name})` }} />
            <code>--{name}</code>
            <span className="small soft">{say(use)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
