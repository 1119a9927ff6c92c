import { useId } from "react";
import { formatShare } from "../figures.ts";
import { formatNumber } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { say } from "../texts/say.ts";
import type { SalesJob } from "./sales-queries.ts";

/** How far a file is; it can be stopped until it is being written. */
export function JobProgress({ job, onCancel }: { job: SalesJob; onCancel: () => void }) {
  const { file, state, share, bytes } = job;
  const id = useId();
  const isWriting = state === "writing";
  return (
    <div className="preview job">
      <h2>{file}</h2>
      <p id={id} role="status">
        {isWriting ? say("sales.keeping") : say("sales.reading", { size: sizeWords(bytes) })}
      </p>
      <progress aria-labelledby={id} max={1} {...(isWriting || share === 0 ? {} : { value: share })}>
        {formatShare(share)}
      </progress>
      <Button onClick={onCancel} disabled={isWriting}>
        {say("sales.stop")}
      </Button>
    </div>
  );
}

function sizeWords(bytes: number): string {
  return bytes < 1_000_000
    ? `${formatNumber(Math.max(1, bytes / 1000))} kB`
    : `${formatNumber(bytes / 1_000_000, bytes < 10_000_000 ? 1 : 0)} MB`;
}
