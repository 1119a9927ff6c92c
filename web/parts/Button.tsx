import "./button.css";
import type { ButtonHTMLAttributes } from "react";

type Props = ButtonHTMLAttributes<HTMLButtonElement> & {
  /** `main` is the one act of a screen; `plain` all others; `quiet` sits in a line of text. */
  kind?: "main" | "plain" | "quiet";
};

export function Button({ kind = "plain", className = "", type = "button", ...rest }: Props) {
  return <button {...rest} type={type} className={`button button-${kind} ${className}`} />;
}
