import { Command, CommanderError, Option } from "commander";
import { actingAs, atTerminal } from "#db/history/acting.ts";
import { COMMANDS, type CommandSpec } from "#server/cli/command-table.ts";
import type { Format } from "#server/cli/output.ts";

/** Options that every command takes. */
export type CommonOptions = { db?: string; json?: boolean; csv?: boolean };

/** Runs one command and gives its exit status: 0 done, 1 the answer is "no", 2 wrong input or use. */
export async function runCommand(args: readonly string[]): Promise<number> {
  let status = 0;
  const program = new Command("ullage")
    .description("Inventory and par levels for bars, backed by what the drinks really use.")
    .helpOption("-h, --help", "show help")
    .helpCommand(false)
    .showHelpAfterError("Try: ullage --help")
    .exitOverride()
    .configureOutput({ writeErr: (text) => process.stderr.write(text) });
  program.addHelpText(
    "after",
    "\nStart with:\n  $ ullage demo\nHelp on one command, with examples:\n  $ ullage variance --help",
  );
  for (const spec of COMMANDS) {
    addCommand(program, spec, (code) => {
      status = code;
    });
  }
  try {
    await program.parseAsync(["node", "ullage", ...args]);
    return status;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 || args.length === 0 ? 0 : 2;
    const { reportFault } = await import("#server/cli/fault.ts");
    return reportFault(error);
  }
}

function addCommand(program: Command, spec: CommandSpec, setStatus: (status: number) => void): void {
  const command = program
    .command(spec.name)
    .summary(spec.summary)
    .description(spec.description ?? sentence(spec.summary))
    .option("--db <file>", "database file (default: ULLAGE_DB, else data/ullage.db)")
    .addHelpText("after", ["\nExample:", ...spec.examples.map((example) => `  $ ${example}`)].join("\n"));
  for (const [flags, text] of spec.options ?? []) command.option(flags, text);
  if (spec.isReport) {
    command.addOption(new Option("--json", "print JSON, numbers unrounded").conflicts("csv"));
    command.addOption(new Option("--csv", "print CSV"));
  }
  const count = command.registeredArguments.length;
  command.action(async (...given: unknown[]) => {
    const action = await spec.load();
    const status = await actingAs(atTerminal(), () => action(given[count], ...given.slice(0, count)));
    setStatus(status ?? 0);
  });
}

function sentence(text: string): string {
  return `${text[0]?.toUpperCase()}${text.slice(1)}.`;
}

/** The form a report is wanted in. */
export function formatOf({ json, csv }: CommonOptions): Format {
  return json ? "json" : csv ? "csv" : "table";
}
