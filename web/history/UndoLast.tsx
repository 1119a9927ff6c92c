import { useEffect } from "react";
import { Button } from "../parts/Button.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { actAndFacts } from "./act-words.ts";
import type { Act } from "./history-queries.ts";
import type { Undo } from "./use-undo.ts";

/** The last act that can be undone, by one key: Control or Command and Z, as everywhere. */
export function UndoLast({ act, undo }: { act: Act; undo: Undo }) {
  const { seq } = act;
  const { title, what } = actAndFacts(act, useVenue());
  const { mutate, isPending } = undo;
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const isUndo = (event.ctrlKey || event.metaKey) && !event.shiftKey && event.key.toLowerCase() === "z";
      if (!isUndo || isPending || isTyping(event.target)) return;
      event.preventDefault();
      mutate(seq);
    };
    window.addEventListener("keydown", press);
    return () => window.removeEventListener("keydown", press);
  }, [seq, mutate, isPending]);
  return (
    <p className="undo-last">
      <Button disabled={isPending} aria-keyshortcuts="Control+Z Meta+Z" onClick={() => mutate(seq)}>
        {say("history.undoLast")}
      </Button>
      <span className="soft">
        {title}: {what}
      </span>
    </p>
  );
}

/** In a field the same key takes back what was typed. */
function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest("input, textarea, select") !== null;
}
