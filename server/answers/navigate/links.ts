// The files that a recipe uses, as links.

import { resolved } from '../../recipe/use.ts';
import { rangeOf } from '../../syntax/place.ts';
import type { Range } from '../../syntax/tree.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';

export interface Link {
  /** The written path, without quotes. */
  readonly range: Range;
  readonly target: string;
}

/** A path that is not relative leads nowhere, and a finding says so. */
export function links({ uri, recipe, document }: Snapshot): readonly Link[] {
  return recipe.use.flatMap((written, index) => {
    if (written === undefined) return [];
    const target = resolved(uri, written);
    const part = { kind: 'slice', from: 0, to: written.length } as const;
    const range = rangeOf(document, { path: ['use', index], part });
    return target === undefined || range === undefined ? [] : [{ range, target }];
  });
}
