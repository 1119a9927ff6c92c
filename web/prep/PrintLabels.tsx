import { useQueryClient } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import { createPortal } from "react-dom";
import type { Label } from "#engine/prep/label.ts";
import { Button } from "../parts/Button.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { problemsOf } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";
import { type LabelPage, labelPages } from "./label-pages.ts";
import { type LabelStock, largestPtOf, useLabelSettings } from "./label-settings.ts";
import { measuringLabel } from "./measure-labels.ts";
import { cardQuery } from "./prep-queries.ts";

type Props = {
  labels: readonly Label[];
  kind?: "main" | "plain";
  text?: string;
  /** Whose labels, where several such keys stand on one screen. */
  name?: string;
};

/** Prints the labels of a batch, and nothing else: one for each vessel. */
export function PrintLabels({ labels, kind = "plain", text, name }: Props) {
  const [isPrinting, setPrinting] = useState(false);
  return (
    <>
      <Button
        kind={kind}
        className="wet-key"
        aria-label={name === undefined ? undefined : say("prep.printLabelOf", { name })}
        onClick={() => setPrinting(true)}
      >
        {text ?? say("prep.printLabels", { count: labels.length })}
      </Button>
      {isPrinting ? <LabelSheet labels={labels} onPrinted={() => setPrinting(false)} /> : null}
    </>
  );
}

type PlanProps = { batches: readonly { prep: string; make: number }[]; date: string };

/** Fetches the labels of a plan's batches and prints them. */
export function PrintPlanLabels({ batches, date }: PlanProps) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const [labels, setLabels] = useState<readonly Label[]>([]);
  const fetchLabels = async () => {
    const cards = batches.map(({ prep, make }) => queryClient.fetchQuery(cardQuery({ prep, date, make })));
    try {
      setLabels((await Promise.all(cards)).flatMap((card) => card.labels));
    } catch (error) {
      const text = problemsOf(error).map(({ message }) => message);
      notify({ text: text.join(" ") });
    }
  };
  return (
    <>
      <Button className="wet-key" disabled={batches.length === 0} onClick={() => void fetchLabels()}>
        {say("prep.printAllLabels")}
      </Button>
      {labels.length === 0 ? null : <LabelSheet labels={labels} onPrinted={() => setLabels([])} />}
    </>
  );
}

type SheetProps = { labels: readonly Label[]; onPrinted: () => void };

/** Printed once, with the labels and settings of that moment, whatever is drawn anew behind it meanwhile. */
function LabelSheet({ labels, onPrinted }: SheetProps) {
  const { stock, dayLine } = useLabelSettings();
  const [toPrint] = useState({ labels, stock, dayLine });
  const [pages, setPages] = useState<LabelPage[] | null>(null);
  const done = useRef(onPrinted);
  useEffect(() => {
    let isGone = false;
    // Measured before the type has come, every label would be too large or too small.
    void document.fonts.ready.then(() => {
      if (!isGone) setPages(fitted(toPrint));
    });
    return () => {
      isGone = true;
    };
  }, [toPrint]);
  useEffect(() => {
    if (pages === null) return;
    const printed = () => done.current();
    document.documentElement.classList.add("print-labels");
    window.addEventListener("afterprint", printed, { once: true });
    window.print();
    return () => {
      document.documentElement.classList.remove("print-labels");
      window.removeEventListener("afterprint", printed);
    };
  }, [pages]);
  if (pages === null) return null;
  return createPortal(
    <div className={`label-sheet labels-${toPrint.stock}`}>
      {pages.map(({ sizePt, lines: [head, ...lines] }, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: labels are printed once, in this order.
        <div key={place} className="label" style={{ fontSize: `${sizePt}pt` }}>
          <strong>{head}</strong>
          {lines.map((line) => (
            <span key={line}>{line}</span>
          ))}
        </div>
      ))}
    </div>,
    document.body,
  );
}

type ToPrint = { labels: readonly Label[]; stock: LabelStock; dayLine: string };

function fitted({ labels, stock, dayLine }: ToPrint): LabelPage[] {
  const { fits, done } = measuringLabel(stock);
  const pages = labels.flatMap((label) =>
    labelPages(label, { dayLine, largestPt: largestPtOf(stock), fits }),
  );
  done();
  return pages;
}
