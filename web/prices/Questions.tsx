import { Button } from "../parts/Button.tsx";
import { locale } from "../texts/language.ts";
import { say } from "../texts/say.ts";
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
        <h2>{say("prices.decimalTitle")}</h2>
        <p>{say("prices.decimalWhy")}</p>
        <div className="prices-act">
          <Button onClick={() => onAnswer({ decimal: "." })}>{say("prices.decimalPoint")}</Button>
          <Button onClick={() => onAnswer({ decimal: "," })}>{say("prices.decimalComma")}</Button>
        </div>
      </section>
    );
  }
  if (!questions.includes("pricePer") || example === undefined) return null;
  return (
    <section className="prices-question">
      <h2>{say("prices.payForTitle")}</h2>
      <p>
        {say("prices.payForWhy", {
          product: example.product,
          count: example.pack.perCase,
          price: example.pack.price?.toLocaleString(locale) ?? "",
        })}
      </p>
      <div className="prices-act">
        <Button onClick={() => onAnswer({ pricePer: "case" })}>{say("prices.forCase")}</Button>
        <Button onClick={() => onAnswer({ pricePer: "container" })}>{say("prices.forContainer")}</Button>
      </div>
    </section>
  );
}
