import "../support/english.ts";
import { expect, it } from "vitest";
import type { WeekStep } from "../../web/answers.ts";
import { nextStep } from "../../web/week/next-step.ts";
import { stepDetail } from "../../web/week/step-detail.ts";

const step = (id: WeekStep["id"], state: WeekStep["state"]): WeekStep => ({
  ...{ id, state, title: "", detail: "", href: "/" },
});

it("takes what is due before what needs a look, and waits with a variance until there is a second count", () => {
  const steps = [step("count", "done"), step("ring-names", "attention"), step("variance", "due")];
  expect(nextStep(steps)?.id).toBe("ring-names");
  expect(nextStep([...steps, step("order", "due")])?.id).toBe("order");
  expect(nextStep([step("count", "done"), step("variance", "due")])).toBeUndefined();
});

it("writes the days of a step as the screen does, and a count's name as it was given", () => {
  expect(stepDetail({ id: "sales", detail: "2 days are missing after 2026-11-22." })).toBe(
    "2 days are missing after Sun\u00a022\u00a0Nov.",
  );
  const detail = 'Last counted whole today; "2026-11-23" holds 4 of 70 items.';
  expect(stepDetail({ id: "count", detail })).toBe(detail);
});
