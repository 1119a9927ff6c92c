import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { jsonOf, runUllage } from "#tests/support/run-ullage.ts";

/** What `--json` promises to hold; keys may be added, not changed. */
const number = z.number();
const base = z.enum(["ml", "g", "each"]);
const date = z.iso.date();
const SHAPES = {
  use: z.object({
    from: date,
    to: date,
    items: z.array(z.object({ item: z.string(), base, expected: number, sd: number })).min(1),
    unmapped: z.array(z.object({ ringName: z.string(), quantity: number, net: number })),
    coverage: number.min(0).max(1),
  }),
  variance: z.object({
    opening: z.string(),
    closing: z.string(),
    from: z.string(),
    to: z.string(),
    items: z
      .array(
        z.object({
          item: z.string(),
          category: z.string(),
          base,
          openingQty: number,
          received: number,
          made: number,
          transferredIn: number,
          transferredOut: number,
          closingQty: number,
          used: number,
          expected: number,
          losses: number,
          unexplained: number,
          sd: number,
          ratio: number,
          verdict: z.enum(["quiet", "watch", "chase"]),
          cost: number.nullable(),
        }),
      )
      .min(1),
    notCounted: z.array(z.string()),
    notCountedIn: z.record(z.string(), z.array(z.string())),
    causes: z.array(
      z.object({
        kind: z.string(),
        what: z.union([z.string(), z.array(z.string())]),
        size: number.positive(),
        unit: z.string(),
        probability: number.min(0).max(1),
        evidence: z.array(z.object({ item: z.string(), amount: number })),
        check: z.string().min(1),
      }),
    ),
    totals: z.object({
      usedCost: number,
      expectedCost: number,
      unexplainedCost: number,
      unexplainedCostSd: number,
      sales: number,
      pourCostPct: number.nullable(),
    }),
  }),
  forecast: z.object({
    asOf: date,
    days: z
      .array(
        z.object({
          date,
          what: z.string(),
          mean: number,
          sd: number,
          q05: number,
          q10: number,
          q50: number,
          q90: number,
          q95: number,
        }),
      )
      .min(1),
    backtest: z.object({ wape: number, wapeSameWeekday: number, coverage90: number, days: number }),
  }),
  order: z.object({
    at: z.string(),
    suppliers: z.array(
      z.object({
        supplier: z.string(),
        orderBy: z.string().nullable(),
        arrives: z.string().nullable(),
        coversUntil: z.string().nullable(),
        lines: z.array(
          z.object({
            item: z.string(),
            pack: z.string(),
            quantity: number.positive(),
            of: z.enum(["container", "case"]),
            base,
            onHand: number,
            onOrder: number,
            par: number,
            expectedUse: number,
            runOutChance: number.min(0).max(1),
            cost: number.nullable(),
          }),
        ),
        total: number,
        minimumMet: z.boolean(),
      }),
    ),
  }),
  prep: z.object({
    date,
    batches: z
      .array(
        z.object({
          prep: z.string(),
          make: number.positive(),
          unit: z.string(),
          batches: number.int().positive(),
          useBy: date.nullable(),
          need: number,
          onHand: number,
          inputs: z.array(z.object({ item: z.string(), amount: number, base })),
          order: number.int(),
        }),
      )
      .min(1),
    cuts: z.array(
      z.object({
        source: z.string(),
        pieces: number,
        gives: z.array(z.object({ item: z.string(), amount: number, unit: z.string() })),
        spare: z.array(z.object({ part: z.string(), share: number })),
      }),
    ),
    discard: z.array(z.object({ prep: z.string(), amount: number, unit: z.string(), madeAt: z.string() })),
  }),
  cost: z.object({
    drinks: z
      .array(
        z.object({
          drink: z.string(),
          from: date,
          cost: number.nullable(),
          price: number.nullable(),
          costPct: number.nullable(),
          contribution: number.nullable(),
        }),
      )
      .min(1),
    items: z.array(z.object({ item: z.string(), base, costPerBase: number.nullable() })).min(1),
  }),
  spec: z.array(
    z.object({
      line: number,
      amount: number.nullable(),
      unit: z.string().nullable(),
      item: z.string().nullable(),
      orItems: z.array(z.string()),
      note: z.string().nullable(),
      error: z.string().nullable(),
    }),
  ),
};

let dir = "";
let db = "";

beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), "ullage-cli-"));
  db = join(dir, "bar.db");
  const loaded = await runUllage("load", "sample-sales", "--db", db);
  expect(loaded).toMatchObject({ status: 0, err: "" });
}, 60_000);
afterAll(() => rmSync(dir, { recursive: true, force: true }));

