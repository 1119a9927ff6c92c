import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { Check } from "lucide-react";
import { catalogueQuery, countsQuery } from "../queries.ts";
import { daysQuery } from "../sales/sales-queries.ts";

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
    <section aria-label="To begin with">
      <h2>To begin with</h2>
      <ol className="begin-book">
        <li>
          <Mark isDone={has.items} />
          <Link to="/count" search={{ count: "First count", step: "found" }}>
            Put what you have on its shelves
          </Link>
          <span className="soft">
            Item by item, in the order you walk; or first <Link to="/prices">bring a price list</Link>, which
            names items, sizes and prices at once. With this alone you can count.
          </span>
        </li>
        <li>
          <Mark isDone={has.count} />
          <Link to="/count" search={{ count: "First count" }}>
            Make the first count
          </Link>
          <span className="soft">With this alone you know what stands there.</span>
        </li>
        <li>
          <Mark isDone={has.specs} />
          <Link to="/specs">Paste the specs</Link>
          <span className="soft">As they are written; with these the prep knows what to weigh.</span>
        </li>
        <li>
          <Mark isDone={has.sales} />
          <Link to="/sales">Drop a sales file</Link>
          <span className="soft">Any file your till exports. With a second count it gives the variance.</span>
        </li>
      </ol>
    </section>
  );
}

function Mark({ isDone }: { isDone: boolean }) {
  return (
    <span className="begin-mark">
      {isDone ? <Check aria-label="Done:" size={18} /> : <span aria-hidden="true">○</span>}
    </span>
  );
}
