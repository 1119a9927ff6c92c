const SLOTS_AT_FIRST = 1024;
const ARENA_AT_FIRST = 1 << 14;

/**
 * The different cells of a column by their bytes, each with a place from 0 in the order met: a text is decoded once, however
 * often it stands in the file.
 */
export class ByteDictionary {
  #slots = new Int32Array(SLOTS_AT_FIRST).fill(-1);
  #hashes = new Int32Array(SLOTS_AT_FIRST);
  #starts = new Int32Array(SLOTS_AT_FIRST + 1);
  #arena = new Uint8Array(ARENA_AT_FIRST);
  #count = 0;

  get size(): number {
    return this.#count;
  }

  /** The place of a cell; when it is a new one, the size before, and it is then known. */
  placeOf(bytes: Uint8Array, start: number, end: number): number {
    let hash = end - start;
    for (let at = start; at < end; at += 1) hash = (((hash << 5) - hash) | 0) + (bytes[at] as number);
    hash = Math.imul(hash, 0x9e3779b1);
    hash ^= hash >>> 15;
    const slots = this.#slots;
    const mask = slots.length - 1;
    let slot = hash & mask;
    for (;;) {
      const place = slots[slot] as number;
      if (place < 0) return this.#add(bytes, start, end, hash, slot);
      if (this.#hashes[place] === hash && this.#isSame(place, bytes, start, end)) return place;
      slot = (slot + 1) & mask;
    }
  }

  #isSame(place: number, bytes: Uint8Array, start: number, end: number): boolean {
    const arena = this.#arena;
    const held = this.#starts[place] as number;
    if ((this.#starts[place + 1] as number) - held !== end - start) return false;
    const shift = start - held;
    for (let at = start; at < end; at += 1) if (arena[at - shift] !== bytes[at]) return false;
    return true;
  }

  #add(bytes: Uint8Array, start: number, end: number, hash: number, slot: number): number {
    const place = this.#count;
    const held = this.#starts[place] as number;
    while (held + end - start > this.#arena.length) {
      const larger = new Uint8Array(this.#arena.length * 2);
      larger.set(this.#arena);
      this.#arena = larger;
    }
    this.#arena.set(bytes.subarray(start, end), held);
    this.#starts[place + 1] = held + end - start;
    this.#hashes[place] = hash;
    this.#slots[slot] = place;
    this.#count = place + 1;
    if (this.#count * 2 > this.#slots.length) this.#grow();
    return place;
  }

  #grow(): void {
    const length = this.#slots.length * 2;
    const hashes = new Int32Array(length);
    hashes.set(this.#hashes);
    const starts = new Int32Array(length + 1);
    starts.set(this.#starts);
    const slots = new Int32Array(length).fill(-1);
    for (let place = 0; place < this.#count; place += 1) {
      let slot = (hashes[place] as number) & (length - 1);
      while ((slots[slot] as number) >= 0) slot = (slot + 1) & (length - 1);
      slots[slot] = place;
    }
    this.#hashes = hashes;
    this.#starts = starts;
    this.#slots = slots;
  }
}