describe("the command line on the sample bar", () => {
  it.each([
    ["use", ["use", "--from", "2026-11-16", "--to", "2026-11-22"]],
    ["use", ["use", "--from", "2026-11-16", "--to", "2026-11-22", "--raw"]],
    ["variance", ["variance"]],
    ["variance", ["variance", "--count", "2026-11-16", "--since", "2026-11-02"]],
    ["forecast", ["forecast", "--from", "2026-11-24", "--days", "3"]],
    ["forecast", ["forecast", "--from", "2026-11-24", "--days", "3", "--as-of", "2026-11-20", "--item"]],
    ["order", ["order"]],
    ["order", ["order", "--at", "2026-11-20 12:00", "--budget", "300"]],
    ["prep", ["prep", "--for", "2026-11-24"]],
    ["cost", ["cost"]],
  ] as const)("%s prints the JSON it promises: %s", async (name, args) => {
    const json = await jsonOf(...args, "--db", db);
    expect(SHAPES[name].safeParse(json).error?.issues ?? []).toEqual([]);
  });

  it("keeps the identities of the ledger in every row of the variance", async () => {
    const { items } = SHAPES.variance.parse(await jsonOf("variance", "--db", db));
    for (const row of items) {
      const moved =
        row.openingQty + row.received + row.made + row.transferredIn - row.transferredOut - row.closingQty;
      expect(row.used).toBeCloseTo(moved, 9);
      expect(row.unexplained).toBeCloseTo(row.used - row.expected - row.losses, 9);
    }
  });

  it("adds up the use of two halves of a week to the use of the week", async () => {
    const useOf = async (from: string, to: string) => {
      const { items } = SHAPES.use.parse(await jsonOf("use", "--from", from, "--to", to, "--db", db));
      return new Map(items.map(({ item, expected }) => [item, expected]));
    };
    const whole = await useOf("2026-11-09", "2026-11-22");
    const [early, late] = [await useOf("2026-11-09", "2026-11-16"), await useOf("2026-11-17", "2026-11-22")];
    for (const [item, expected] of whole) {
      expect((early.get(item) ?? 0) + (late.get(item) ?? 0), item).toBeCloseTo(expected, 6);
    }
  });

  it("prints CSV with true negative numbers and no formulas", async () => {
    const { out } = await runUllage("variance", "--csv", "--db", db);
    const [head, ...rows] = out.trim().split("\r\n");
    expect(head).toMatch(/^item,unit,opening/);
    expect(rows.some((row) => /,-\d/.test(row))).toBe(true);
    expect(rows.every((row) => !/^[=+@]/.test(row))).toBe(true);
  });

  it("aligns its tables and writes no colour where there is no terminal", async () => {
    const { out } = await runUllage("cost", "--db", db);
    expect(out).not.toContain("\u001b[");
    const [head = "", rule = ""] = out.split("\n");
    expect(rule.length).toBeGreaterThanOrEqual(head.length);
  });

  it("reads a sales file that is in already as known, and a dry run writes nothing", async () => {
    const [file = ""] = readdirSync("sample-sales/sales").sort();
    const path = join("sample-sales/sales", file);
    const before = await jsonOf("use", "--from", "2026-08-24", "--to", "2026-11-22", "--db", db);
    const dry = z.object({
      dryRun: z.literal(true),
      files: z.array(z.object({ new: number, lines: number, importId: z.null() })),
    });
    expect(dry.parse(await jsonOf("sales", path, "--dry-run", "--db", db)).files[0]?.new).toBe(0);
    const real = z
      .object({ files: z.array(z.object({ importId: number, new: z.literal(0) })) })
      .parse(await jsonOf("sales", path, "--db", db));
    expect(await jsonOf("use", "--from", "2026-08-24", "--to", "2026-11-22", "--db", db)).toEqual(before);
    const undone = await runUllage("sales", "--undo", String(real.files[0]?.importId), "--db", db);
    expect(undone.status).toBe(0);
    expect(await jsonOf("use", "--from", "2026-08-24", "--to", "2026-11-22", "--db", db)).toEqual(before);
  });

  it("exports a book that loads to the same reports", async () => {
    const out = join(dir, "book");
    expect(await runUllage("export", out, "--db", db)).toMatchObject({ status: 0 });
    const again = join(dir, "again.db");
    expect(await runUllage("load", out, "--db", again)).toMatchObject({ status: 0 });
    for (const args of [
      ["variance"],
      ["order"],
      ["cost"],
      ["forecast", "--from", "2026-11-24", "--days", "2"],
    ]) {
      expect(await jsonOf(...args, "--db", again)).toEqual(await jsonOf(...args, "--db", db));
    }
  }, 60_000);

  it("keeps what was there when a book is loaded over it", async () => {
    const over = join(dir, "over.db");
    await runUllage("load", "sample-sales", "--db", over);
    const { out, status } = await runUllage("load", "sample-sales", "--db", over);
    expect(status).toBe(0);
    expect(out).toMatch(/kept in .*over\.db\.before-load-/);
  }, 60_000);

  it("backs up, restores and checks", async () => {
    const copy = join(dir, "copy.db");
    const target = join(dir, "restored.db");
    expect(await runUllage("backup", copy, "--db", db)).toMatchObject({ status: 0 });
    expect(await runUllage("backup", copy, "--db", db)).toMatchObject({ status: 2 });
    expect(await runUllage("restore", copy, "--db", target)).toMatchObject({ status: 0 });
    expect(await jsonOf("variance", "--db", target)).toEqual(await jsonOf("variance", "--db", db));
    expect(await runUllage("check", "--db", target)).toMatchObject({ status: 0 });
    writeFileSync(join(dir, "junk.db"), "this is not a database at all, it only looks like a file");
    const refused = await runUllage("restore", join(dir, "junk.db"), "--db", target);
    expect(refused.status).toBe(2);
    expect(refused.err).toMatch(/no database/);
    expect(await runUllage("check", "--db", target)).toMatchObject({ status: 0 });
  });

  it("reads spec text with and without a database", async () => {
    const file = join(dir, "sour.txt");
    writeFileSync(file, "2 oz gin\n3/4 oz lime juice, fresh\n2 dashes orange bitters\ntop soda water\n");
    const lines = SHAPES.spec.parse(await jsonOf("spec", file));
    expect(lines.map(({ amount, unit }) => [amount, unit])).toEqual([
      [2, "oz"],
      [0.75, "oz"],
      [2, "dash"],
      [null, "top"],
    ]);
    SHAPES.spec.parse(await jsonOf("spec", file, "--db", db));
  });
});

