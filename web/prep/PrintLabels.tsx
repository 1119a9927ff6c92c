import { useQueryClient } from "@tanstack/react-query";
import { useEffect, useState } from "react";
import { createPortal } from "react-dom";
import type { Label } from "#engine/prep/label.ts";
import { Button } from "../parts/Button.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { problemsOf } from "../parts/Problems.tsx";
import { useLabelSettings } from "./label-settings.ts";
import { cardQuery } from "./prep-queries.ts";

type Props = { batches: readonly { prep: string; make: number }[]; date: string; label?: string };

/** Fetches the labels of batches and prints them, and nothing else, on one sheet. */
export function PrintLabels({ batches, date, label = "Print labels" }: Props) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const [labels, setLabels] = useState<Label[]>([]);
  const fetchLabels = async () => {
    const cards = batches.map(({ prep, make }) => queryClient.fetchQuery(cardQuery({ prep, date, make })));
    try {
      setLabels((await Promise.all(cards)).map((card) => card.label));
    } catch (error) {
      notify({
        text: problemsOf(error)
          .map(({ message }) => message)
          .join(" "),
      });
    }
  };
  return (
    <>
      <Button disabled={batches.length === 0} onClick={() => void fetchLabels()}>
        {label}
      </Button>
      {labels.length === 0 ? null : <LabelSheet labels={labels} onPrinted={() => setLabels([])} />}
    </>
  );
}

function LabelSheet({ labels, onPrinted }: { labels: readonly Label[]; onPrinted: () => void }) {
  // Read anew for each printing: the settings may have changed since the screen was opened.
  const { stock, dayLine } = useLabelSettings();
  useEffect(() => {
    document.documentElement.classList.add("print-labels");
    window.addEventListener("afterprint", onPrinted, { once: true });
    window.print();
    return () => {
      document.documentElement.classList.remove("print-labels");
      window.removeEventListener("afterprint", onPrinted);
    };
  }, [onPrinted]);
  return createPortal(
    <div className={`label-sheet labels-${stock}`}>
      {labels.map(({ batch, lines: [name, ...lines] }) => (
        <div key={`${name} ${batch}`} className="label">
          <strong>{name}</strong>
          {lines.map((line) => (
            <span key={line}>{line}</span>
          ))}
          {dayLine.trim() === "" ? null : <span className="label-day-line">{dayLine}</span>}
        </div>
      ))}
    </div>,
    document.body,
  );
}
