import { newSecret } from "#server/people/secrets.ts";

/** A token for scripts; what it begins with lets scanners of source code find one that was left lying about. */
export function newToken(): string {
  return `ullage_${newSecret()}`;
}
