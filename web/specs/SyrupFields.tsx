import { useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import { newSyrup, readRatio, type NewSyrup as Syrup, sweetenerNamed } from "#engine/prep/new-syrup.ts";
import { Field, Select } from "../parts/Field.tsx";
import { typedAmount } from "../prep/typed-amount.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";

const WAYS = [
  { value: "weight", text: "specs.wayWeight" },
  { value: "volume", text: "specs.wayVolume" },
  { value: "brix", text: "specs.wayBrix" },
] as const;

type Way = (typeof WAYS)[number]["value"];

/** How a syrup is asked for, as typed. */
export type SyrupWish = { sweetener: string; way: Way; strength: string; volume: string };

type Props = {
  sweeteners: readonly string[];
  water: string;
  onSyrup: (syrup: Syrup, lines: string) => void;
};

/** Sweetener, strength and volume of a syrup; weights follow, as spec lines, with every change. */
export function SyrupFields({ sweeteners, water, onSyrup }: Props) {
  const venue = useVenue();
  const [wish, setWish] = useState<SyrupWish>({
    sweetener: sweeteners[0] ?? "",
    way: "weight",
    strength: "",
    volume: "1000",
  });
  const { sweetener, way, strength, volume } = wish;
  const reckoned = reckon(wish, venue);
  const change = (part: Partial<SyrupWish>) => {
    const next = { ...wish, ...part };
    setWish(next);
    const answer = reckon(next, venue);
    if (answer === null || "problem" in answer) return;
    const { sweetenerG, waterMl } = answer.syrup;
    onSyrup(answer.syrup, `${sweetenerG} g ${next.sweetener}\n${waterMl} ml ${water}`);
  };
  if (sweeteners.length === 0) {
    return <p>{say("specs.noSweetener")}</p>;
  }
  return (
    <>
      <div className="field-row">
        <Select
          label={say("specs.sweetenedWith")}
          options={sweeteners}
          value={sweetener}
          onChange={(event) => change({ sweetener: event.target.value })}
        />
        <Select
          label={say("specs.givenAs")}
          options={WAYS.map(({ value, text }) => ({ value, label: say(text) }))}
          value={way}
          onChange={(event) => change({ way: event.target.value as Way, strength: "" })}
        />
        <Field
          label={say(way === "brix" ? "specs.wayBrix" : "specs.ratio")}
          value={strength}
          placeholder={way === "brix" ? "50" : "1:1"}
          onChange={(event) => change({ strength: event.target.value })}
        />
        <Field
          label={say("specs.toMake")}
          inputMode="decimal"
          value={volume}
          onChange={(event) => change({ volume: event.target.value })}
        />
      </div>
      <p role="status">{reckoned !== null && "problem" in reckoned ? reckoned.problem : ""}</p>
    </>
  );
}

/** Null until a strength is typed. */
function reckon(
  { way, strength, volume, sweetener }: SyrupWish,
  venue: ReturnType<typeof useVenue>,
): { syrup: Syrup } | { problem: string } | null {
  if (strength.trim() === "") return null;
  const volumeMl = typedAmount(volume, "ml", venue);
  if (volumeMl === undefined || volumeMl <= 0) return { problem: say("specs.typeVolume") };
  const kind = sweetenerNamed(sweetener);
  if (kind === undefined) return { problem: say("specs.chooseSweetener") };
  const brix = readAmount(strength, { decimalComma: true });
  const ratio = readRatio(strength);
  try {
    if (way === "brix") {
      if (brix === undefined || brix <= 0) return { problem: say("specs.typeBrix") };
      return { syrup: newSyrup({ wish: { way, brix }, volumeMl, sweetener: kind }) };
    }
    if (ratio === undefined) return { problem: say("specs.typeRatio") };
    return { syrup: newSyrup({ wish: { way, ...ratio }, volumeMl, sweetener: kind }) };
  } catch (error) {
    if (error instanceof RangeError) return { problem: say("specs.outOfReach") };
    throw error;
  }
}
