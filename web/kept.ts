/** Keeps a value on this device under a key. Gives false where the storage is full or forbidden: it lives on in the page alone. */
export function keep(key: string, value: unknown, storage = localStorage): boolean {
  try {
    storage.setItem(key, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

/** What was kept under a key; undefined when nothing was, or nothing that can be read: a screen never fails for it. */
export function kept<T>(key: string, storage = localStorage): T | undefined {
  try {
    return JSON.parse(storage.getItem(key) ?? "") as T;
  } catch {
    return undefined;
  }
}
