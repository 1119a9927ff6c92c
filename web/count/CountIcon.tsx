const LINES = {
  check: "M4 12.5l5.5 5.5L20 7",
  plus: "M12 5v14M5 12h14",
  minus: "M5 12h14",
  erase: "M9.5 5H21v14H9.5L3 12zM12 9.5l5 5M17 9.5l-5 5",
};

/** The few drawings that a count cannot wait for. */
export function CountIcon({ name, size }: { name: keyof typeof LINES; size: number }) {
  return (
    <svg aria-hidden="true" className="count-icon" viewBox="0 0 24 24" width={size} height={size}>
      <path d={LINES[name]} />
    </svg>
  );
}
