import { useState } from "react";
import { Button } from "../parts/Button.tsx";
import { say } from "../texts/say.ts";
import { DropFiles } from "./DropFiles.tsx";
import { Explanation } from "./Explanation.tsx";
import { FileInHand } from "./FileInHand.tsx";
import type { SalesReport } from "./sales-queries.ts";

type Chosen = { key: number; file: File };

/** Files are looked at one by one, each read in on a person's word; several that leave no question on one word. */
export function ReadFiles() {
  const [chosen, setChosen] = useState<readonly Chosen[]>([]);
  const [isForAll, setForAll] = useState(false);
  const [reports, setReports] = useState<readonly SalesReport[]>([]);
  const [last, setLast] = useState(0);
  const [inHand, ...waiting] = chosen;
  const choose = (files: readonly File[]) => {
    setReports([]);
    setForAll(false);
    setChosen(files.map((file, place) => ({ key: last + place + 1, file })));
    setLast(last + files.length);
  };
  const next = () => setChosen(waiting);
  return (
    <section className="read-files">
      <DropFiles onFiles={choose} />
      {inHand === undefined ? null : (
        <FileInHand
          key={inHand.key}
          file={inHand.file}
          filesLeft={waiting.length}
          isForAll={isForAll}
          onLeave={next}
          onDone={(report) => {
            setReports([report, ...reports]);
            next();
          }}
        />
      )}
      {waiting.length === 0 || isForAll ? null : (
        <p>
          <Button onClick={() => setForAll(true)}>
            {say("sales.readAll", { count: waiting.length + 1 })}
          </Button>{" "}
          <span className="soft">{say("sales.keptBack")}</span>
        </p>
      )}
      {reports.map((report) => (
        <Explanation key={report.importId} report={report} />
      ))}
    </section>
  );
}
