import { Link } from "@tanstack/react-router";
import { Check, Circle, Eye } from "lucide-react";
import type { WeekStep } from "../answers.ts";
import { say } from "../texts/say.ts";
import { stepDetail } from "./step-detail.ts";

const STATES = {
  due: { word: "week.due", icon: Circle },
  attention: { word: "week.attention", icon: Eye },
  done: { word: "week.done", icon: Check },
} as const;

const TITLES = {
  count: "shell.count",
  sales: "shell.sales",
  "ring-names": "week.ringNames",
  variance: "shell.variance",
  close: "week.closeWeek",
  order: "shell.order",
  prep: "shell.prep",
} as const;

/** The steps of a bar's week in order, each with its state in words. */
export function Steps({ steps }: { steps: readonly WeekStep[] }) {
  return (
    <section>
      <h2>{say("week.steps")}</h2>
      <ol className="ruled steps">
        {steps.map((step) => (
          <Step key={step.id} step={step} />
        ))}
      </ol>
    </section>
  );
}

function Step({ step }: { step: WeekStep }) {
  const { id, state, href } = step;
  const { word, icon: Icon } = STATES[state];
  return (
    <li className={`step step-${state}`}>
      <Link to={href} className="step-title">
        {say(TITLES[id])}
      </Link>
      <span className="step-state">
        <Icon aria-hidden="true" size={16} strokeWidth={2} />
        {say(word)}
      </span>
      <span className="step-detail">{stepDetail(step)}</span>
    </li>
  );
}
