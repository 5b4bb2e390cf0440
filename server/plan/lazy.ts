// An object whose values are worked out when they are first asked for, each once. Most hovers and checks ask for one or two of the
// figures of a solution, and some of them cost a solve.

/**
 * An object of what is `known`, and of what the makers make when they are asked. What is not worked out yet belongs to its kind: `for in`
 * meets it, a spread does not.
 */
export function lazily<T extends object, Known extends object = object>(
  makers: { readonly [K in keyof T]: () => T[K] },
  known?: Known,
): Known & T {
  return new (kindOf(Object.keys(makers)))(makers, known) as Known & T;
}

type Makers = Readonly<Record<string, () => unknown>>;
type Kind = new (makers: Makers, known: object | undefined) => object;

// Getters of each object's own would give each a shape of its own: slow to read, and long to collect. So one class serves all with the
// same keys.
const kinds = new Map<string, Kind>();

function kindOf(keys: readonly string[]): Kind {
  const name = keys.join();
  const known = kinds.get(name);
  if (known !== undefined) return known;
  class Lazy {
    readonly #makers: Makers;

    constructor(makers: Makers, given: object | undefined) {
      Object.assign(this, given);
      this.#makers = makers;
    }

    static make(lazy: Lazy, key: string): unknown {
      return lazy.#makers[key]?.();
    }
  }
  for (const key of keys) {
    Object.defineProperty(Lazy.prototype, key, {
      enumerable: true,
      get(this: Lazy): unknown {
        const value = Lazy.make(this, key);
        Object.defineProperty(this, key, { value, enumerable: true });
        return value;
      },
    });
  }
  kinds.set(name, Lazy);
  return Lazy;
}
