import { expect, it } from "vitest";
import { jsonOf, runUllage } from "#tests/support/run-ullage.ts";

it.each([
  [["--gravity", "1.17885"], { brix: expect.closeTo(40.02, 2) }],
  [["--density", "1.22965"], { brix: expect.closeTo(50, 2) }],
  [["--sugar", "614.8"], { brix: expect.closeTo(50, 2) }],
  [
    ["--brix", "48", "--acid", "4"],
    { solidsPct: expect.closeTo(48.7776, 6), sugarPct: expect.closeTo(44.7776, 6) },
  ],
  [["--spirit", "0.94805"], { abvPct: expect.closeTo(40, 2), brix: null }],
  [["--spirit", "0,95822", "--celsius", "4"], { abvPct: expect.closeTo(40, 2) }],
])("ullage meter %s", async (args, meaning) => {
  expect(await jsonOf("meter", ...args)).toEqual([expect.objectContaining(meaning)]);
});

it.each([
  [[], /Give a reading/],
  [["--acid", "3"], /goes with --brix/],
  [["--gravity", "48"], /from 1 to 1\.44/],
  [["--spirit", "0.99999", "--celsius", "-10"], /outside/],
])("ullage meter %s is refused", async (args, message) => {
  const { status, err } = await runUllage("meter", ...args);
  expect(status).toBe(2);
  expect(err).toMatch(message);
});
