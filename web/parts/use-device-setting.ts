import { useState } from "react";

/** A setting of this device and of nobody else's: kept from one visit to the next where the browser allows it. */
export function useDeviceSetting(name: string, initial: string): [string, (value: string) => void] {
  const key = `ullage-${name}`;
  const [value, setValue] = useState(() => read(key) ?? initial);
  return [
    value,
    (next) => {
      setValue(next);
      try {
        localStorage.setItem(key, next);
      } catch {
        // A full or forbidden store: the setting holds until the page is left.
      }
    },
  ];
}

function read(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}
