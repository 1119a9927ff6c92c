import "./busy.css";

/** Work under way, in words; the line moves unless motion is unwelcome. */
export function Busy({ what }: { what: string }) {
  return (
    <p className="busy" role="status">
      {what} …
    </p>
  );
}
