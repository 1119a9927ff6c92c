import { BaseSequencer, type TestSpecification } from "vitest/node";

const PROJECTS = ["screens", "program", "words"];

/** What takes longest, longest first. Nothing but the order of a run hangs on it. */
const LONGEST = [
  "browser/screens",
  "browser/count",
  "browser/prep",
  "variance/hit-rates",
  "variance/simulated",
  "sales/import/kill",
  "faults/kill",
  "faults/backup",
  "db/import-plan",
  "prep/against-full-vessel",
  "doors/body",
  "cli/contract",
  "db/book-round-trip",
  "sales/read/regular",
  "orders/par-covers",
  "fuzz/routes",
];

/**
 * One project after the other, as a worker serves one, and in each the longest files first, so that both workers end at about
 * the same time.
 */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const asUsual = await super.sort(files);
    return asUsual.sort((one, other) => placeOf(one) - placeOf(other));
  }
}

function placeOf({ moduleId, project }: TestSpecification): number {
  const place = LONGEST.findIndex((name) => moduleId.endsWith(`/tests/${name}.test.ts`));
  return PROJECTS.indexOf(project.name) * LONGEST.length + (place < 0 ? LONGEST.length - 1 : place);
}
