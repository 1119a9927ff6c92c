import type { BaseUnit } from "#engine/measure/units.ts";
import { formatContainers, formatSigned } from "../figures.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";

type Props = {
  /** In base units; null is "not known". */
  amount: number | null;
  base: BaseUnit;
  /** Shows a plus sign too. */
  signed?: boolean;
  /** With both, the amount is shown in containers. */
  containerSize?: number | null;
  packName?: string | null;
};

/** An amount as this venue reads it: 71.0 oz, 2100 ml, 210 cl, or 2.4 × 700 ml. */
export function Quantity({ amount, base, signed = false, containerSize = null, packName = null }: Props) {
  const venue = useVenue();
  if (amount === null) return <span className="soft">{say("parts.notKnown")}</span>;
  const text = signed
    ? formatSigned(amount, base, venue)
    : formatContainers(amount, { base, containerSize, packName }, venue);
  return <span className="number">{text}</span>;
}
