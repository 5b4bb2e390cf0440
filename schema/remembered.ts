// What is remembered about objects, kept on the objects themselves, so that it goes when they go. A WeakMap would say the same, but
// the engine's quick collections take all its values for living: what was remembered of a thousand files would be copied about
// until the next thorough one.

export class Remembered<K extends object, V> {
  get(about: K): V | undefined {
    const notes = Noted.of(about);
    const at = notes === undefined ? -1 : notes.indexOf(this);
    return at === -1 ? undefined : (notes?.[at + 1] as V);
  }

  set(about: K, value: V): void {
    const notes = Noted.of(about) ?? Noted.begin(about);
    const at = notes.indexOf(this);
    if (at === -1) notes.push(this, value);
    else notes[at + 1] = value;
  }
}

class Given {
  constructor(object: object) {
    // biome-ignore lint/correctness/noConstructorReturn: what a base class returns is the object that gets the private field below.
    return object;
  }
}

/** Gives any object a private list: each rememberer, and behind it what it remembers. */
class Noted extends Given {
  #notes: unknown[] = [];

  static of(object: object): unknown[] | undefined {
    return #notes in object ? object.#notes : undefined;
  }

  static begin(object: object): unknown[] {
    return new Noted(object).#notes;
  }
}
