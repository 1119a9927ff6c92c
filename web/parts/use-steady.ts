import { useCallback, useLayoutEffect, useRef } from "react";

/** One function for as long as the part stands, doing what it was last given: what is remembered need not be drawn anew for it. */
export function useSteady<Args extends unknown[]>(act: (...args: Args) => void): (...args: Args) => void {
  const last = useRef(act);
  useLayoutEffect(() => {
    last.current = act;
  });
  return useCallback((...args: Args) => last.current(...args), []);
}
