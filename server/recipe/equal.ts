// Whether two read values say the same. It is what lets an entry keep its old value object when only a comment changed.

/** Deep equality of what reading gives: maps in their order, lists, plain objects, leaves. */
export function equal(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (a instanceof Map) return b instanceof Map && a.size === b.size && equal([...a], [...b]);
  if (Array.isArray(a)) {
    return Array.isArray(b) && a.length === b.length && a.every((item, index) => equal(item, b[index]));
  }
  if (b instanceof Map || Array.isArray(b)) return false;
  const keys = Object.keys(a);
  const left = a as Readonly<Record<string, unknown>>;
  const right = b as Readonly<Record<string, unknown>>;
  return (
    keys.length === Object.keys(b).length &&
    keys.every(key => Object.hasOwn(right, key) && equal(left[key], right[key]))
  );
}
