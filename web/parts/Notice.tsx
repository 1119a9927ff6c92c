import "./notice.css";
import { createContext, type ReactNode, useCallback, useContext, useEffect, useState } from "react";
import { say } from "../texts/say.ts";
import { Button } from "./Button.tsx";

export type NoticeText = {
  text: string;
  /** Offers to take the act back. */
  undo?: (() => void) | undefined;
};

const NoticeContext = createContext<(notice: NoticeText) => void>(() => {});

/** Long enough to read and reach the undo; WCAG 2.2.1 asks for no essential time limit, and every undo is also on its screen. */
const SHOWN_MS = 12_000;

/** Tells what was done, politely: read out, shown for a while, with undo where there is one. */
export function useNotify(): (notice: NoticeText) => void {
  return useContext(NoticeContext);
}

export function NoticeProvider({ children }: { children: ReactNode }) {
  const [notice, setNotice] = useState<NoticeText | null>(null);
  const clear = useCallback(() => setNotice(null), []);
  useEffect(() => {
    if (notice === null) return;
    const timer = setTimeout(clear, SHOWN_MS);
    return () => clearTimeout(timer);
  }, [notice, clear]);
  return (
    <NoticeContext value={setNotice}>
      {children}
      <div className="notice-region" role="status">
        {notice === null ? null : <Notice notice={notice} onClose={clear} />}
      </div>
    </NoticeContext>
  );
}

function Notice({ notice: { text, undo }, onClose }: { notice: NoticeText; onClose: () => void }) {
  return (
    <div className="notice">
      <span>{text}</span>
      {undo === undefined ? null : (
        <Button
          onClick={() => {
            undo();
            onClose();
          }}
        >
          {say("parts.undo")}
        </Button>
      )}
      <Button kind="quiet" onClick={onClose}>
        {say("parts.close")}
      </Button>
    </div>
  );
}
