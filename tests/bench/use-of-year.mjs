// After a spec edit: expected use of 52 weeks from the tallies. The catalogue is made anew; the tallies are read from the file.

import { loadBook } from "../../dist/db/book-repository.js";
import { openDatabase } from "../../dist/db/open.js";
import { salesTexts, talliesBetween } from "../../dist/db/sales-repository.js";
import { factsOf } from "../../dist/engine/facts.js";
import { TallyUse } from "../../dist/engine/sales/tally-use.js";
import { addDays } from "../../dist/engine/time.js";

const db = openDatabase(process.argv[2]);
const book = await loadBook(db);
const from = process.argv[3];
const times = [];
const processor = [];
for (let round = 0; round < 15; round += 1) {
  // The amounts of one drink change, as in an edit of its spec for the past.
  const first = book.specs.find(({ unit }) => unit === "ml");
  const specs = book.specs.map((line) => (line === first ? { ...line, amount: line.amount + round } : line));
  const { catalogue } = factsOf({ ...book, specs });
  const startedMs = performance.now();
  const started = process.cpuUsage();
  const days = await talliesBetween(db, { from, to: addDays(from, 363) });
  const use = new TallyUse(catalogue, await salesTexts(db));
  const amounts = new Float64Array(use.items.length);
  for (const { businessDate, tally } of days) use.addDay(businessDate, tally, amounts);
  times.push(performance.now() - startedMs);
  const { user, system } = process.cpuUsage(started);
  processor.push((user + system) / 1000);
  if (!amounts.some((amount) => amount > 0)) throw new Error("Nothing was used.");
}
db.sqlite.close();
const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
console.log(JSON.stringify({ firstMs: times[0], ms: median(times), cpuMs: median(processor) }));
