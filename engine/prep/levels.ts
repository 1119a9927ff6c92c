import type { Making } from "#engine/prep/making.ts";
import { PrepCycleError } from "#engine/specs/bill.ts";

/**
 * The low-level code of each prep: 0 when no other prep uses it, else one more than the deepest prep that does.
 *
 * Worked off by rising code, a syrup that drinks and a cordial both use is netted once (material requirements
 * planning: items go by the deepest level at which they occur). Throws PrepCycleError, naming the path, where stocked
 * preps are made of each other. Cordial uses syrup → cordial 0, syrup 1.
 */
export function lowLevelCodes(makings: readonly Making[]): Map<string, number> {
  const users = usersOf(makings);
  const codes = new Map<string, number>();
  const codeOf = (prep: string, path: readonly string[]): number => {
    if (path.includes(prep)) throw new PrepCycleError([...path.slice(path.indexOf(prep)), prep].reverse());
    const known = codes.get(prep);
    if (known !== undefined) return known;
    const above = (users.get(prep) ?? []).map((user) => codeOf(user, [...path, prep]));
    const code = above.length === 0 ? 0 : 1 + Math.max(...above);
    codes.set(prep, code);
    return code;
  };
  for (const { prep } of makings) codeOf(prep, []);
  return codes;
}

/** Which preps use a prep directly. */
export function usersOf(makings: readonly Making[]): Map<string, string[]> {
  const made = new Set(makings.map(({ prep }) => prep));
  const users = new Map<string, string[]>();
  for (const { prep, inputs } of makings) {
    for (const { item } of inputs) {
      if (made.has(item)) users.set(item, [...(users.get(item) ?? []), prep]);
    }
  }
  return users;
}
