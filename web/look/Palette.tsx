const COLOURS = [
  ["paper", "the ground"],
  ["leaf", "fields, what lies on the ground"],
  ["leaf-pressed", "hovered, code"],
  ["ink", "text"],
  ["ink-soft", "asides, labels"],
  ["rule", "lines between rows"],
  ["rule-strong", "edges of controls, sums"],
  ["brass", "links, what wants a look"],
  ["brass-fill", "marks"],
  ["brass-wash", "problems, the chosen"],
  ["brass-solid", "the one act of a screen"],
  ["stock", "what is on hand"],
  ["stock-band", "its uncertainty"],
  ["focus", "where the keyboard is"],
] as const;

export function Palette() {
  return (
    <section>
      <h2>Palette</h2>
      <ul className="look-palette">
        {COLOURS.map(([name, use]) => (
          <li key={name}>
            <span className="look-colour" style={{ background: `var(--${name})` }} />
            <code>--{name}</code>
            <span className="small soft">{use}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
