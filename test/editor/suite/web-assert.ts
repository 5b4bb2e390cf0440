// Node's assertions as far as the suites use them, for the host in a browser, which has no Node.

export function ok(value: unknown, message?: string): asserts value {
  if (!value) throw new Error(message ?? `not as wanted: ${String(value)}`);
}

export function equal(actual: unknown, expected: unknown, message?: string): void {
  ok(Object.is(actual, expected), message ?? `${JSON.stringify(actual)} is not ${JSON.stringify(expected)}`);
}

/** For plain data: the same text as JSON. */
export function deepEqual(actual: unknown, expected: unknown, message?: string): void {
  const [left, right] = [JSON.stringify(actual), JSON.stringify(expected)];
  ok(left === right, message ?? `${left} is not ${right}`);
}

export function match(text: string, pattern: RegExp): void {
  ok(pattern.test(text), `${JSON.stringify(text)} does not match ${String(pattern)}`);
}
