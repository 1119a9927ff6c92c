const KEY = "ullage-counted-by";

/** Who counts on this device. */
export function counter(): string {
  return localStorage.getItem(KEY) ?? "";
}

export function saveCounter(name: string): void {
  localStorage.setItem(KEY, name.trim());
}
