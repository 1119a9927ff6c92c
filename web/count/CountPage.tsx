import "./count.css";
import { lazyRouteComponent, useSearch } from "@tanstack/react-router";
import { Suspense } from "react";
import { Busy } from "../parts/Busy.tsx";
import { say } from "../texts/say.ts";

const StartCount = lazyRouteComponent(() => import("./StartCount.tsx"), "StartCount");
const OpenCount = lazyRouteComponent(() => import("./OpenCount.tsx"), "OpenCount");

/** The weekly count: begin or continue one, choose an area, then item by item in shelf order. */
export function CountPage() {
  const { count, items } = useSearch({ from: "/count" });
  return (
    <Suspense fallback={<Busy what={say("count.opening")} />}>
      {count === undefined ? (
        <StartCount items={items} />
      ) : (
        <OpenCount key={`${count} ${items ?? ""}`} name={count} items={items} />
      )}
    </Suspense>
  );
}
