import type { Power } from "#server/people/permissions.ts";
import { useSignedIn } from "../people/signed-in.ts";
import type { ShellIconName } from "./icons.tsx";

export type Destination = {
  to: string;
  /** Of its drawing and of its text. */
  name: Exclude<ShellIconName, "more" | "system" | "light" | "dark">;
  onPhone: boolean;
  /** What it takes to see it. */
  needs?: Power;
};

/** The screens in the order of a bar's week; five of them stay in reach of the thumb. */
const DESTINATIONS: readonly Destination[] = [
  { to: "/", name: "week", onPhone: true },
  { to: "/count", name: "count", onPhone: true, needs: "count" },
  { to: "/sales", name: "sales", onPhone: false, needs: "runBar" },
  { to: "/variance", name: "variance", onPhone: true, needs: "seeCosts" },
  { to: "/report", name: "report", onPhone: false, needs: "seeCosts" },
  { to: "/order", name: "order", onPhone: true, needs: "runBar" },
  { to: "/prep", name: "prep", onPhone: true },
  { to: "/forecast", name: "forecast", onPhone: false },
  { to: "/plan", name: "plan", onPhone: false, needs: "seeCosts" },
  { to: "/specs", name: "specs", onPhone: false },
  { to: "/stock", name: "stock", onPhone: false },
  { to: "/movements", name: "movements", onPhone: false },
  { to: "/history", name: "history", onPhone: false, needs: "runBar" },
];

/** Screens that others lead to, with what it takes to see them. */
const BESIDE: readonly Pick<Destination, "to" | "needs">[] = [
  { to: "/prices", needs: "runBar" },
  { to: "/venue", needs: "runBar" },
];

/** What it takes to see the screen at an address, those below it included; undefined when it is for everybody. */
export function needOf(path: string): Power | undefined {
  return [...DESTINATIONS, ...BESIDE].find(({ to }) => `${path}/`.startsWith(`${to}/`))?.needs;
}

/** Those that whoever is signed in may go to; none before anybody is. */
export function useDestinations(): readonly Destination[] {
  const powers = useSignedIn()?.powers;
  if (powers === undefined) return [];
  return DESTINATIONS.filter(({ needs }) => needs === undefined || powers.includes(needs));
}
