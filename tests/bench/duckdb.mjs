// The same whole job in DuckDB, into its own file: lines kept once, tallies, expected use per item and day.
import { DuckDBInstance } from "@duckdb/node-api";

const [sales, bills, database] = process.argv.slice(2);
const instance = await DuckDBInstance.create(database);
const db = await instance.connect();
const dayOf = "cast(sold_at - interval 4 hour as date)";
const read = `select "Sold at"::timestamp as sold_at, "Check"::bigint as check_no, "Line"::integer as line_no, "Item" as item,
  coalesce("Modifiers", '') as modifiers, "Qty"::double as quantity, "Gross"::decimal(12, 2) as gross, "Net"::decimal(12, 2) as net
  from read_csv('${sales}', header = true, delim = ',', quote = '"', escape = '"', all_varchar = true)`;
const columns = "sold_at, check_no, line_no, item, modifiers, quantity, gross, net, business_date";
await db.run(`create table if not exists lines (sold_at timestamp, check_no bigint, line_no integer, item varchar,
  modifiers varchar, quantity double, gross decimal(12, 2), net decimal(12, 2), business_date date)`);
await db.run(`create temp table incoming as select *, ${dayOf} as business_date from (${read})`);
// Known or new is decided by business day, as here: only the days that differ are looked into line by line.
const sums = (table) =>
  `select business_date, count(*) as lines, sum(hash(${columns})::hugeint) as sum from ${table} group by business_date`;
await db.run(`create temp table changed as select business_date from
  (select * from (${sums("incoming")}) except select * from (${sums("lines")}))`);
await db.run(
  `create temp table touched as select distinct business_date from lines semi join changed using (business_date)`,
);
await db.run(`insert into lines select ${columns} from incoming
  semi join changed using (business_date) anti join touched using (business_date)`);
const numbered = (table) =>
  `select *, row_number() over (partition by ${columns}) as n from ${table} semi join touched using (business_date)`;
await db.run(`insert into lines select ${columns} from (${numbered("incoming")}) anti join (${numbered("lines")})
  using (${columns}, n)`);
await db.run(`create or replace table tallies as
  select business_date, item, modifiers, sum(quantity) as quantity, sum(net) as net from lines group by all`);
// One row a drink, modifier text, version, item: what one sale of it takes. Periods are joined once.
await db.run(`create temp table bills as select * from read_csv('${bills}', header = true, all_varchar = false,
  types = {'drink': 'varchar', 'modifiers': 'varchar', 'first': 'date', 'until': 'date', 'item': 'varchar', 'part': 'varchar', 'amount': 'double'}, nullstr = '\\N')`);
await db.run(`create or replace table use_by_day as
  with asked as materialized (
    select t.business_date, b.item, b.part, sum(t.quantity * b.amount) as amount
    from tallies t join bills b on b.drink = t.item and b.modifiers = t.modifiers
      and t.business_date >= b.first and t.business_date < b.until
    group by all)
  select business_date, item, sum(amount) as amount from (
    select business_date, item, max(amount) as amount from asked where part <> '' group by all
    union all select business_date, item, sum(amount) as amount from asked where part = '' group by all)
  group by all`);
const lines = (await db.runAndReadAll("select count(*) from lines")).getRows()[0];
const used = (await db.runAndReadAll("select sum(amount) from use_by_day")).getRows()[0];
await db.run("checkpoint");
db.closeSync();
instance.closeSync();
console.log(JSON.stringify({ lines: Number(lines[0]), used: used[0] }));
