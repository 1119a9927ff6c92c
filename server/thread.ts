import { Worker } from "node:worker_threads";

/** Starts a thread with a compiled file, or in development with its source, which a thread first has to learn to read. */
export function startThread(compiled: URL, workerData: unknown): Worker {
  if (!import.meta.url.endsWith(".ts")) return new Worker(compiled, { workerData });
  const source = JSON.stringify(compiled.href.replace(/\.js$/, ".ts"));
  const start = `import("tsx/esm/api").then(({ register }) => { register(); return import(${source}); });`;
  return new Worker(start, { workerData, eval: true, execArgv: ["--conditions=ullage-source"] });
}
