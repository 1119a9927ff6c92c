import { type RefObject, useEffect, useRef } from "react";

/** Puts the focus on the first field of a form that has just opened in place of the button that asked for it. */
export function useFocusFirst<Element extends HTMLElement>(): RefObject<Element | null> {
  const place = useRef<Element>(null);
  useEffect(() => place.current?.querySelector<HTMLElement>("input, select, textarea, button")?.focus(), []);
  return place;
}
