import { closeSync, fsyncSync, openSync } from "node:fs";
import { dirname, resolve } from "node:path";

/** Sees a file's bytes, and its name in its folder, through to the disk: a power cut right after leaves both. */
export function flush(file: string): void {
  flushOne(file);
  // Some systems (Windows) open no folders; there the name is written with the file.
  if (process.platform !== "win32") flushOne(dirname(resolve(file)));
}

function flushOne(path: string): void {
  const handle = openSync(path, "r");
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
