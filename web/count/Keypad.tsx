import { type MouseEvent, memo } from "react";
import { say } from "../texts/say.ts";
import { CountIcon } from "./CountIcon.tsx";
import { isSecondTap } from "./second-tap.ts";

type Props = {
  /** What stands left of the nought: a point for open containers and decimals, a plus between weights. */
  mark: "." | "+";
  markName: string;
  onKey: (key: string) => void;
  onErase: () => void;
  onNone: () => void;
  onSkip: () => void;
};

/** Number keys under the thumb; the device's own keyboard stays away and covers nothing. */
export const Keypad = memo(function Keypad({ mark, markName, onKey, onErase, onNone, onSkip }: Props) {
  const digit = (key: string) => <Key key={key} label={key} onPress={() => onKey(key)} />;
  return (
    <fieldset className="keypad" aria-label={say("count.keys")} onClickCapture={dropSecondTap}>
      {["1", "2", "3"].map(digit)}
      <button type="button" className="key key-word" onClick={onNone}>
        {say("count.noneKey")}
      </button>
      {["4", "5", "6"].map(digit)}
      <button type="button" className="key key-word key-quiet" onClick={onSkip}>
        {say("count.skipKey")}
      </button>
      {["7", "8", "9"].map(digit)}
      <button type="submit" className="key key-next">
        {say("count.nextKey")}
      </button>
      <Key label={mark} name={markName} onPress={() => onKey(mark)} />
      {digit("0")}
      <Key label={<CountIcon name="erase" size={24} />} name={say("count.erase")} onPress={onErase} />
    </fieldset>
  );
});

/** Only of the keys that enter or leave an item: a quick figure is one of the next. */
function dropSecondTap(event: MouseEvent): void {
  if (!isSecondTap(event) || !(event.target as Element).matches(".key-word, .key-next")) return;
  event.preventDefault();
  event.stopPropagation();
}

function Key({ label, name, onPress }: { label: React.ReactNode; name?: string; onPress: () => void }) {
  return (
    <button
      type="button"
      className="key"
      aria-label={name}
      // The field keeps the focus, so that hardware keys and thumb work together.
      onPointerDown={(event) => event.preventDefault()}
      onClick={onPress}
    >
      {label}
    </button>
  );
}
