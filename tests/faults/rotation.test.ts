import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planBackups } from "#server/backups/plan.ts";
import { backupName, backupTime, superfluous } from "#server/backups/rotation.ts";

const HOUR_MS = 3_600_000;
const FIRST = Date.parse("2026-01-05T04:00:00Z");

/** Makes backups for a while, as the schedule does, and gives what is left. */
function leftAfter(hours: number, everyHours: number, keep: { daily: number; weekly: number }): string[] {
  let names: string[] = [];
  for (let hour = 0; hour <= hours; hour += everyHours) {
    names = [...names, backupName("bar", new Date(FIRST + hour * HOUR_MS))];
    const gone = new Set(superfluous("bar", names, keep));
    names = names.filter((name) => !gone.has(name));
  }
  return names;
}

describe("of backups once a day", () => {
  it("the last seven days and eight weeks stay after a year", () => {
    const left = leftAfter(365 * 24, 24, { daily: 7, weekly: 8 });
    // Seven days reach into two weeks, of which the last day is kept already.
    expect(left.length).toBeGreaterThanOrEqual(13);
    expect(left.length).toBeLessThanOrEqual(14);
    const agesDays = left.map(
      (name) => (FIRST + 365 * 24 * HOUR_MS - (backupTime("bar", name)?.getTime() ?? 0)) / HOUR_MS / 24,
    );
    expect(Math.max(...agesDays)).toBe(44);
  });

  it("one that was made yesterday is never gone before one that is older", () => {
    expect(leftAfter(3 * 24, 24, { daily: 2, weekly: 0 })).toEqual([
      backupName("bar", new Date(FIRST + 48 * HOUR_MS)),
      backupName("bar", new Date(FIRST + 72 * HOUR_MS)),
    ]);
  });
});

it("of backups every hour, the last day's stay whole", () => {
  const left = leftAfter(100, 1, { daily: 3, weekly: 1 });
  const newest = FIRST + 100 * HOUR_MS;
  const lastDay = left.filter((name) => newest - (backupTime("bar", name)?.getTime() ?? 0) < 24 * HOUR_MS);
  expect(lastDay).toHaveLength(24);
  expect(left.length).toBeLessThanOrEqual(24 + 3 + 1);
});

it("nothing but old backups of the same bar is ever named, and never the newest", () => {
  const moment = fc
    .integer({ min: 0, max: 400 * 24 * 60 })
    .map((minutes) => new Date(FIRST + minutes * 60_000));
  const other = fc.constantFrom(
    "bar.db",
    "other-20260105T040000Z.db",
    "bar-20260105T040000Z.db.part",
    "notes.txt",
    "bar-2026.db",
  );
  fc.assert(
    fc.property(
      fc.array(moment, { minLength: 1, maxLength: 60 }),
      fc.array(other),
      fc.nat(10),
      fc.nat(10),
      (moments, others, daily, weekly) => {
        const names = [...new Set(moments.map((at) => backupName("bar", at)))];
        const gone = superfluous("bar", [...others, ...names], { daily, weekly });
        const newest = [...names].sort().at(-1);
        expect(gone).not.toContain(newest);
        expect(gone.every((name) => names.includes(name))).toBe(true);
        // Doing it twice names nothing more.
        expect(
          superfluous(
            "bar",
            names.filter((name) => !gone.includes(name)),
            { daily, weekly },
          ),
        ).toEqual([]);
      },
    ),
  );
});

describe("what serve is asked for", () => {
  it("is once a day beside the database unless said otherwise", () => {
    expect(planBackups("/srv/bar/my.db", {})).toEqual({
      folder: "/srv/bar/backups",
      bar: "my",
      everyMs: 24 * HOUR_MS,
      keep: { daily: 7, weekly: 8 },
    });
    expect(planBackups("my.db", { backupEvery: "never" })).toBeNull();
    expect(planBackups("my.db", { backupEvery: "30m", keep: "3", backupDir: "/mnt/stick" })).toMatchObject({
      folder: "/mnt/stick",
      everyMs: HOUR_MS / 2,
      keep: { daily: 3, weekly: 0 },
    });
  });

  it.each([
    [{ backupEvery: "often" }, "--backup-every"],
    [{ backupEvery: "0h" }, "--backup-every"],
    [{ backupEvery: "99d" }, "--backup-every"],
    [{ keep: "0,0" }, "--keep"],
    [{ keep: "all" }, "--keep"],
    [{ keep: "-3" }, "--keep"],
  ])("is refused in words when it is %o", (options, said) => {
    expect(() => planBackups("my.db", options)).toThrow(said);
  });
});
