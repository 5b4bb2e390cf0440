// Remembers a pure function's answers by the identity of its arguments. Nothing to clear: every argument is held weakly, so an
// answer goes with the first of its arguments that goes. An answer may hold its own arguments.

/** Made as far as it is used: there is one for each answer. */
interface Branch {
  objects?: WeakMap<object, Branch>;
  others?: Map<unknown, Branch>;
  answer?: { readonly is: unknown };
}

/** The same function, which computes once for the same arguments (the same objects, equal strings and numbers). */
export function memo<A extends readonly unknown[], R>(compute: (...args: A) => R): (...args: A) => R {
  const root: Branch = {};
  const ofOne = new WeakMap<object, { readonly is: R }>();
  return (...args) => {
    const [first] = args;
    // Most functions take one object and are asked about hundreds of them at every keystroke: one look for each.
    if (args.length === 1 && isObject(first)) {
      const known = ofOne.get(first);
      if (known !== undefined) return known.is;
      const is = compute(...args);
      ofOne.set(first, { is });
      return is;
    }
    let at = root;
    for (const arg of args) at = stepTo(at, arg);
    at.answer ??= { is: compute(...args) };
    return at.answer.is as R;
  };
}

/**
 * The same function, which remembers its latest answer for each first argument: one look where there would be one for each
 * argument. For what is asked of many objects again and again, with other arguments that seldom change.
 */
export function latest<F extends object, A extends readonly unknown[], R>(
  compute: (first: F, ...others: A) => R,
): (first: F, ...others: A) => R {
  const known = new WeakMap<F, { readonly others: A; readonly answer: R }>();
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
  const known = new WeakMap<F, { readonly dependsOn: readonly unknown[]; readonly answer: R }>();
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

/** Gives the same list object for lists of the same members, so that a list can be an argument of a `memo`. For short lists. */
export function interned<T>(): (members: readonly T[]) => readonly T[] {
  const root: Branch = {};
  return members => {
    let at = stepTo(root, members.length);
    for (const member of members) at = stepTo(at, member);
    at.answer ??= { is: members };
    return at.answer.is as readonly T[];
  };
}

function stepTo(from: Branch, arg: unknown): Branch {
  if (isObject(arg)) {
    from.objects ??= new WeakMap();
    const known = from.objects.get(arg);
    if (known !== undefined) return known;
    const made: Branch = {};
    from.objects.set(arg, made);
    return made;
  }
  from.others ??= new Map();
  const known = from.others.get(arg);
  if (known !== undefined) return known;
  const made: Branch = {};
  from.others.set(arg, made);
  return made;
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
