/** A command's work: returns the exit status when it is not 0. */
// biome-ignore lint/suspicious/noExplicitAny: each command declares its own options below
type Action = (options: any, ...args: any[]) => Promise<number | undefined>;

/** One command of the program: its name, its words, its options, and how to get its work. */
export type CommandSpec = {
  name: string;
  summary: string;
  description?: string;
  examples: readonly string[];
  options?: readonly (readonly [flags: string, text: string])[];
  isReport?: boolean;
  /** Only the command that runs is loaded, so that each starts at once. */
  load: () => Promise<Action>;
};

/** Every command, in the order that help lists them. */
export const COMMANDS: readonly CommandSpec[] = [
  {
    name: "serve",
    summary: "open the screens in a browser, from this machine",
    examples: [
      "ullage serve --port 4680",
      "ullage serve --host 0.0.0.0 --tls-cert bar.pem --tls-key bar-key.pem",
    ],
    options: [
      ["--port <number>", "port to listen on (0 = any free one)"],
      ["--host <address>", "address to listen on"],
      ["--tls-cert <file>", "certificate (PEM) for HTTPS, which phones need"],
      ["--tls-key <file>", "its private key (PEM)"],
      ["--insecure-http", "let other devices in without HTTPS"],
      ["--name <names...>", "further names it is asked for by, as behind a proxy"],
      ["--backup-dir <folder>", "where to back up to while it runs (default: backups, beside the database)"],
      ["--backup-every <time>", "how often, as 6h or 1d (the default), or never"],
      ["--keep <days,weeks>", "backups to keep: the last of so many days and weeks (default: 7,8)"],
    ],
    load: async () => (await import("#server/cli/commands/serve.ts")).serveCommand,
  },
  {
    name: "demo",
    summary: "load the sample bar into a fresh database, print its week, serve it",
    examples: ["ullage demo", "ullage demo --port 0 --no-serve"],
    options: [
      ["--port <number>", "port to listen on"],
      ["--no-serve", "print the week and stop"],
    ],
    load: async () => (await import("#server/cli/commands/demo.ts")).demoCommand,
  },
  {
    name: "load <dir>",
    summary: "read a book (a folder of sheets) into the database",
    description:
      "Reads every sheet and sales file of the folder. If anything is wrong, all wrong cells are listed and nothing is loaded.\nA database that already holds a book is replaced by it; a copy is kept beside it first.",
    examples: ["ullage load sample-sales", "ullage load ~/bar-book --db data/bar.db"],
    isReport: true,
    load: async () => (await import("#server/cli/commands/load.ts")).loadCommand,
  },
  {
    name: "export <dir>",
    summary: "write the database out as a book of plain CSV sheets",
    examples: ["ullage export ~/bar-book-2026-11-23"],
    load: async () => (await import("#server/cli/commands/export.ts")).exportCommand,
  },
  {
    name: "sales [files...]",
    summary: "import sales files; the same sale is never counted twice",
    examples: ["ullage sales week-47.csv --dry-run", "ullage sales week-47.csv", "ullage sales --undo 12"],
    options: [
      ["--shape <name>", "read with this entry of sales-shapes.json (its files pattern)"],
      ["--undo <import>", "take an import back, by its number"],
      ["--lines <date>", "the lines of a business day, to find a check again"],
      ["--dry-run", "say what would change, change nothing"],
      ["--add", "add sums to those of the same days, as of another till, instead of replacing them"],
    ],
    isReport: true,
    load: async () => (await import("#server/cli/commands/sales.ts")).salesCommand,
  },
  {
    name: "use",
    summary: "expected use by item",
    description:
      "What the drinks sold, and the batches made, should have used, by the specs in force on each day.",
    examples: [
      "ullage use --from 2026-11-16 --to 2026-11-22",
      "ullage use --from 2026-11-16 --to 2026-11-22 --raw --csv",
    ],
    options: [
      ["--from <date>", "first business date"],
      ["--to <date>", "last business date"],
      ["--raw", "open every prep up to what is bought"],
    ],
    isReport: true,
    load: async () => (await import("#server/cli/commands/use.ts")).useCommand,
  },
  {
    name: "variance",
    summary: "what was used beyond what should have been, and how sure that is",
    description:
      "Compares two counts; by default the last two. A variance is no accusation: each cause names a check to make.",
    examples: ["ullage variance", 'ullage variance --count "Week 47" --since "Week 45" --json'],
    options: [
      ["--count <name>", "closing count"],
      ["--since <name>", "opening count"],
    ],
    isReport: true,
    load: async () => (await import("#server/cli/commands/variance.ts")).varianceCommand,
  },
  {
    name: "trend",
    summary: "unexplained use over all counts: small steady leaks",
    examples: ["ullage trend", 'ullage trend --item "Dry gin"'],
    options: [["--item <name>", "one item"]],
    isReport: true,
    load: async () => (await import("#server/cli/commands/trend.ts")).trendCommand,
  },
  {
    name: "forecast",
    summary: "serves a day to come, with quantiles",
    examples: [
      "ullage forecast --from 2026-11-24 --days 7",
      "ullage forecast --from 2026-11-24 --days 7 --item",
    ],
    options: [
      ["--from <date>", "first business date"],
      ["--days <number>", "how many days"],
      ["--as-of <date>", "what was known before this date"],
      ["--item", "items in base units instead of drinks"],
    ],
    isReport: true,
    load: async () => (await import("#server/cli/commands/forecast.ts")).forecastCommand,
  },
  {
    name: "order",
    summary: "what to order from whom, before which cut-off",
    examples: ["ullage order", 'ullage order --at "2026-11-23 11:00" --supplier "Quay Wines" --json'],
    options: [
      ["--at <moment>", 'the venue\'s time, "YYYY-MM-DD HH:MM"'],
      ["--supplier <name>", "one supplier"],
      ["--budget <amount>", "money there is, in major units"],
      ["--replay", "what the settings would have done over the last weeks"],
      ["--weeks <number>", "with --replay: how many weeks"],
      ["--what-if <file>", "what changes in a JSON file would do (party, closed, price, menu)"],
    ],
    isReport: true,
    load: async () => (await import("#server/cli/commands/order.ts")).orderCommand,
  },
  {
    name: "prep",
    summary: "what to press, cook and batch, and what is past its date",
    examples: ["ullage prep --for 2026-11-27", "ullage prep --for 2026-11-27 --days 2 --certainty 0.95"],
    options: [
      ["--for <date>", "business date"],
      ["--days <number>", "days a batch should serve"],
      [
        "--certainty <share>",
        "how sure the most pieces of a fruit shall be enough, 0.5 to 0.999 (default: 0.977)",
      ],
    ],
    isReport: true,
    load: async () => (await import("#server/cli/commands/prep.ts")).prepCommand,
  },
  {
    name: "cost",
    summary: "cost of each drink, and of each item",
    examples: ["ullage cost", 'ullage cost --drink "Harbour sour"'],
    options: [["--drink <name>", "one drink"]],
    isReport: true,
    load: async () => (await import("#server/cli/commands/cost.ts")).costCommand,
  },
  {
    name: "spec <file>",
    summary: "read recipe text into spec lines (also without a database)",
    examples: ["ullage spec sour.txt", "echo '3/4 oz lime juice' | ullage spec - --json"],
    isReport: true,
    load: async () => (await import("#server/cli/commands/spec.ts")).specCommand,
  },
  {
    name: "meter",
    summary: "what a hydrometer, a density or a refractometer reading means (without a database)",
    description:
      "Gives °Brix from a gravity, a density or grams in a litre; sugar and solids of something sour from its °Brix; and the\nstrength of a spirit without sugar from its density.",
    examples: [
      "ullage meter --gravity 1.083",
      "ullage meter --density 1.2297 --celsius 20",
      "ullage meter --sugar 615",
      "ullage meter --brix 48 --acid 4",
      "ullage meter --spirit 0.94805",
    ],
    options: [
      ["--gravity <number>", "specific gravity at 20/20 °C, as a hydrometer shows it"],
      ["--density <g/ml>", "density of sugar in water"],
      ["--sugar <g/l>", "grams of sugar in a litre"],
      ["--brix <number>", "what a refractometer reads"],
      ["--acid <percent>", "with --brix: acid in % of the weight, which the reading is corrected for"],
      ["--spirit <g/ml>", "density of a spirit without sugar"],
      ["--celsius <number>", "temperature of what was measured (default: 20)"],
    ],
    isReport: true,
    load: async () => (await import("#server/cli/commands/meter.ts")).meterCommand,
  },
  {
    name: "history",
    summary: "what was done, by whom, when, from where and why",
    examples: [
      'ullage history --subject "Dry gin"',
      "ullage history --from 2026-11-16 --to 2026-11-22 --csv",
      "ullage history --undo 214",
    ],
    options: [
      ["--subject <name>", "an item, drink, count, import, week … by its name"],
      ["--from <date>", "first day, by the venue's calendar"],
      ["--to <date>", "last day"],
      ["--undo <number>", "take an act back, by its number"],
      ["--reason <text>", "with --undo: why"],
    ],
    isReport: true,
    load: async () => (await import("#server/cli/commands/history.ts")).historyCommand,
  },
  {
    name: "close",
    summary: "close the past up to a day, so that it stays as it is",
    description:
      "Nothing on or before that business date can be changed then: no count, delivery, batch, loss, transfer, spec, cut, price\nor sale. The count of the morning after, which the week ends on, is closed with it. The owner can reopen it.",
    examples: ["ullage close --to 2026-11-22"],
    options: [["--to <date>", "last business date to close"]],
    load: async () => (await import("#server/cli/commands/closing.ts")).closeCommand,
  },
  {
    name: "reopen",
    summary: "reopen the week that was closed last, with a reason",
    examples: [
      'ullage reopen --reason "invoice Q-130 came late"',
      'ullage reopen --to 2026-10-31 --reason "gin was weighed with the wrong empty bottle"',
    ],
    options: [
      ["--reason <text>", "why; it stays in the history"],
      ["--to <date>", "what stays closed: days up to this one"],
    ],
    load: async () => (await import("#server/cli/commands/closing.ts")).reopenCommand,
  },
  {
    name: "people [what] [name]",
    summary: "who may sign in: list, add, link (a new one-time link), disable, enable",
    description:
      "Without more, lists who may sign in. Whoever can run this on the server holds the keys: a link made here lets its person set\na new password or PIN, also when the old one is lost.",
    examples: [
      "ullage people",
      'ullage people add "Kit" --role counter',
      'ullage people link "Ines"',
      'ullage people disable "Kit"',
    ],
    options: [["--role <role>", "with add: owner, manager, counter or prep"]],
    isReport: true,
    load: async () => (await import("#server/cli/commands/people.ts")).peopleCommand,
  },
  {
    name: "token [what] [name]",
    summary: "tokens for scripts that use the API: list, add, revoke",
    examples: [
      "ullage token",
      'ullage token add "till import" --role manager --scope write',
      'ullage token revoke "till import"',
    ],
    options: [
      ["--role <role>", "with add: it may do no more than an owner, manager, counter or prep"],
      ["--scope <scope>", "with add: read (if left out) or write"],
    ],
    isReport: true,
    load: async () => (await import("#server/cli/commands/people.ts")).tokenCommand,
  },
  {
    name: "backup <file>",
    summary: "copy the database, safely while it is in use",
    examples: ["ullage backup ~/ullage-2026-11-23.db"],
    load: async () => (await import("#server/cli/commands/backup.ts")).backupCommand,
  },
  {
    name: "restore <file>",
    summary: "put a backup in the database's place; what was there is kept beside it",
    examples: ["ullage restore ~/ullage-2026-11-23.db"],
    options: [["--anyway", "even where its variance is reckoned otherwise now than when it was made"]],
    load: async () => (await import("#server/cli/commands/backup.ts")).restoreCommand,
  },
  {
    name: "check",
    summary: "is the database whole, and its history as it was written? exit status 1 when it is not",
    examples: ["ullage check", "ullage check --head 5f0c…"],
    options: [["--head <hash>", "a head of the history noted earlier: is it still part of it?"]],
    load: async () => (await import("#server/cli/commands/backup.ts")).checkCommand,
  },
];
