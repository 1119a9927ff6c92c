import "./confirm-dialog.css";
import { type ReactNode, useEffect, useId, useRef } from "react";
import { say } from "../texts/say.ts";
import { Button } from "./Button.tsx";

type Props = {
  isOpen: boolean;
  title: string;
  /** What the act does, in the words of its button: "Place order". */
  act: string;
  isBusy?: boolean;
  /** Something that the act needs is missing. */
  isOff?: boolean;
  onConfirm: () => void;
  onCancel: () => void;
  children: ReactNode;
};

/** Asks once before an act that leaves the bar: the browser's own modal dialog, which traps focus and closes on Escape. */
export function ConfirmDialog({
  isOpen,
  title,
  act,
  isBusy = false,
  isOff = false,
  onConfirm,
  onCancel,
  children,
}: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    if (isOpen) dialog.current?.showModal();
    else dialog.current?.close();
  }, [isOpen]);
  return (
    <dialog ref={dialog} className="confirm" aria-labelledby={titleId} onClose={onCancel}>
      <h2 id={titleId}>{title}</h2>
      {isOpen ? children : null}
      <div className="confirm-acts">
        <Button onClick={onCancel}>{say("parts.notYet")}</Button>
        <Button kind="main" onClick={onConfirm} disabled={isOff} isBusy={isBusy}>
          {act}
        </Button>
      </div>
    </dialog>
  );
}
