import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { Check } from "lucide-react";
import { catalogueQuery, countsQuery } from "../queries.ts";
import { daysQuery } from "../sales/sales-queries.ts";
import { say, sayWith } from "../texts/say.ts";

/** A young book, step by step: each is of use by itself, and what is half done is kept. Gone once all are done. */
export function BeginBook() {
  const { data: catalogue } = useQuery(catalogueQuery);
  const { data: counts } = useQuery(countsQuery);
  const { data: days } = useQuery(daysQuery);
  if (catalogue === undefined || counts === undefined || days === undefined) return null;
  const has = {
    items: catalogue.items.length > 0,
    specs: catalogue.specs.length > 0,
    sales: days.length > 0,
    count: counts.length > 0,
  };
  if (Object.values(has).every(Boolean)) return null;
  return (
    <section aria-label={say("week.begin")}>
      <h2>{say("week.begin")}</h2>
      <ol className="begin-book">
        <li>
          <Mark isDone={has.items} />
          <Link to="/count" search={{ count: say("week.firstCount"), step: "found" }}>
            {say("week.beginItems")}
          </Link>
          <span className="soft">
            {sayWith("week.beginItemsMore", {
              priceList: <Link to="/prices">{say("week.beginPriceList")}</Link>,
            })}
          </span>
        </li>
        <li>
          <Mark isDone={has.count} />
          <Link to="/count" search={{ count: say("week.firstCount") }}>
            {say("week.beginCount")}
          </Link>
          <span className="soft">{say("week.beginCountMore")}</span>
        </li>
        <li>
          <Mark isDone={has.specs} />
          <Link to="/specs">{say("week.beginSpecs")}</Link>
          <span className="soft">{say("week.beginSpecsMore")}</span>
        </li>
        <li>
          <Mark isDone={has.sales} />
          <Link to="/sales">{say("week.beginSales")}</Link>
          <span className="soft">{say("week.beginSalesMore")}</span>
        </li>
      </ol>
    </section>
  );
}

function Mark({ isDone }: { isDone: boolean }) {
  return (
    <span className="begin-mark">
      {isDone ? <Check aria-label={say("week.beginDone")} size={18} /> : <span aria-hidden="true">○</span>}
    </span>
  );
}
