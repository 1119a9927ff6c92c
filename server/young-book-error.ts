import { NotFoundError } from "#db/errors.ts";

/** What a question needs that a young book has not got yet. */
export type Needs = "first-fact" | "second-count" | "more-sales";

/** Something is asked that a young book cannot answer yet: a beginning, no fault, and a screen says how to get there. */
export class YoungBookError extends NotFoundError {
  readonly needs: Needs;

  constructor(needs: Needs, message: string) {
    super(message);
    this.needs = needs;
  }
}
