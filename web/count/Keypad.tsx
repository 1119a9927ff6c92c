import { Delete } from "lucide-react";

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
export function Keypad({ mark, markName, onKey, onErase, onNone, onSkip }: Props) {
  const digit = (key: string) => <Key key={key} label={key} onPress={() => onKey(key)} />;
  return (
    <fieldset className="keypad" aria-label="Number keys">
      {["1", "2", "3"].map(digit)}
      <button type="button" className="key key-word" onClick={onNone}>
        None
      </button>
      {["4", "5", "6"].map(digit)}
      <button type="button" className="key key-word key-quiet" onClick={onSkip}>
        Skip
      </button>
      {["7", "8", "9"].map(digit)}
      <button type="submit" className="key key-next">
        Next
      </button>
      <Key label={mark} name={markName} onPress={() => onKey(mark)} />
      {digit("0")}
      <Key label={<Delete aria-hidden="true" size={24} strokeWidth={1.6} />} name="Erase" onPress={onErase} />
    </fieldset>
  );
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
