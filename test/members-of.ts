// Every member of an object, those included that a lazy object has not worked out yet.

export function membersOf(value: object): readonly unknown[] {
  if (value instanceof Map) return [...value.values()];
  const members: unknown[] = [];
  // What is not worked out yet is no object's own.
  for (const key in value) members.push(Reflect.get(value, key));
  return members;
}
