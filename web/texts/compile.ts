import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { basename, join } from "node:path";
import { FIRST } from "./catalogues.ts";
import type { Texts, Values } from "./say.ts";

// Its types name a default export that its CommonJS file does not have when Node reads it.
const require = createRequire(import.meta.url);
const MessageFormat: new (language: string) => { compile(message: string): (values: Values) => string } =
  require("@messageformat/core");
const compileModule: (format: InstanceType<typeof MessageFormat>, messages: Messages) => string =
  require("@messageformat/core/compile-module.js");

/** Messages in ICU syntax by file and key. */
export type Messages = Record<string, Record<string, string>>;

/** Which of a language's files: those that the count needs, or the others. */
export type Part = "first" | "rest";

/** The files of a language's catalogue, as they are written. */
export function messageFiles(language: string): string[] {
  const folder = join(import.meta.dirname, language);
  return readdirSync(folder)
    .filter((name) => name.endsWith(".json"))
    .sort()
    .map((name) => join(folder, name));
}

/** The messages of a language; of one part of it, or of all. */
export function readMessages(language: string, part?: Part): Messages {
  const isFirst = (file: string) => FIRST.some((name) => name === basename(file, ".json"));
  const files = messageFiles(language).filter(
    (file) => part === undefined || isFirst(file) === (part === "first"),
  );
  return Object.fromEntries(
    files.map((file) => [
      basename(file, ".json"),
      JSON.parse(readFileSync(file, "utf8")) as Record<string, string>,
    ]),
  );
}

/** The source of a module whose default export is the messages as functions. Throws where a message is not ICU. */
export function moduleOf(language: string, part: Part): string {
  return compileModule(new MessageFormat(language), readMessages(language, part));
}

/** All texts of a language, made on the spot: for what runs without a build. Throws where a message is not ICU. */
export function textsOf(language: string): Texts {
  const format = new MessageFormat(language);
  const files = Object.entries(readMessages(language));
  return Object.fromEntries(
    files.map(([file, messages]) => [
      file,
      Object.fromEntries(Object.entries(messages).map(([key, text]) => [key, format.compile(text)])),
    ]),
  );
}
