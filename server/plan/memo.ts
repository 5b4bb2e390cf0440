// Remembers a pure function's answers by the identity of its arguments. Nothing to clear: what is remembered about an object goes with
// the object.

import { Remembered } from '../../schema/remembered.ts';

/**
 * The same function, which computes once for the same arguments (the same objects, equal strings and numbers). The argument that lives
 * shortest should come first: it keeps the answer.
 */
export function memo<A extends readonly unknown[], R>(compute: (...args: A) => R): (...args: A) => R {
  const about: Memory<A, R> = new Remembered();
  const answerTo = (args: A) => compute(...args);
  return (...args) => remembered(about, args, answerTo);
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
  const about: Memory<readonly T[], readonly T[]> = new Remembered();
  return members => remembered(about, members, itself);
}

/** By the first object among the arguments; where there is none, by the memory itself. */
type Memory<A, R> = Remembered<object, Answers<A, R>>;

/** An object is nearly always asked about with the same others as the last time, which takes one look. */
interface Answers<A, R> {
  last: Answer<A, R>;
  /** The newest at the end. */
  readonly before: Answer<A, R>[];
}

interface Answer<A, R> {
  readonly args: A;
  readonly is: R;
}

/** How many answers before the last are kept about an object: other versions of what lives shorter than it must not pile up. */
const mostBefore = 32;

function remembered<A extends readonly unknown[], R>(about: Memory<A, R>, args: A, compute: (args: A) => R): R {
  const [first] = args;
  const key = isObject(first) ? first : (args.find(isObject) ?? about);
  const known = about.get(key);
  if (known !== undefined && isSame(known.last.args, args)) return known.last.is;
  const answer = known?.before.find(before => isSame(before.args, args)) ?? { args, is: compute(args) };
  // Computing may have asked about the same object.
  const now = about.get(key);
  if (now === undefined) about.set(key, { last: answer, before: [] });
  else {
    const { before, last } = now;
    const at = before.indexOf(answer);
    if (at !== -1) before.splice(at, 1);
    else if (before.length === mostBefore) before.shift();
    before.push(last);
    now.last = answer;
  }
  return answer.is;
}

function isSame(before: readonly unknown[], now: readonly unknown[]): boolean {
  if (before.length !== now.length) return false;
  for (let at = 0; at < now.length; at++) if (before[at] !== now[at]) return false;
  return true;
}

const itself = <T>(members: T): T => members;

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
