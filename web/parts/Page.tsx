import "./page.css";
import { useRouterState } from "@tanstack/react-router";
import { type ReactNode, useEffect, useRef } from "react";

type Props = {
  title: string;
  /** One line: what to do next. */
  next?: ReactNode;
  /** Buttons and links beside the title. */
  actions?: ReactNode;
  children?: ReactNode;
};

/** Where the last screen stood; undefined before the first, where the browser's own start of reading is right. */
let lastPath: string | undefined;

/** A screen: document title, one heading that takes the focus on arrival, and one line of what to do next. */
export function Page({ title, next, actions, children }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  // Not the location asked for, which changes while the screen before is still drawn.
  const path = useRouterState({ select: ({ resolvedLocation }) => resolvedLocation?.pathname });
  useEffect(() => {
    if (path === undefined) return;
    // A screen may also take another's place at the same address, and the focus with it.
    const isLost = document.activeElement === document.body;
    if (lastPath !== undefined && (lastPath !== path || isLost))
      heading.current?.focus({ preventScroll: true });
    lastPath = path;
  }, [path]);
  return (
    <article className="page">
      <title>{`${title} · Ullage`}</title>
      <header className="page-head">
        <div>
          <h1 ref={heading} tabIndex={-1}>
            {title}
          </h1>
          {next === undefined ? null : <p className="page-next">{next}</p>}
        </div>
        {actions === undefined ? null : <div className="page-actions no-print">{actions}</div>}
      </header>
      {children}
    </article>
  );
}
