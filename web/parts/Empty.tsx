import "./empty.css";
import type { ReactNode } from "react";

/** A place with nothing in it yet: says what will stand here and how to get it there. */
export function Empty({ title, children }: { title: string; children: ReactNode }) {
  return (
    <div className="empty">
      <p className="empty-title">{title}</p>
      <div>{children}</div>
    </div>
  );
}
