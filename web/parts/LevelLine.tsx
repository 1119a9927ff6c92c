import "./level-line.css";
import type { BaseUnit } from "#engine/measure/units.ts";
import { formatAmount } from "../format.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { levelLineScale } from "./level-line-scale.ts";

type Props = {
  /** All in base units. */
  onHand: number;
  sd?: number | null;
  par?: number | null;
  /** Expected use over the days that stock has to last. */
  expectedUse?: number | null;
  onOrder?: number;
  base: BaseUnit;
};

const WIDTH = 200;
const HEIGHT = 24;
const MIDDLE = 13;

/**
 * Stock in one drawing: a line as long as what is on hand, its uncertain end, the part that will likely be used
 * over the days to cover in dots, and a tick at par. The text says the same.
 */
export function LevelLine({ onHand, sd = null, par = null, expectedUse = null, onOrder = 0, base }: Props) {
  const venue = useVenue();
  const x = levelLineScale({ onHand, sd, par, expectedUse, onOrder, width: WIDTH });
  const amount = (value: number) => formatAmount(value, base, venue);
  const words = [
    sd === null || sd === 0
      ? say("parts.onHand", { amount: amount(onHand) })
      : say("parts.onHandAbout", { amount: amount(onHand), sd: amount(sd) }),
    ...(onOrder > 0 ? [say("parts.onOrder", { amount: amount(onOrder) })] : []),
    ...(expectedUse === null ? [] : [say("parts.likelyUsed", { amount: amount(expectedUse) })]),
    ...(par === null ? [say("parts.noPar")] : [say("parts.par", { amount: amount(par) })]),
  ].join("; ");
  const left = expectedUse === null ? onHand : Math.max(0, onHand - expectedUse);
  return (
    <svg className="level-line" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={words}>
      <title>{words}</title>
      {sd === null || sd === 0 ? null : (
        <rect
          className="level-band"
          x={x(Math.max(0, onHand - sd))}
          width={x(onHand + sd) - x(Math.max(0, onHand - sd))}
          y={MIDDLE - 7.5}
          height={15}
        />
      )}
      <line className="level-ground" x1={x(0)} x2={WIDTH - 3} y1={MIDDLE} y2={MIDDLE} />
      {onOrder > 0 ? (
        <line className="level-ordered" x1={x(onHand)} x2={x(onHand + onOrder)} y1={MIDDLE} y2={MIDDLE} />
      ) : null}
      <line className="level-stays" x1={x(0)} x2={x(left)} y1={MIDDLE} y2={MIDDLE} />
      {left < onHand ? (
        <line className="level-used" x1={x(left)} x2={x(onHand)} y1={MIDDLE} y2={MIDDLE} />
      ) : null}
      {par === null ? null : <path className="level-par" d={`M${x(par)} 4v18M${x(par) - 4} 1h8l-4 5z`} />}
    </svg>
  );
}
