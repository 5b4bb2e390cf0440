// Remembers a pure function's answers by the identity of its arguments. Nothing to clear: what is remembered about an object goes with
// the object, and answers before the last about it go with the first of their arguments that goes.

import { Remembered } from '../../schema/remembered.ts';

/**
 * The same function, which computes once for the same arguments (the same objects, equal strings and numbers). The argument that lives
 * shortest should come first: it keeps the answer.
 */
export function memo<A extends readonly unknown[], R>(compute: (...args: A) => R): (...args: A) => R {
  const memory = newMemory<A, R>();
  const answerTo = (args: A) => compute(...args);
  return (...args) => remembered(memory, args, answerTo);
}

/**
 * The same function, which remembers its latest answer for each first argument: one look where there would be one for each
 * argument. For what is asked of many objects again and again, with other arguments that seldom change.
 */
export function latest<F extends object, A extends readonly unknown[], R>(
  compute: (first: F, ...others: A) => R,
): (first: F, ...others: A) => R {
  const known = new Remembered<F, { readonly others: A; readonly answer: R }>();
  return (first, ...others) => {
    const before = known.get(first);
    if (before?.others.every((other, at) => other === others[at])) return before.answer;
    const answer = compute(first, ...others);
    known.set(first, { others, answer });
    return answer;
  };
}

/**
 * Remembers the latest answer about each object for as long as everything it depends on stays: for answers whose dependencies are
 * fewer than what is needed to find them. `dependsOn` must hold all of them.
 */
export function unlessChanged<F extends object, R>(): (of: F, dependsOn: readonly unknown[], compute: () => R) => R {
  const known = new Remembered<F, { readonly dependsOn: readonly unknown[]; readonly answer: R }>();
  return (of, dependsOn, compute) => {
    const before = known.get(of);
    const { length } = dependsOn;
    if (before?.dependsOn.length === length && before.dependsOn.every((one, at) => one === dependsOn[at])) {
      return before.answer;
    }
    const answer = compute();
    known.set(of, { dependsOn, answer });
    return answer;
  };
}

/** Gives the same list object for lists of the same members, so that a list can be an argument of a `memo`. */
export function interned<T>(): (members: readonly T[]) => readonly T[] {
  const memory = newMemory<readonly T[], readonly T[]>();
  return members => remembered(memory, members, () => members);
}

/** By the first object among the arguments; where there is none, what is remembered stays. */
interface Memory<A, R> {
  readonly about: Remembered<object, Answers<A, R>>;
  readonly aboutNone: Branch<Answer<A, R>>;
}

/** An object is nearly always asked about with the same others as the last time, which takes one look. */
interface Answers<A, R> {
  last: Answer<A, R>;
  /** In a tree of all arguments. */
  readonly before: Branch<Answer<A, R>>;
}

interface Answer<A, R> {
  readonly args: A;
  readonly is: R;
}

function newMemory<A, R>(): Memory<A, R> {
  return { about: new Remembered(), aboutNone: {} };
}

function remembered<A extends readonly unknown[], R>(
  { about, aboutNone }: Memory<A, R>,
  args: A,
  compute: (args: A) => R,
): R {
  const [first] = args;
  const key = isObject(first) ? first : args.find(isObject);
  if (key === undefined) {
    const branch = branchOf(aboutNone, args);
    branch.answer ??= { args, is: compute(args) };
    return branch.answer.is;
  }
  const known = about.get(key);
  if (known !== undefined && isSame(known.last.args, args)) return known.last.is;
  const before = known === undefined ? undefined : branchOf(known.before, args).answer;
  const answer = before ?? { args, is: compute(args) };
  // Computing may have asked about the same object.
  const now = about.get(key);
  if (now === undefined) about.set(key, { last: answer, before: {} });
  else {
    branchOf(now.before, now.last.args).answer = now.last;
    now.last = answer;
  }
  return answer.is;
}

function isSame(before: readonly unknown[], now: readonly unknown[]): boolean {
  if (before.length !== now.length) return false;
  for (let at = 0; at < now.length; at++) if (before[at] !== now[at]) return false;
  return true;
}

/** One step of the tree, made as far as it is used. */
interface Branch<T> {
  objects?: WeakMap<object, Branch<T>>;
  others?: Map<unknown, Branch<T>>;
  answer?: T;
}

interface Steps<T> {
  get(by: unknown): Branch<T> | undefined;
  set(by: unknown, to: Branch<T>): unknown;
}

function branchOf<T>(tree: Branch<T>, args: readonly unknown[]): Branch<T> {
  let at = tree;
  for (const arg of args) {
    const steps = stepsBy(arg, at);
    const next = steps.get(arg) ?? {};
    steps.set(arg, next);
    at = next;
  }
  return at;
}

function stepsBy<T>(arg: unknown, from: Branch<T>): Steps<T> {
  if (isObject(arg)) {
    from.objects ??= new WeakMap();
    return from.objects;
  }
  from.others ??= new Map();
  return from.others;
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
