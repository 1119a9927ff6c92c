import type { Role } from "#db/schema/people.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

export type SessionLimits = { idleMs: number; absoluteMs: number };

/**
 * How long a session lasts untouched, and at most. NIST SP 800-63B gives, for the stronger of its two common levels, at
 * most 12 hours in all and half an hour to an hour untouched, and 30 days for the weaker (from memory). The owner has the
 * stronger; the others' last as long as a shift, a cellar without signal and wet hands ask for (common practice).
 */
export const SESSION_LIMITS: Record<Role, SessionLimits> = {
  owner: { idleMs: HOUR_MS, absoluteMs: 12 * HOUR_MS },
  manager: { idleMs: 2 * HOUR_MS, absoluteMs: 14 * HOUR_MS },
  counter: { idleMs: 2 * HOUR_MS, absoluteMs: 14 * HOUR_MS },
  prep: { idleMs: 4 * HOUR_MS, absoluteMs: 14 * HOUR_MS },
};

export const LONGEST_SESSION_MS = Math.max(...Object.values(SESSION_LIMITS).map((one) => one.absoluteMs));

/** Whether a session is over. One from the future is: the clock was set back, and nobody knows for how long it ran. */
export function isOver(
  { startedAt, lastSeenAt }: { startedAt: string; lastSeenAt: string },
  role: Role,
  nowMs: number,
): boolean {
  const { idleMs, absoluteMs } = SESSION_LIMITS[role];
  const [ageMs, untouchedMs] = [nowMs - Date.parse(startedAt), nowMs - Date.parse(lastSeenAt)];
  return ageMs >= absoluteMs || untouchedMs >= idleMs || ageMs < -HOUR_MS;
}
