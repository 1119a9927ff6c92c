import { businessDateOf, localMinute, localToInstant } from "#engine/sales/read/clock.ts";
import { wholeCounts } from "#engine/stock/whole-counts.ts";
import { addDays, type BusinessDate } from "#engine/time.ts";
import { varianceFor } from "#server/reports/variance.ts";
import type { World } from "#server/world.ts";

/** A week that could be closed: up to which day, after which counts, and what would better be settled first. */
export type ClosingOffer = {
  through: BusinessDate;
  opening: string;
  closing: string;
  /** Likely causes of the week's variance that nobody has checked yet. */
  unsettled: number;
};

/** What is closed, and which week comes next. */
export async function closingFor(world: World) {
  const { closing } = world;
  const { venue } = world.facts.catalogue;
  return {
    closed: closing && { ...closing, closedAtLocal: localMinute(closing.closedAt, venue) },
    next: await offerFor(world),
  };
}

/** The week between the last two whole counts, while it is open; null without two. */
export async function offerFor(world: World): Promise<ClosingOffer | null> {
  const counts = wholeCounts(world.facts.counts);
  const [opening, closing] = [counts.at(-2), counts.at(-1)];
  if (opening === undefined || closing === undefined) return null;
  const through = lastDayBefore(world, closing.at);
  if (world.closing !== null && world.closing.through >= through) return null;
  const { causes, items } = await varianceFor(world, { whole: true });
  const isLoud = items.some(({ verdict }) => verdict !== "quiet");
  return { through, opening: opening.name, closing: closing.name, unsettled: isLoud ? causes.length : 0 };
}

/** A count this late in the trading day is taken after service. */
const AFTER_SERVICE_HOURS = 18;

/** The last trading day that is over when a count is taken: its own when it is taken after service, else the one before. */
function lastDayBefore({ facts }: World, at: string): BusinessDate {
  const { venue } = facts.catalogue;
  const date = businessDateOf(at, venue);
  const began = localToInstant(`${date} ${venue.dayEnds}`, venue);
  const hours = (Date.parse(at) - Date.parse(began)) / 3_600_000;
  return hours >= AFTER_SERVICE_HOURS ? date : addDays(date, -1);
}
