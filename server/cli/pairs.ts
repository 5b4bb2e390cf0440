// Opens the recipes of two sides and puts together those that belong together: by path, by what git takes for moved, by the same text.
// What is the same on both sides, with all that it uses, is counted and not compared.

import { pathOf } from '../host/disk.ts';
import { movedSince, pathInRepository } from '../host/git.ts';
import type { Pair, Side } from '../reports/diff/review.ts';
import { textOf } from '../syntax/document.ts';
import { Workspace } from '../workspace/workspace.ts';
import type { Source } from './sides.ts';

export interface Paired {
  readonly pairs: readonly Pair[];
  /** Recipes of which nothing differs, nor anything that they use. */
  readonly untouched: number;
}

export async function pairsOf(old: Source, now: Source): Promise<Paired> {
  const before = await open(old);
  const after = await open(now);
  const matched = matches(before, after);
  const differing = differingIn(before, after);
  const touched = matched.filter(
    ([was, is]) =>
      was === undefined ||
      is === undefined ||
      was !== is ||
      old.movedFrom !== undefined ||
      isTouched(before, was, differing) ||
      isTouched(after, is, differing),
  );
  return {
    pairs: touched.map(([was, is]) => ({
      before: sideOf(before, was),
      after: sideOf(after, is),
      ...movedFrom(before, was, is),
    })),
    untouched: matched.length - touched.length,
  };
}

interface Open {
  readonly source: Source;
  readonly workspace: Workspace;
  /** Recipes that cannot be read, by their path. */
  readonly unread: ReadonlySet<string>;
}

async function open(source: Source): Promise<Open> {
  const workspace = new Workspace();
  const unread = new Set<string>();
  for (const [path, uri] of source.recipes) {
    const file = await source.read(uri);
    if (file.kind === 'text') workspace.open(uri, file.text);
    else unread.add(path);
  }
  for (let wanted = workspace.wanted(); wanted.length > 0; wanted = workspace.wanted()) {
    for (const uri of wanted) workspace.arrived(uri, await source.read(uri));
  }
  return { source, workspace, unread };
}

/** Paths on either side, in the order of the new side; what is gone comes last. */
function matches(before: Open, after: Open): readonly (readonly [string | undefined, string | undefined])[] {
  const gone = new Set([...before.source.recipes.keys()].filter(path => !after.source.recipes.has(path)));
  const moved = movesIn(before.source, after.source);
  const take = (path: string | undefined): string | undefined =>
    path !== undefined && gone.delete(path) ? path : undefined;
  const found = [...after.source.recipes.keys()].map(path => {
    if (before.source.recipes.has(path)) return [path, path] as const;
    const text = textAt(after, path);
    const same = [...gone].find(one => text !== undefined && textAt(before, one) === text);
    return [take(moved.get(path)) ?? take(same), path] as const;
  });
  return [...found, ...[...gone].map(path => [path, undefined] as const)];
}

/** Old paths by new ones, as git tells where one side is a revision. */
function movesIn(old: Source, now: Source): ReadonlyMap<string, string> {
  const from = old.revision;
  if (from === undefined || !old.isFolder) return new Map();
  const moved = movedSince(from.repository, from.revision, now.revision?.revision);
  if ('kind' in moved) return new Map();
  const below = (source: Source, path: string): string | undefined => {
    const base = pathOf(source.base);
    const folder = base === undefined ? undefined : pathInRepository(from.repository, base);
    if (folder === undefined) return undefined;
    const prefix = folder.replace(/\/$/u, '') === '' ? '' : `${folder.replace(/\/$/u, '')}/`;
    return path.startsWith(prefix) ? path.slice(prefix.length) : undefined;
  };
  const pairs = [...moved].flatMap(([is, was]) => {
    const here = below(now, is);
    const there = below(old, was);
    return here === undefined || there === undefined ? [] : [[here, there] as const];
  });
  return new Map(pairs);
}

/** Files, counted from the base of their side, that do not read the same on both sides; used ones included. */
function differingIn(before: Open, after: Open): ReadonlySet<string> {
  const old = textsOf(before);
  const now = textsOf(after);
  return new Set([...old.keys(), ...now.keys()].filter(path => old.get(path) !== now.get(path)));
}

function textsOf({ source, workspace }: Open): ReadonlyMap<string, string> {
  return new Map(
    workspace.uris.flatMap(uri => {
      const document = workspace.documentOf(uri);
      return document === undefined ? [] : [[pathFrom(source, uri), textOf(document)] as const];
    }),
  );
}

/** A single file counts as the same file whatever it is called. */
function pathFrom({ base, recipes, isFolder }: Source, uri: string): string {
  if (!isFolder && recipes.get('') === uri) return '';
  return uri.startsWith(base) ? uri.slice(base.length) : uri;
}

function isTouched({ source, workspace }: Open, path: string, differing: ReadonlySet<string>): boolean {
  const uri = source.recipes.get(path);
  return workspace.uris.some(one => {
    if (!differing.has(pathFrom(source, one))) return false;
    return one === uri || workspace.usersOf(one).some(user => user === uri);
  });
}

function textAt({ source, workspace }: Open, path: string): string | undefined {
  const document = workspace.documentOf(source.recipes.get(path) ?? '');
  return document === undefined ? undefined : textOf(document);
}

function sideOf({ source, workspace, unread }: Open, path: string | undefined): Side {
  if (path === undefined) return { kind: 'absent' };
  const file = nameOf({ source }, path);
  const snapshot = workspace.snapshot(source.recipes.get(path) ?? '');
  if (snapshot === undefined || unread.has(path)) return { kind: 'unread', file, says: 'it cannot be read' };
  return { kind: 'recipe', file, snapshot, nameFile: source.nameFile };
}

function movedFrom({ source }: Open, was: string | undefined, is: string | undefined): { readonly was?: string } {
  if (was === undefined || is === undefined) return {};
  if (was !== is) return { was: nameOf({ source }, was) };
  return was === '' && source.movedFrom !== undefined ? { was: source.movedFrom } : {};
}

function nameOf({ source }: Pick<Open, 'source'>, path: string): string {
  return path === '' ? source.nameFile(source.recipes.get('') ?? '') : path;
}
