import { type ClientResponse, hc, type InferResponseType } from "hono/client";
import type { AppType } from "#server/app.ts";
import { language } from "./texts/language.ts";
import { say } from "./texts/say.ts";

/** One thing that is wrong, in a full sentence; `field` names the input it belongs to. */
export type Problem = { field: string; message: string };

/** The event that tells of an answer for which nobody is signed in (any more). */
export const SIGNED_OUT = "ullage-signed-out";

/** What the server refused, or that it could not be reached (status 0). */
export class ProblemError extends Error {
  readonly status: number;
  readonly problems: Problem[];

  constructor(status: number, problems: Problem[]) {
    super(problems.map(({ message }) => message).join(" "));
    this.name = "ProblemError";
    this.status = status;
    this.problems = problems;
  }
}

/** The server's routes, typed by the server itself: `answerOf(server.week.$get())`. */
export const server = hc<AppType>("/", { fetch: reach }).api;

/** The answer of a route when all is well: `Answer<typeof server.week.$get>`. */
export type Answer<Route> = InferResponseType<Route, 200>;

/** The body of an answer. Throws ProblemError when it is a refusal, or did not come whole. */
export async function answerOf<Body>(asked: Promise<ClientResponse<Body>>): Promise<Body> {
  const response = await asked;
  const body: unknown = await response.json().catch(() => undefined);
  if (!response.ok) throw new ProblemError(response.status, problemsIn(body, response.status));
  // Every answer has a body; this one was cut off, or is not from here, as a guest network's page to sign in is.
  if (body === undefined) throw outOfReach();
  return body as Body;
}

/** fetch in the language of this device, with a lost connection told in words. */
export async function reach(input: RequestInfo | URL, request?: RequestInit): Promise<Response> {
  const headers = new Headers(request?.headers);
  headers.set("accept-language", language);
  const response = await fetch(input, { ...request, headers }).catch(() => undefined);
  if (response?.status === 401) window.dispatchEvent(new Event(SIGNED_OUT));
  if (response !== undefined) return response;
  throw outOfReach();
}

function outOfReach(): ProblemError {
  return new ProblemError(0, [{ field: "", message: say("shell.noReach") }]);
}

function problemsIn(body: unknown, status: number): Problem[] {
  const problems = (body as { problems?: Problem[] } | undefined)?.problems;
  if (Array.isArray(problems) && problems.length > 0) return problems;
  return [{ field: "", message: say("shell.noReason", { status }) }];
}
