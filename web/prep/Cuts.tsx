import { shownWord } from "../book-words.ts";
import { formatNumber, listWords } from "../format.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { benchAmount, piecesWords } from "./amounts.ts";
import type { PrepReport } from "./prep-queries.ts";

/** Less of a part than one piece's is a scrap, not something to plan with. */
const WORTH_NAMING_PIECES = 1;

/** Fruit to cut and press: one fruit for several uses, and what is left of its parts. */
export function Cuts({ cuts }: { cuts: PrepReport["cuts"] }) {
  const venue = useVenue();
  if (cuts.length === 0) return null;
  return (
    <section id="cut">
      <h2>{say("prep.cut")}</h2>
      <ul className="cut-lines">
        {cuts.map(({ source, pieces, gives, spare, likely }) => {
          const free = spare.filter(({ share }) => share >= WORTH_NAMING_PIECES);
          return (
            <li key={source} className="keep-whole">
              <strong>{source}</strong> <span className="batch-make">{piecesWords(likely)}</span>
              <p>
                {listWords(
                  gives.map(
                    ({ item, amount, unit }) =>
                      `${unit === "each" ? formatNumber(Math.ceil(amount)) : benchAmount(amount, unit, venue)} ${item}`,
                  ),
                )}
                .
                {free.length === 0 ? null : (
                  <span className="soft">
                    {" "}
                    {say("prep.free", {
                      parts: listWords(free.map(({ part, share }) => freePart(part, { share, pieces }))),
                    })}
                  </span>
                )}
              </p>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function freePart(written: string, { share, pieces }: { share: number; pieces: number }): string {
  const part = shownWord("part", written);
  return share >= pieces * 0.999
    ? say("prep.freeOfAll", { part })
    : say("prep.freeOf", { part, pieces: formatNumber(Math.floor(share)) });
}
