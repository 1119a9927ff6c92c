import { Link } from "@tanstack/react-router";
import { useId, useRef } from "react";
import { say } from "../texts/say.ts";
import { LanguageSwitch } from "./LanguageSwitch.tsx";
import { useDestinations } from "./nav.ts";
import { ShellIcon } from "./ShellIcon.tsx";
import { ThemeSwitch } from "./ThemeSwitch.tsx";

/** The screens that do not fit the bar, opened upward from the thumb as the browser's own popover. */
export function More() {
  const list = useRef<HTMLUListElement>(null);
  const listId = useId();
  return (
    <>
      <button type="button" className="more" popoverTarget={listId}>
        <ShellIcon name="more" />
        {say("shell.more")}
      </button>
      <ul ref={list} id={listId} className="more-list" popover="auto">
        {useDestinations()
          .filter(({ onPhone }) => !onPhone)
          .map(({ to, name }) => (
            <li key={to}>
              <Link to={to} onClick={() => list.current?.hidePopover()}>
                <ShellIcon name={name} />
                {say(`shell.${name}`)}
              </Link>
            </li>
          ))}
        <li>
          <ThemeSwitch />
        </li>
        <li>
          <LanguageSwitch />
        </li>
      </ul>
    </>
  );
}
