import { Link } from "@tanstack/react-router";
import type { VarianceAnswer } from "../answers.ts";
import { listWords } from "../format.ts";
import { Money } from "../parts/Money.tsx";
import { say, sayWith } from "../texts/say.ts";

/** The few items worth counting tonight, and how long that takes. */
export function SpotCount({ spotCount: { items, minutes } }: { spotCount: VarianceAnswer["spotCount"] }) {
  if (items.length === 0) return null;
  const names = items.map(({ item }) => item).join(",");
  return (
    <section>
      <h2>{say("variance.worthCounting")}</h2>
      <p>
        {sayWith("variance.spotCount", {
          count: items.length,
          minutes,
          link: (
            <Link to="/count" search={{ items: names }}>
              {say("variance.countThese", { count: items.length })}
            </Link>
          ),
        })}
      </p>
      <ul className="drifts">
        {items.map(({ item, areas, money, why }) => (
          <li key={item}>
            <Link to="/variance/$item" params={{ item }}>
              {item}
            </Link>
            <span>
              {why} {areas.length === 0 ? "" : say("variance.standsIn", { areas: listWords(areas) })}
            </span>
            <Money amount={money} />
          </li>
        ))}
      </ul>
    </section>
  );
}
