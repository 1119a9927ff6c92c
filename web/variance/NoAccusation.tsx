/** Shown wherever a variance is. */
export function NoAccusation() {
  return (
    <p className="no-accusation">
      <strong>A variance is no accusation.</strong> It says that the numbers do not meet, not who or what made
      them differ. Check counts, invoices and specs first.
    </p>
  );
}
