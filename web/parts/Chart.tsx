import "./chart.css";
import { type ReactNode, useEffect, useRef, useState } from "react";
import { say } from "../texts/say.ts";
import { withAxisWords } from "./axis-words.ts";

type PlotModule = typeof import("@observablehq/plot");
export type PlotOptions = import("@observablehq/plot").PlotOptions;

type Props = {
  /** What the chart shows, as a sentence; its numbers stand in `table`. */
  caption: string;
  /** Draws for a width in pixels. Keep it stable with useCallback, as a new one draws anew. */
  draw: (plot: PlotModule, width: number) => PlotOptions;
  /** The same numbers for those who read rather than look. */
  table?: ReactNode;
};

/** A chart as wide as its column, with the table behind it one press away. */
export function Chart({ caption, draw, table }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  useEffect(() => {
    const place = frame.current;
    if (place === null || width === 0) return;
    let isStale = false;
    void import("@observablehq/plot").then((plot) => {
      if (isStale) return;
      const drawn = plot.plot({ ...withAxisWords(draw(plot, width)), width, className: "chart-plot" });
      drawn.setAttribute("role", "img");
      drawn.setAttribute("aria-label", caption);
      // The marks' own labels ("dot", "rule") say nothing, and a bare group may not have one.
      for (const mark of drawn.querySelectorAll("[aria-label]")) mark.removeAttribute("aria-label");
      place.replaceChildren(drawn);
    });
    return () => {
      isStale = true;
    };
  }, [draw, width, caption]);
  return (
    <figure className="chart">
      <figcaption>{caption}</figcaption>
      <div ref={frame} className="chart-frame" />
      {table === undefined ? null : (
        <details className="no-print">
          <summary>{say("parts.asTable")}</summary>
          {table}
        </details>
      )}
    </figure>
  );
}

function useWidth(frame: React.RefObject<HTMLDivElement | null>): number {
  const [width, setWidth] = useState(0);
  useEffect(() => {
    if (frame.current === null) return;
    const observer = new ResizeObserver(([entry]) => setWidth(Math.floor(entry?.contentRect.width ?? 0)));
    observer.observe(frame.current);
    return () => observer.disconnect();
  }, [frame]);
  return width;
}