describe("wrong use", () => {
  it.each([
    [["use"], /Give the period/],
    [["use", "--from", "2026-02-30", "--to", "2026-03-01"], /--from: "2026-02-30" is no date/],
    [["use", "--from", "2026-03-02", "--to", "2026-03-01"], /after --to/],
    [["variance", "--count", "Nope"], /No count is named "Nope"/],
    [["variance", "--count", "2026-08-24"], /is the first count/],
    [["order", "--at", "soon"], /--at: "soon" is no moment/],
    [["order", "--supplier", "Nope"], /No supplier is named "Nope"/],
    [["order", "--budget", "much"], /--budget: "much"/],
    [["forecast", "--days", "0"], /--days: "0"/],
    [["cost", "--drink", "Nope"], /No drink with a spec is named "Nope"/],
    [["trend", "--item", "Nope"], /No item is named "Nope"/],
    [["sales"], /Name the sales files/],
    [["sales", "nowhere.csv"], /nowhere\.csv: there is no such file/],
    [["sales", "--undo", "999"], /999/],
  ])("%j ends with 2 and says what to do", async (args, message) => {
    const { status, err, out } = await runUllage(...args, "--db", db);
    expect({ status, out }).toEqual({ status: 2, out: "" });
    expect(err).toMatch(message);
  });

  it("does not make a database by asking it something", async () => {
    const none = join(dir, "none.db");
    const { status, err } = await runUllage("variance", "--db", none);
    expect(status).toBe(2);
    expect(err).toMatch(/no database here yet/);
    expect(existsSync(none)).toBe(false);
  });

  it("knows no other command, and helps", async () => {
    expect(await runUllage("frobnicate")).toMatchObject({ status: 2 });
    const { out, status } = await runUllage("variance", "--help");
    expect(status).toBe(0);
    expect(out).toMatch(/Example:\n {2}\$ ullage variance/);
  });

  it("leaves the database as it was when a book is wrong", async () => {
    const bad = join(dir, "bad");
    await runUllage("export", bad, "--db", db);
    const packs = join(bad, "packs.csv");
    writeFileSync(packs, readFileSync(packs, "utf8").replace(/,750,/, ",-750,"));
    const before = await jsonOf("variance", "--db", db);
    const { status, err } = await runUllage("load", bad, "--db", db);
    expect(status).toBe(2);
    expect(err).toMatch(/packs\.csv row \d+, amount: "-750" must be more than 0/);
    expect(await jsonOf("variance", "--db", db)).toEqual(before);
  }, 60_000);
});
