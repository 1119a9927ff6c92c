import { runCommand } from "#server/cli/program.ts";

/** The `ullage` command: runs it and sets the exit status (0 done, 1 the answer is "no", 2 wrong input or use). */
export async function main(args: readonly string[]): Promise<void> {
  process.exitCode = await runCommand(args);
}

// In development the sources run directly: node --import tsx server/main.ts ARGS.
if (process.argv[1]?.endsWith("server/main.ts")) await main(process.argv.slice(2));
