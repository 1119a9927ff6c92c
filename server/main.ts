import { runCommand } from "#server/cli/program.ts";

/** The `ullage` command: runs it and sets the exit status (0 done, 1 the answer is "no", 2 wrong input or use). */
export async function main(args: readonly string[]): Promise<void> {
  process.stdout.on("error", endQuietly);
  process.exitCode = await runCommand(args);
}

/** Who reads the first lines only (`ullage use … | head`) has what they wanted. */
function endQuietly(error: NodeJS.ErrnoException): void {
  if (error.code === "EPIPE") process.exit(0);
  throw error;
}

// In development the sources run directly: node --import tsx server/main.ts ARGS.
if (process.argv[1]?.endsWith("server/main.ts")) await main(process.argv.slice(2));
