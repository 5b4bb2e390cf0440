// What is written but could not be read. It is not the same as what is not written: a default in its place would be a guess at what
// was meant.

import type { Path } from '../../schema/place.ts';
import { valueAt } from '../../schema/place.ts';
import type { Want } from './figure.ts';
import type { BatchNeeds } from './gather.ts';

/** A want for each of these keys of a read group that holds something unreadable. `path` is where the group stands. */
export function unreadIn<G extends object>(
  group: G | undefined,
  keys: readonly (keyof G & string)[],
  path: Path,
  file?: string,
): readonly Want[] {
  if (group === undefined) return [];
  return keys
    .filter(key => Object.hasOwn(group, key) && group[key] === undefined)
    .map(key => unreadAt([...path, key], file));
}

/** The same for every key of a map whose keys are names or fixed words. */
export function unreadAny(
  group: ReadonlyMap<string, unknown> | Readonly<Record<string, unknown>> | undefined,
  path: Path,
  file?: string,
): readonly Want[] {
  const pairs = group instanceof Map ? [...group] : Object.entries(group ?? {});
  return pairs.filter(([, value]) => value === undefined).map(([key]) => unreadAt([...path, String(key)], file));
}

/** What cannot be read of a batch's doses and of what its feeds are made of. */
export function unreadFeeds({ batch, feeds }: BatchNeeds): readonly Want[] {
  const ofFeeds = feeds.flatMap(({ feed }) => {
    if (feed === undefined) return [];
    const { analysis, nitrogen } = feed.value;
    return [
      ...unreadIn(feed.value, ['analysis', 'nitrogen', 'formula', 'purity', 'density'], feed.path, feed.file),
      ...unreadAny(analysis, [...feed.path, 'analysis'], feed.file),
      ...unreadAny(nitrogen, [...feed.path, 'nitrogen'], feed.file),
    ];
  });
  return [...unreadAny(batch.value.feed, [...batch.path, 'feed']), ...ofFeeds];
}

function unreadAt(path: Path, file: string | undefined): Want {
  const key = path[path.length - 1] ?? '';
  return { says: `a value of \`${key}\` that can be read`, at: valueAt(path, file) };
}
