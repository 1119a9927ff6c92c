import { plural } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import type { Asked, PriceListAnswer } from "./price-list.ts";

type Props = {
  list: PriceListAnswer;
  onAnswer: (answer: Pick<Partial<Asked>, "pricePer" | "decimal">) => void;
};

/** What the list leaves open and money hangs on: asked, never guessed. */
export function Questions({ list: { questions, changes }, onAnswer }: Props) {
  const example = changes.find(({ pack }) => pack.perCase > 1);
  if (questions.includes("decimal")) {
    return (
      <section className="prices-question">
        <h2>Is 1.234 a thousand or one and a bit?</h2>
        <p>Every price in this list can be read both ways.</p>
        <div className="prices-act">
          <Button onClick={() => onAnswer({ decimal: "." })}>The point is the decimal mark</Button>
          <Button onClick={() => onAnswer({ decimal: "," })}>The comma is the decimal mark</Button>
        </div>
      </section>
    );
  }
  if (!questions.includes("pricePer") || example === undefined) return null;
  return (
    <section className="prices-question">
      <h2>What do the prices pay for?</h2>
      <p>
        The list does not say. As an example: {example.product}, {plural(example.pack.perCase, "container")} a
        case, at {example.pack.price}.
      </p>
      <div className="prices-act">
        <Button onClick={() => onAnswer({ pricePer: "case" })}>For a case</Button>
        <Button onClick={() => onAnswer({ pricePer: "container" })}>For one bottle or container</Button>
      </div>
    </section>
  );
}
