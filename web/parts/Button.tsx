import "./button.css";
import { type ButtonHTMLAttributes, type MouseEvent, useRef } from "react";

type Props = ButtonHTMLAttributes<HTMLButtonElement> & {
  /** `main` is the one act of a screen; `plain` all others; `quiet` sits in a line of text. */
  kind?: "main" | "plain" | "quiet";
  /** Its act is under way: it cannot be pressed again, and moves until the answer is there. */
  isBusy?: boolean;
};

/** A button; one that is switched off while it has the focus, as during its own act, keeps the focus. */
export function Button({
  kind = "plain",
  className = "",
  type = "button",
  disabled: isOff = false,
  isBusy = false,
  onClick,
  ...rest
}: Props) {
  const button = useRef<HTMLButtonElement>(null);
  const disabled = isOff || isBusy;
  // The browser takes the focus from a disabled button and gives it to nothing.
  const isHeld = disabled && button.current !== null && button.current === document.activeElement;
  const hold = (event: MouseEvent) => event.preventDefault();
  return (
    <button
      {...rest}
      ref={button}
      type={type}
      disabled={disabled && !isHeld}
      aria-disabled={isHeld || undefined}
      aria-busy={isBusy || undefined}
      onClick={isHeld ? hold : onClick}
      className={`button button-${kind} ${className}`}
    />
  );
}
