// The same function, which runs once: for what is not always wanted.

export function once<T>(make: () => T): () => T {
  let made: { readonly is: T } | undefined;
  return () => {
    made ??= { is: make() };
    return made.is;
  };
}
