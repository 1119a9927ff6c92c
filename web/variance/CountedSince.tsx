import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { countsQuery } from "../queries.ts";
import { say, sayWith } from "../texts/say.ts";

type Props = {
  closing: string;
  /** Whether one of the two counts was a spot count. */
  isOfFew: boolean;
  /** How many items both counts saw whole. */
  compared: number;
  /** On which screen it stands. */
  page: "/variance" | "/report";
};

/** What a spot count has to do with the comparison: it came later and ends no week, or it is one of the two, and of a few items. */
export function CountedSince({ closing, isOfFew, compared, page }: Props) {
  const { data: counts = [] } = useQuery(countsQuery);
  if (isOfFew || compared === 0) {
    return (
      <p className="of-few">
        {say("variance.ofFew", { compared })}{" "}
        {isOfFew ? (
          <Link to={page} className="no-print">
            {say("variance.toWhole")}
          </Link>
        ) : null}
      </p>
    );
  }
  const last = counts[0];
  if (last === undefined || !last.isSpot || last.name === closing) return null;
  return (
    <p className="of-few">
      {sayWith("variance.spotSince", {
        name: last.name,
        items: last.items,
        link: (
          <Link to={page} search={{ count: last.name }} className="no-print">
            {say("variance.compareSpot", { items: last.items })}
          </Link>
        ),
      })}
    </p>
  );
}
