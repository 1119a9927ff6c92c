#!/usr/bin/env node
// The command line: from a checkout it first compiles what is stale, then runs the compiled program.
import { existsSync } from "node:fs";
import { buildStale } from "./build.mjs";

buildStale({ withWeb: ["serve", "demo"].includes(process.argv[2] ?? "") });
const bundle = new URL("../../dist/bundle/main.js", import.meta.url);
const { main } = await import(existsSync(bundle) ? bundle.href : "../../dist/server/main.js");
await main(process.argv.slice(2));
