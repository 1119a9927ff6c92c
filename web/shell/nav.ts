import type { Power } from "#server/people/permissions.ts";
import { useSignedIn } from "../people/signed-in.ts";
import type { ShellIconName } from "./icons.tsx";

export type Destination = {
  to: string;
  label: string;
  icon: ShellIconName;
  onPhone: boolean;
  /** What it takes to see it. */
  needs?: Power;
};

/** The screens in the order of a bar's week; five of them stay in reach of the thumb. */
const DESTINATIONS: readonly Destination[] = [
  { to: "/", label: "This week", icon: "week", onPhone: true },
  { to: "/count", label: "Count", icon: "count", onPhone: true, needs: "count" },
  { to: "/sales", label: "Sales", icon: "sales", onPhone: false, needs: "runBar" },
  { to: "/variance", label: "Variance", icon: "variance", onPhone: true, needs: "seeCosts" },
  { to: "/report", label: "Owner’s report", icon: "report", onPhone: false, needs: "seeCosts" },
  { to: "/order", label: "Order", icon: "order", onPhone: true, needs: "runBar" },
  { to: "/prep", label: "Prep", icon: "prep", onPhone: true },
  { to: "/forecast", label: "Forecast", icon: "forecast", onPhone: false },
  { to: "/plan", label: "What if", icon: "plan", onPhone: false, needs: "seeCosts" },
  { to: "/specs", label: "Specs", icon: "specs", onPhone: false },
  { to: "/stock", label: "Stock", icon: "stock", onPhone: false },
  { to: "/movements", label: "Deliveries & losses", icon: "movements", onPhone: false },
  { to: "/history", label: "History", icon: "history", onPhone: false, needs: "runBar" },
];

/** Those that whoever is signed in may go to; none before anybody is. */
export function useDestinations(): readonly Destination[] {
  const powers = useSignedIn()?.powers;
  if (powers === undefined) return [];
  return DESTINATIONS.filter(({ needs }) => needs === undefined || powers.includes(needs));
}
