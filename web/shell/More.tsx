import { Link } from "@tanstack/react-router";
import { Ellipsis } from "lucide-react";
import { useId, useRef } from "react";
import { DESTINATIONS } from "./nav.ts";
import { ThemeSwitch } from "./ThemeSwitch.tsx";

/** The screens that do not fit the bar, opened upward from the thumb as the browser's own popover. */
export function More() {
  const list = useRef<HTMLUListElement>(null);
  const listId = useId();
  return (
    <>
      <button type="button" className="more" popoverTarget={listId}>
        <Ellipsis aria-hidden="true" size={22} strokeWidth={1.6} />
        More
      </button>
      <ul ref={list} id={listId} className="more-list" popover="auto">
        {DESTINATIONS.filter(({ onPhone }) => !onPhone).map(({ to, label, icon: Icon }) => (
          <li key={to}>
            <Link to={to} onClick={() => list.current?.hidePopover()}>
              <Icon aria-hidden="true" size={22} strokeWidth={1.6} />
              {label}
            </Link>
          </li>
        ))}
        <li>
          <ThemeSwitch />
        </li>
      </ul>
    </>
  );
}
