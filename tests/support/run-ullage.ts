import { vi } from "vitest";
import { runCommand } from "#server/cli/program.ts";

export type Ran = { status: number; out: string; err: string };

/** Runs one command in this process and gives what it printed. */
export async function runUllage(...args: string[]): Promise<Ran> {
  const ran: Ran = { status: 0, out: "", err: "" };
  const out = vi.spyOn(process.stdout, "write").mockImplementation((text) => {
    ran.out += String(text);
    return true;
  });
  const err = vi.spyOn(process.stderr, "write").mockImplementation((text) => {
    ran.err += String(text);
    return true;
  });
  try {
    ran.status = await runCommand(args);
  } finally {
    out.mockRestore();
    err.mockRestore();
  }
  return ran;
}

/** The JSON a report prints; throws with what it said instead when it did not end well. */
export async function jsonOf(...args: string[]): Promise<unknown> {
  const { status, out, err } = await runUllage(...args, "--json");
  if (status !== 0) throw new Error(`ullage ${args.join(" ")} ended with ${status}: ${err}`);
  return JSON.parse(out);
}
