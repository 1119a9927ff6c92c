type Props = {
  name: string;
  options: readonly { value: string; label: string }[];
  value: string;
  onPick: (value: string) => void;
};

/** A few words side by side, one of them chosen. */
export function Choice({ name, options, value, onPick }: Props) {
  return (
    <fieldset className="choice" aria-label={name}>
      {options.map((option) => (
        <button
          key={option.value}
          type="button"
          aria-pressed={option.value === value}
          onClick={() => onPick(option.value)}
        >
          {option.label}
        </button>
      ))}
    </fieldset>
  );
}
