type Redaction = {
  /** Fields to empty, at any depth. */
  emptied: readonly string[];
  names: readonly string[];
  /** The name that stays. */
  ownName: string;
};

/**
 * An answer without what somebody may not see: lists are emptied, everything else becomes null, names become "".
 *
 * redacted({ item: "Gin", value: 21 }, { emptied: ["value"], … }) → { item: "Gin", value: null }
 */
export function redacted(answer: unknown, how: Redaction): unknown {
  if (Array.isArray(answer)) return answer.map((one) => redacted(one, how));
  if (typeof answer !== "object" || answer === null) return answer;
  return Object.fromEntries(Object.entries(answer).map(([field, value]) => [field, kept(field, value, how)]));
}

function kept(field: string, value: unknown, how: Redaction): unknown {
  if (how.emptied.includes(field)) return Array.isArray(value) ? [] : null;
  if (how.names.includes(field) && typeof value === "string") return value === how.ownName ? value : "";
  return redacted(value, how);
}
