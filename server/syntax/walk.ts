// Every pair and item of an entry in the order of the text, for answers about all of a file rather than about one place.

import type { Path } from '../../schema/place.ts';
import type { ScalarTree, Tree } from './tree.ts';

export interface Step {
  /** Below the tree that is walked. */
  readonly path: Path;
  /** Undefined for the item of a list. */
  readonly key: ScalarTree | undefined;
  readonly value: Tree;
}

/** What is repeated through an alias is walked where it is written, not where it is repeated. */
export function* walk(tree: Tree, path: Path = []): Generator<Step> {
  if (tree.kind === 'map') {
    for (const { key, value } of tree.pairs) {
      if (isOutside(key, tree)) continue;
      const own = [...path, key.text];
      yield { path: own, key, value };
      if (!isOutside(value, tree)) yield* walk(value, own);
    }
  } else if (tree.kind === 'list') {
    for (const [number, value] of tree.items.entries()) {
      if (isOutside(value, tree)) continue;
      yield { path: [...path, number], key: undefined, value };
      yield* walk(value, [...path, number]);
    }
  }
}

/** The parts of a repeated map keep the ranges of where they are written. */
function isOutside(part: Tree, within: Tree): boolean {
  return part.range.from < within.range.from || within.range.to < part.range.to;
}
