import { type DragEvent, useId, useState } from "react";
import { say } from "../texts/say.ts";

/** Takes files dropped on it or chosen with the device's own picker. */
export function DropFiles({ onFiles }: { onFiles: (files: File[]) => void }) {
  const [isOver, setOver] = useState(false);
  const id = useId();
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    const files = [...event.dataTransfer.files];
    if (files.length > 0) onFiles(files);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is an extra; the file input inside does the same for all
    <div
      className={isOver ? "drop-files drop-over" : "drop-files"}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <label htmlFor={id}>{say("sales.drop")}</label>
      <input
        id={id}
        type="file"
        multiple
        accept=".csv,.tsv,.txt,text/csv,text/plain"
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          event.target.value = "";
          if (files.length > 0) onFiles(files);
        }}
      />
      <p className="soft">{say("sales.dropHint")}</p>
    </div>
  );
}
