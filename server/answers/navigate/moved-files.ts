// What has to change in `use` so that it still leads to the same files when some of them get other addresses.

import { resolved } from '../../recipe/use.ts';
import { textEdits } from '../../syntax/edit.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { FileEdits } from './rename.ts';

/** A file or a folder that is given another address. */
export interface Move {
  readonly from: string;
  readonly to: string;
}

/** Edits for the files as they are before they are moved. */
export function editsForMoves(snapshots: readonly Snapshot[], moves: readonly Move[]): readonly FileEdits[] {
  return snapshots.flatMap(({ uri, recipe, document }) => {
    const own = moved(uri, moves);
    const edits = recipe.use.flatMap((written, index) => {
      const target = written === undefined ? undefined : resolved(uri, written);
      if (written === undefined || target === undefined) return [];
      const wanted = moved(target, moves);
      const path = resolved(own, written) === wanted ? undefined : relativePath(own, wanted);
      if (path === undefined) return [];
      const at = ['use', index];
      // Within quotes only the path changes; without them it may come to need some.
      const isPlain = /^[\w./()-]+$/.test(path);
      const part = isPlain ? ({ kind: 'slice', from: 0, to: written.length } as const) : ({ kind: 'value' } as const);
      return [{ kind: 'replace' as const, at: { path: at, part }, text: isPlain ? path : JSON.stringify(path) }];
    });
    const changes = textEdits(document, edits);
    return changes.length === 0 ? [] : [{ uri, edits: changes }];
  });
}

/** Where a file is after some moves: its own, or that of a folder above it. */
function moved(uri: string, moves: readonly Move[]): string {
  for (const { from, to } of moves) {
    if (uri === from) return to;
    const folder = from.endsWith('/') ? from : `${from}/`;
    if (uri.startsWith(folder)) return `${to.endsWith('/') ? to : `${to}/`}${uri.slice(folder.length)}`;
  }
  return uri;
}

/** The way from a file to another, as `use` writes it; undefined where there is none. */
function relativePath(from: string, to: string): string | undefined {
  const [start, end] = [new URL(from), new URL(to)];
  if (start.protocol !== end.protocol || start.host !== end.host) return undefined;
  const here = start.pathname.split('/').slice(0, -1);
  const there = end.pathname.split('/');
  let shared = 0;
  while (shared < here.length && shared < there.length - 1 && here[shared] === there[shared]) shared++;
  const up = here.slice(shared).map(() => '..');
  const down = there.slice(shared).map(decodeURIComponent);
  return [...(up.length === 0 ? ['.'] : up), ...down].join('/');
}
