/** What this device keeps of the person who is signed in: who it is, and under which name they counted and entered. */
const OF_A_PERSON = ["ullage-signed-in", "ullage-counted-by", "ullage-counted-for", "ullage-entered-by"];

/** Whoever signs out leaves no trace here but what is still to be sent. */
export function forgetPerson(): void {
  const keys = Object.keys(localStorage).filter((key) => OF_A_PERSON.some((one) => key.startsWith(one)));
  for (const key of keys) localStorage.removeItem(key);
}
