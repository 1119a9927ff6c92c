import { expect, it } from "vitest";
import { keep, kept } from "../../web/kept.ts";

/** A device's storage that holds so many keys. */
function storageOf(most: number): Storage {
  const held = new Map<string, string>();
  return {
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, text: string) => {
      if (!held.has(key) && held.size >= most) throw new DOMException("Full.", "QuotaExceededError");
      held.set(key, text);
    },
  } as Storage;
}

it("gives back what was kept, and nothing for what never was", () => {
  const storage = storageOf(1);
  expect(keep("venue", { name: "The Lantern Room" }, storage)).toBe(true);
  expect(kept("venue", storage)).toEqual({ name: "The Lantern Room" });
  expect(kept("count", storage)).toBeUndefined();
});

it("says when the storage is full, and throws nothing", () => {
  const storage = storageOf(0);
  expect(keep("venue", { name: "The Lantern Room" }, storage)).toBe(false);
  expect(kept("venue", storage)).toBeUndefined();
});

it.each(["undefined", "", '{"name":"The La'])("takes %j for nothing kept", (text) => {
  const storage = storageOf(1);
  storage.setItem("venue", text);
  expect(kept("venue", storage)).toBeUndefined();
});
