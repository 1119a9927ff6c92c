#!/usr/bin/env node
// The command line: from a checkout it first compiles what is stale, then runs the compiled program.
import { buildStale } from "./build.mjs";

buildStale({ withWeb: ["serve", "demo"].includes(process.argv[2] ?? "") });
const { main } = await import("../../dist/server/main.js");
await main(process.argv.slice(2));
