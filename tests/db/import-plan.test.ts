import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { replaceBook } from "#db/book-repository.ts";
import { closeDatabase, type Db, IN_MEMORY, openDatabase } from "#db/open.ts";
import { daySales, importSales, previewImport, saleGroups, undoImport } from "#db/sales-repository.ts";
import { insertImport, planImport } from "#db/stored/sales.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import { DOING, LINE } from "#tests/support/acts.ts";
import { handBook } from "#tests/support/hand-bar.ts";

const ALL = { from: "0001-01-01", to: "9999-12-31" };

async function aBar(): Promise<Db> {
  const db = openDatabase(IN_MEMORY);
  await replaceBook(db, handBook(), [], DOING);
  return db;
}

const read = (lines: readonly SaleLine[]) => ({
  file: "till.csv",
  shape: { files: "till.csv" },
  refused: [],
  lines,
});

const line = fc
  .record({
    day: fc.integer({ min: 1, max: 4 }),
    ringName: fc.constantFrom("Gimlet", "House sour", "Spritz", "Old cuban"),
    modifiers: fc.constantFrom("", "no ice", "double"),
    quantity: fc.integer({ min: 1, max: 3 }),
  })
  .map(({ day, ...rest }): SaleLine => ({ ...LINE, ...rest, businessDate: `2026-03-0${day}` }));
const lines = fc.array(line, { minLength: 1, maxLength: 12 });

async function soldIn(db: Db): Promise<unknown> {
  return { days: await daySales(db, ALL), groups: await saleGroups(db, { ...ALL, splitDates: new Set() }) };
}

describe("an import that was worked out while another one was written", () => {
  it("comes to the same as if the two had come one after the other", async () => {
    await fc.assert(
      fc.asyncProperty(lines, lines, lines, async (before, meanwhile, late) => {
        const [apart, inOrder] = [await aBar(), await aBar()];
        for (const db of [apart, inOrder]) await importSales(db, { ...read(before), ...DOING });
        const plan = planImport(apart, read(late));
        await importSales(apart, { ...read(meanwhile), ...DOING });
        insertImport(apart, read(late), DOING, { plan });
        await importSales(inOrder, { ...read(meanwhile), ...DOING });
        await importSales(inOrder, { ...read(late), ...DOING });
        expect(await soldIn(apart)).toEqual(await soldIn(inOrder));
        closeDatabase(apart);
        closeDatabase(inOrder);
      }),
      { numRuns: 40 },
    );
  });

  it("counts on no import that was undone meanwhile", async () => {
    const db = await aBar();
    const { importId } = await importSales(db, { ...read([LINE]), ...DOING });
    const plan = planImport(db, read([LINE]));
    await undoImport(db, importId, DOING);
    insertImport(db, read([LINE]), DOING, { plan });
    expect((await daySales(db, ALL)).map(({ quantity }) => quantity)).toEqual([LINE.quantity]);
    closeDatabase(db);
  });
});

it("a look says what the import then does, and writes not a single row", async () => {
  await fc.assert(
    fc.asyncProperty(lines, lines, async (before, now) => {
      const db = await aBar();
      await importSales(db, { ...read(before), ...DOING });
      const rows = () => db.sqlite.prepare("select total_changes()").pluck().get();
      const written = rows();
      const seen = await previewImport(db, { lines: now });
      expect(rows()).toBe(written);
      const { importId: _, ...done } = await importSales(db, { ...read(now), ...DOING });
      expect(seen).toEqual(done);
      closeDatabase(db);
    }),
    { numRuns: 40 },
  );
});
