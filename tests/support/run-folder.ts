import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Gives a run a folder for all its temporary files, whoever makes them, and removes it when the run ends. */
export default function makeRunFolder(): () => void {
  const folder = mkdtempSync(join(tmpdir(), "ullage-tests-"));
  for (const name of ["TMPDIR", "TEMP", "TMP"]) process.env[name] = folder;
  return () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}
