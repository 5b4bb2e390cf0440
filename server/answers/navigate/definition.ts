// Where what stands at a place is declared: the entry of a name, the file of a `use`.

import { pairRange, rangeOf } from '../../syntax/place.ts';
import type { Range } from '../../syntax/tree.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { entityAt } from './entity.ts';
import { links } from './links.ts';

export interface Definition {
  /** What is asked about, in the file of the question. */
  readonly origin: Range;
  readonly uri: string;
  /** All of the entry, counted in its own file; undefined for a file as a whole. */
  readonly target: { readonly range: Range; readonly nameRange: Range } | undefined;
}

export function definition(snapshot: Snapshot, offset: number): Definition | undefined {
  const link = links(snapshot).find(({ range }) => range.from <= offset && offset <= range.to);
  if (link !== undefined) return { origin: link.range, uri: link.target, target: undefined };
  const found = entityAt(snapshot, offset);
  if (found === undefined) return undefined;
  const { section, name, file } = found.entity;
  const document = file === snapshot.uri ? snapshot.document : snapshot.documentOf(file);
  if (document === undefined) return undefined;
  const range = pairRange(document, [section, name]);
  const nameRange = rangeOf(document, { path: [section, name], part: { kind: 'key' } });
  if (range === undefined || nameRange === undefined) return undefined;
  return { origin: found.range, uri: file, target: { range, nameRange } };
}
