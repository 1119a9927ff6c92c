const SLOTS_AT_FIRST = 2048;

/** Pairs of whole numbers, each with a place from 0 in the order met, without a key to build for every look. */
export class PairPlaces {
  #slots = new Int32Array(SLOTS_AT_FIRST);
  #ones = new Int32Array(SLOTS_AT_FIRST);
  #others = new Int32Array(SLOTS_AT_FIRST);
  #count = 0;

  get count(): number {
    return this.#count;
  }

  clear(): void {
    this.#slots.fill(0);
    this.#count = 0;
  }

  oneAt(place: number): number {
    return this.#ones[place] as number;
  }

  otherAt(place: number): number {
    return this.#others[place] as number;
  }

  /** A pair not met before gets the place that `count` was. */
  placeOf(one: number, other: number): number {
    const mask = this.#slots.length - 1;
    let slot = slotOf(one, other) & mask;
    for (;;) {
      const place = (this.#slots[slot] as number) - 1;
      if (place < 0) return this.#add(one, other, slot);
      if (this.#ones[place] === one && this.#others[place] === other) return place;
      slot = (slot + 1) & mask;
    }
  }

  #add(one: number, other: number, slot: number): number {
    const place = this.#count;
    this.#ones[place] = one;
    this.#others[place] = other;
    this.#count = place + 1;
    this.#slots[slot] = this.#count;
    if (this.#count * 2 > this.#slots.length) this.#grow();
    return place;
  }

  #grow(): void {
    const length = this.#slots.length * 4;
    const larger = (column: Int32Array) => {
      const copy = new Int32Array(length);
      copy.set(column);
      return copy;
    };
    this.#ones = larger(this.#ones);
    this.#others = larger(this.#others);
    this.#slots = new Int32Array(length);
    for (let place = 0; place < this.#count; place += 1) {
      let slot = slotOf(this.#ones[place] as number, this.#others[place] as number) & (length - 1);
      while (this.#slots[slot] !== 0) slot = (slot + 1) & (length - 1);
      this.#slots[slot] = place + 1;
    }
  }
}

function slotOf(one: number, other: number): number {
  const mixed = Math.imul(one, 0x9e3779b1) ^ Math.imul(other, 0x85ebca6b);
  return mixed ^ (mixed >>> 15);
}
