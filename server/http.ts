import type { Context } from "hono";
import { HTTPException } from "hono/http-exception";
import { describeRoute, validator } from "hono-openapi";
import type { z } from "zod";
import { problemsOf, statusOf } from "#server/cli/fault.ts";
import { faultText } from "#server/fault-text.ts";
import { YoungBookError } from "#server/young-book-error.ts";

/** One thing wrong with a request, said as everywhere in the product. */
export type Problem = { field: string; message: string };

/** Says in the API's document what a route is for. */
export function about(summary: string) {
  return describeRoute({
    summary,
    responses: {
      200: { description: "Done" },
      422: { description: "Wrong input: { problems: [{ field, message }] }; nothing was changed" },
    },
  });
}

/** Checks one part of a request; a wrong one is answered 422 with every problem and goes no further. */
export function checked<Target extends "json" | "query" | "param" | "form", Schema extends z.ZodType>(
  target: Target,
  schema: Schema,
) {
  return validator(target, schema, (result, c) => {
    if (result.success) return;
    const problems = result.error.map(({ path = [], message }) => ({
      field: path.map((step) => (typeof step === "object" ? String(step.key) : String(step))).join("."),
      message,
    }));
    return c.json({ problems }, 422);
  });
}

/** Turns what a handler threw into the API's one shape of error; faults of the program are logged, not told. */
export function answerFault(error: Error, c: Context): Response {
  if (error instanceof HTTPException) {
    return c.json(
      { problems: [{ field: "", message: error.message || "The request cannot be read." }] },
      error.status,
    );
  }
  const problems = problemsOf(error);
  if (problems !== undefined) {
    const field = error instanceof YoungBookError ? error.needs : "";
    return c.json({ problems: problems.map((message) => ({ field, message })) }, statusOf(error));
  }
  console.error(faultText(error));
  return c.json(
    { problems: [{ field: "", message: "Something went wrong in the program. Nothing was changed." }] },
    500,
  );
}
