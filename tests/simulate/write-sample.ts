import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { sampleFiles } from "./sample.ts";

const folder = fileURLToPath(new URL("../../sample-sales", import.meta.url));

rmSync(folder, { recursive: true, force: true });
for (const [path, text] of sampleFiles()) {
  const file = join(folder, path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
}
