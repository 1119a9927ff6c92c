import type { WeekStep } from "../answers.ts";
import { formatDate } from "../format.ts";

/** What a step says, its days written as everywhere on screen; names of counts stay as they were given. */
export function stepDetail({ id, detail }: Pick<WeekStep, "id" | "detail">): string {
  return id === "count" ? detail : detail.replace(/\b\d{4}-\d{2}-\d{2}\b/g, (date) => formatDate(date));
}
