import { Link } from "@tanstack/react-router";
import { say, sayWith } from "../texts/say.ts";
import { Empty } from "./Empty.tsx";
import type { Needs } from "./Problems.tsx";

/** Says what is to be done first: a beginning, not a fault. */
export function YoungBook({ needs, message }: { needs: Needs; message: string }) {
  if (needs === "second-count") {
    return (
      <Empty title={say("week.youngCount")}>
        <p>
          {sayWith("week.youngCountMore", { link: <Link to="/count">{say("week.youngCountLink")}</Link> })}
        </p>
      </Empty>
    );
  }
  if (needs === "more-sales") {
    return (
      <Empty title={say("parts.notYet")}>
        <p>{message}</p>
      </Empty>
    );
  }
  return (
    <Empty title={say("week.youngFact")}>
      <p>{sayWith("week.youngFactMore", { link: <Link to="/">{say("week.youngFactLink")}</Link> })}</p>
    </Empty>
  );
}
