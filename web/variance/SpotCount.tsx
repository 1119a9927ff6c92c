import { Link } from "@tanstack/react-router";
import type { VarianceAnswer } from "../answers.ts";
import { listWords, plural } from "../format.ts";
import { Money } from "../parts/Money.tsx";

/** The few items worth counting tonight, and how long that takes. */
export function SpotCount({ spotCount: { items, minutes } }: { spotCount: VarianceAnswer["spotCount"] }) {
  if (items.length === 0) return null;
  const names = items.map(({ item }) => item).join(",");
  return (
    <section>
      <h2>Worth counting tonight</h2>
      <p>
        {plural(items.length, "item")}, about {plural(minutes, "minute")}. A short count on any night splits
        the week: it tells what goes on from what is over.{" "}
        <Link to="/count" search={{ items: names }}>
          Count {items.length === 1 ? "it" : `these ${items.length}`}
        </Link>
        .
      </p>
      <ul className="drifts">
        {items.map(({ item, areas, money, why }) => (
          <li key={item}>
            <Link to="/variance/$item" params={{ item }}>
              {item}
            </Link>
            <span>
              {why} {areas.length === 0 ? "" : `Stands in ${listWords(areas)}.`}
            </span>
            <Money amount={money} />
          </li>
        ))}
      </ul>
    </section>
  );
}
