import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { ReadSales, SaleLine } from "#engine/sales/read/line.ts";
import { readSales } from "#engine/sales/read/read-sales.ts";
import { SalesShape } from "#engine/sales/read/shape.ts";

/**
 * Each small file of `files/` has a text of the same name beside it with what must come out, written by hand:
 * `date | instant | ring name | modifiers | quantity | gross | net | check | line` for each line, in minor units, "-" for none;
 * `refused ROW: how the reason starts`; `question: how it starts`; `notice: …`. `clock:`, `digits:` and `shape:` set the scene
 * (else Europe/Berlin, two currency digits, no shape). The day ends at 04:00. What each form means is common practice.
 */
const folder = new URL("files/", import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith(".csv"));

type Expected = {
  lines: string[];
  refused: string[];
  questions: string[];
  notices: string[];
  settings: Map<string, string>;
};

function expectedOf(name: string): Expected {
  const expected: Expected = { lines: [], refused: [], questions: [], notices: [], settings: new Map() };
  for (const line of readFileSync(new URL(name.replace(/csv$/, "txt"), folder), "utf8")
    .trim()
    .split("\n")) {
    const [, word = "", rest = ""] = /^(clock|digits|shape|question|notice): (.*)$/.exec(line) ?? [];
    if (line.startsWith("refused ")) expected.refused.push(line.slice("refused ".length));
    else if (word === "question") expected.questions.push(rest);
    else if (word === "notice") expected.notices.push(rest);
    else if (word !== "") expected.settings.set(word, rest);
    else expected.lines.push(line);
  }
  return expected;
}

function asText(line: SaleLine): string {
  const { businessDate, at, ringName, modifiers, quantity, grossMinor, netMinor, check, lineNo } = line;
  const cells = [
    businessDate,
    at,
    ringName,
    modifiers.replaceAll("\n", "\\n"),
    quantity,
    grossMinor,
    netMinor,
    check,
    lineNo,
  ];
  return cells.map((cell) => cell ?? "-").join(" | ");
}

function read(name: string, { settings }: Expected): ReadSales {
  const shape = settings.get("shape");
  return readSales(new Uint8Array(readFileSync(new URL(name, folder))), {
    fileName: name,
    clock: { timeZone: settings.get("clock") ?? "Europe/Berlin", dayEnds: "04:00" },
    currencyDigits: Number(settings.get("digits") ?? 2),
    shapes: shape === undefined ? [] : [SalesShape.parse(JSON.parse(shape))],
  });
}

describe("a till's file", () => {
  it("comes in at least twenty-five awkward forms", () => {
    expect(names.length).toBeGreaterThanOrEqual(25);
  });

  it.each(names)("%s gives what is written beside it", (name) => {
    const expected = expectedOf(name);
    const result = read(name, expected);
    expect(result.question?.slice(0, name.length + 2) ?? "").toBe(
      expected.questions.length > 0 ? `${name}: ` : "",
    );
    expect(result.lines.map(asText)).toEqual(expected.lines);
    const reasons = result.refused.map(({ row, reason }) => `${row}: ${reason}`);
    expect(reasons.map((reason, index) => reason.slice(0, expected.refused[index]?.length))).toEqual(
      expected.refused,
    );
    const question = result.question?.slice(name.length + 2);
    expect(question?.slice(0, expected.questions[0]?.length)).toBe(expected.questions[0]);
    for (const notice of expected.notices) expect(result.notices).toContain(notice);
  });

  it.each(names)("%s is read the same with the shape it was found to have", (name) => {
    const expected = expectedOf(name);
    const first = read(name, expected);
    const settings = new Map([...expected.settings, ["shape", JSON.stringify(first.shape)]]);
    const again = read(name, { ...expected, settings });
    expect(again.lines).toEqual(first.lines);
    expect(again.refused).toEqual(first.refused);
  });
});
