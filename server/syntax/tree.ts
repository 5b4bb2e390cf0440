// The narrow view of YAML that other folders may use: map, list, scalar or nothing, as plain data. It stands between
// them and the `yaml` package, whose nodes are let go as soon as an entry is read.

/** From `from` up to, not including, `to`: UTF-16 units counted from the start of the entry (or of the file, where said). */
export interface Range {
  readonly from: number;
  readonly to: number;
}

export type Tree = MapTree | ListTree | ScalarTree | EmptyTree;

export interface MapTree {
  readonly kind: 'map';
  /** Written with braces. */
  readonly flow: boolean;
  /** In the order written, equal keys included. */
  readonly pairs: readonly PairTree[];
  readonly range: Range;
}

export interface PairTree {
  readonly key: ScalarTree;
  readonly value: Tree;
}

export interface ListTree {
  readonly kind: 'list';
  /** Written with brackets. */
  readonly flow: boolean;
  readonly items: readonly Tree[];
  readonly range: Range;
}

export type ScalarStyle = 'plain' | 'single' | 'double' | 'block';

export interface ScalarTree {
  readonly kind: 'scalar';
  /** The value by the YAML 1.2 core schema. */
  readonly value: string | number | boolean | null;
  /** What it says as a string, whatever its value: `1.10` stays `1.10`. Slices of places count in it. */
  readonly text: string;
  readonly style: ScalarStyle;
  readonly range: Range;
}

/** A value that is not written: `pH:` and nothing after it. */
export interface EmptyTree {
  readonly kind: 'empty';
  readonly range: Range;
}

/** The pair of a map with a key, the first unless `nth` says otherwise; undefined where there is none. */
export function pairOf(tree: Tree, key: string, nth = 0): PairTree | undefined {
  if (tree.kind !== 'map') return undefined;
  let left = nth;
  for (const pair of tree.pairs) {
    if (pair.key.text === key && left-- === 0) return pair;
  }
  return undefined;
}

/** What stands one step down: under a key of a map (the first of equal ones) or at a number of a list. */
export function childOf(tree: Tree, key: string | number): Tree | undefined {
  if (tree.kind === 'list') return typeof key === 'number' ? tree.items[key] : undefined;
  return pairOf(tree, String(key))?.value;
}

/** What stands at a path below a tree; undefined where nothing does. */
export function treeAt(tree: Tree, path: readonly (string | number)[]): Tree | undefined {
  let at: Tree | undefined = tree;
  for (const key of path) {
    if (at === undefined) return undefined;
    at = childOf(at, key);
  }
  return at;
}

/**
 * The plain value of a tree: maps become Map, so that no key, `__proto__` included, can mean more than itself, and the
 * first of equal keys counts. What is not written is null.
 */
export function plainValue(tree: Tree): unknown {
  switch (tree.kind) {
    case 'empty':
      return null;
    case 'scalar':
      return tree.value;
    case 'list':
      return tree.items.map(plainValue);
    case 'map': {
      const values = new Map<string, unknown>();
      for (const pair of tree.pairs) if (!values.has(pair.key.text)) values.set(pair.key.text, plainValue(pair.value));
      return values;
    }
  }
}
