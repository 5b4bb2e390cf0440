// An object whose values are worked out when they are first asked for, each once. Most hovers and checks ask for one or two of the
// figures of a solution, and some of them cost a solve.

export function lazily<T extends object>(makers: { readonly [K in keyof T]: () => T[K] }): T {
  const made = {};
  for (const [key, make] of Object.entries(makers) as [string, () => unknown][]) {
    Object.defineProperty(made, key, {
      configurable: true,
      enumerable: true,
      get() {
        const value = make();
        Object.defineProperty(made, key, { value, enumerable: true });
        return value;
      },
    });
  }
  return made as T;
}
