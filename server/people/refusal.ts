import { HTTPException } from "hono/http-exception";
import { waitWords } from "#server/people/throttle.ts";

/** Nobody is signed in, or not rightly. */
export function notSignedIn(message: string): HTTPException {
  return new HTTPException(401, { message });
}

/** Somebody is, and may not do this. */
export function notAllowed(message: string): HTTPException {
  return new HTTPException(403, { message });
}

/** Too many wrong tries; says for how long to wait and nothing about whether the name exists. */
export class TooManyTries extends HTTPException {
  readonly seconds: number;
  constructor(seconds: number) {
    super(429, { message: `Too many wrong tries. Wait ${waitWords(seconds)}, then try again.` });
    this.seconds = seconds;
  }
}
