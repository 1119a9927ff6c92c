import { lazy, Suspense } from "react";
import type { ShellIconName } from "./icons.tsx";

// The words of the frame are enough to go by: its drawings come after what a screen needs.
const Icon = lazy(() => import("./icons.tsx"));

/** A drawing of the frame; its place is kept while it is fetched, so that nothing moves. */
export function ShellIcon({ name, size = 22 }: { name: ShellIconName; size?: number }) {
  return (
    <Suspense fallback={<svg aria-hidden="true" width={size} height={size} />}>
      <Icon name={name} size={size} />
    </Suspense>
  );
}
