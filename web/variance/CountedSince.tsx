import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { countsQuery } from "../queries.ts";
import { say, sayWith } from "../texts/say.ts";

/** Says which spot count came after the counts that are compared, as it ends no week by itself. */
export function CountedSince({ closing }: { closing: string }) {
  const { data: counts = [] } = useQuery(countsQuery);
  const last = counts[0];
  if (last === undefined || !last.isSpot || last.name === closing) return null;
  return (
    <p>
      {sayWith("variance.spotSince", {
        name: last.name,
        items: last.items,
        link: (
          <Link to="/variance" search={{ count: last.name }}>
            {say("variance.compareSpot", { items: last.items })}
          </Link>
        ),
      })}
    </p>
  );
}
