/** A file that can be read piece by piece, handed in by whoever can open it. */
export type ByteSource = {
  size: number;
  /** Fills `into` from `at` on with the bytes from `position` on, as many as fit; gives how many there were. */
  read: (into: Uint8Array, at: number, position: number) => number;
  /** Whether bytes are sound UTF-8; they end where a letter ends. */
  isUtf8: (bytes: Uint8Array) => boolean;
};
