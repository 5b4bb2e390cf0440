// The two sides of a comparison as they were named: files and folders on the disk, standard input, or what a git revision held. Each
// side gives its recipes and reads what they use from the same place, at the same revision.

import { posix, relative, resolve } from 'node:path';
import { diskFiles, pathOf, readDisk, rootOf, textOfBytes, uriOf } from '../host/disk.ts';
import { findRecipes, isFolder, isRecipeName } from '../host/find-recipes.ts';
import {
  blobs,
  filesAt,
  type GitTrouble,
  movedSince,
  pathInRepository,
  type Repository,
  type Revision,
  repositoryOf,
  revisionOf,
} from '../host/git.ts';
import type { FileText } from '../workspace/files.ts';
import { inputOf, slashed } from './open-recipes.ts';
import type { Io } from './output.ts';

export interface Source {
  readonly kind: 'source';
  /** As the reader named it. */
  readonly name: string;
  readonly isFolder: boolean;
  /** The URIs of its recipes, by their path below the folder; of a single file, by the empty path. */
  readonly recipes: ReadonlyMap<string, string>;
  /** The folder that paths are counted from, as a URI that ends with a stroke. */
  readonly base: string;
  /** The name that git says the single file had on this side. */
  readonly movedFrom?: string;
  readonly revision?: { readonly repository: Repository; readonly revision: Revision };
  readonly read: (uri: string) => Promise<FileText>;
  readonly nameFile: (uri: string) => string;
}

export interface NoSource {
  readonly kind: 'none';
  readonly says: string;
}

/** One side: a path, `-`, or `REVISION:PATH` as git writes it. Undefined where it is only a name, which may be a revision. */
export function namedSide(named: string, io: Io, stdinFilename?: string): Source | NoSource | undefined {
  if (named === '-') {
    const text = textOfBytes(io.readInput());
    return fileSource('standard input', inputOf('-', io.cwd, stdinFilename).path, io, text);
  }
  const path = resolve(io.cwd, named);
  if (isFolder(path)) return folderSource(named, path, io);
  if (readDisk(path).kind === 'text') return fileSource(slashed(named), path, io);
  const [, revision, at] = /^([^:]+):(.*)$/su.exec(named) ?? [];
  if (revision !== undefined && at !== undefined) return revisionSource(revision, at, named, io);
  const read = readDisk(path);
  return read.kind === 'none' && read.why === 'absent' && !isRecipeName(named)
    ? undefined
    : none(`${slashed(named)}: ${read.kind === 'none' ? read.says : 'it cannot be read'}`);
}

/** The same file or folder as another side names, or the whole repository, at a revision. A file that is not there yet is no trouble. */
export function sideAt(named: string, other: Source | undefined, io: Io): Source | NoSource {
  const repository = repositoryOf(io.cwd);
  if ('kind' in repository) return none(`${named}: there is no such file, and ${repository.says}`);
  const revision = revisionOf(repository, named);
  if (revision.kind === 'trouble') {
    return revision.why === 'no-revision'
      ? none(`${named}: there is neither a file nor a revision of this name`)
      : gitNone(named, revision);
  }
  if (other === undefined) return revisionSource(named, '', named, io);
  const path = pathOf(other.isFolder ? other.base : ([...other.recipes.values()][0] ?? other.base));
  const at = path === undefined ? undefined : pathInRepository(repository, path)?.replace(/\/$/u, '');
  if (at === undefined) return none(`${named}: ${other.name} is outside the repository`);
  const found = revisionSource(named, `/${at}`, named, io);
  if (found.kind === 'source') return found;
  const moved = movedSince(repository, revision, other.revision?.revision);
  const was = 'kind' in moved ? undefined : moved.get(at);
  const old = was === undefined ? undefined : revisionSource(named, `/${was}`, named, io);
  if (was !== undefined && old?.kind === 'source') return { ...old, movedFrom: was };
  return { ...other, name: named, recipes: new Map(), revision: { repository, revision } };
}

function fileSource(name: string, path: string, io: Io, text?: string): Source {
  const uri = uriOf(path);
  const files = diskFiles(rootOf(path, io.cwd));
  return {
    kind: 'source',
    name,
    isFolder: false,
    recipes: new Map([['', uri]]),
    base: folderOf(uri),
    read: asked =>
      asked !== uri
        ? files.read(asked)
        : Promise.resolve(text === undefined ? readNamed(path) : { kind: 'text', text }),
    nameFile: asked => (asked === uri ? name : slashed(relative(io.cwd, pathOf(asked) ?? asked))),
  };
}

/** A file that was named by who asks may lie anywhere. */
function readNamed(path: string): FileText {
  const read = readDisk(path);
  return read.kind === 'text' ? read : { kind: 'none', why: read.why === 'absent' ? 'absent' : 'unreadable' };
}

function folderSource(named: string, folder: string, io: Io): Source {
  const { files } = findRecipes(folder);
  const reader = diskFiles(rootOf(`${folder}/any`, io.cwd));
  return {
    kind: 'source',
    name: slashed(named),
    isFolder: true,
    recipes: new Map(files.map(file => [slashed(relative(folder, file)), uriOf(file)])),
    base: `${uriOf(folder)}/`,
    read: uri => reader.read(uri),
    nameFile: uri => slashed(relative(io.cwd, pathOf(uri) ?? uri)),
  };
}

/** `at` counts from the root of the repository, as git has it, or from the current folder where that is what is there. */
function revisionSource(revisionName: string, at: string, named: string, io: Io): Source | NoSource {
  const repository = repositoryOf(io.cwd);
  if ('kind' in repository) return gitNone(named, repository);
  const revision = revisionOf(repository, revisionName);
  if (revision.kind === 'trouble') return gitNone(named, revision);
  const listed = filesAt(repository, revision);
  if ('kind' in listed) return gitNone(named, listed);
  const ids = new Map(listed.map(({ path, id }) => [path, id]));
  const here = pathInRepository(repository, io.cwd) ?? '';
  const fromRoot = posix.normalize(`/${at}`).slice(1).replace(/\/$/u, '');
  const fromHere = posix.join('/', here, at).slice(1).replace(/\/$/u, '');
  // A leading dot asks for the current folder, a leading stroke for the root.
  const wanted = /^\.\.?(?:\/|$)/u.test(at) ? [fromHere] : at.startsWith('/') ? [fromRoot] : [fromRoot, fromHere];
  const path = wanted.find(one => one === '' || ids.has(one) || hasFolder(ids, one));
  if (path === undefined) return none(`${fromRoot} is not in ${revisionName}`);
  const isFile = ids.has(path);
  const top = `${uriOf(repository.root)}/`;
  const uriIn = (one: string): string => `${top}${one.split('/').map(encodeURIComponent).join('/')}`;
  const prefix = path === '' ? '' : `${path}/`;
  const recipes = isFile
    ? new Map([['', uriIn(path)]])
    : new Map(
        [...ids.keys()]
          .filter(one => one.startsWith(prefix) && isSeen(one.slice(prefix.length)))
          .map(one => [one.slice(prefix.length), uriIn(one)] as const),
      );
  const read = blobReader(repository, ids, recipes, top);
  return {
    kind: 'source',
    name: named,
    isFolder: !isFile,
    recipes,
    base: isFile ? folderOf(uriIn(path)) : uriIn(prefix),
    revision: { repository, revision },
    read,
    nameFile: uri => `${revisionName}:${decodeURIComponent(uri.slice(top.length))}`,
  };
}

/** Reads from the revision. The recipes that are compared are read together, what they use when it is asked for. */
function blobReader(
  repository: Repository,
  ids: ReadonlyMap<string, string>,
  recipes: ReadonlyMap<string, string>,
  top: string,
): Source['read'] {
  const pathIn = (uri: string): string => decodeURIComponent(uri.slice(top.length));
  const read = new Map<string, Uint8Array>();
  let isFirst = true;
  return uri => {
    if (!uri.startsWith(top)) return Promise.resolve({ kind: 'none', why: 'outside' });
    const id = ids.get(pathIn(uri));
    if (id === undefined) return Promise.resolve({ kind: 'none', why: 'absent' });
    if (!read.has(id)) {
      const together = isFirst ? [...recipes.values()].flatMap(one => ids.get(pathIn(one)) ?? []) : [];
      isFirst = false;
      const got = blobs(repository, [id, ...together]);
      if (!('kind' in got)) for (const [key, bytes] of got) read.set(key, bytes);
    }
    const bytes = read.get(id);
    return Promise.resolve(
      bytes === undefined ? { kind: 'none', why: 'unreadable' } : { kind: 'text', text: textOfBytes(bytes) },
    );
  };
}

function hasFolder(ids: ReadonlyMap<string, string>, path: string): boolean {
  for (const one of ids.keys()) if (one.startsWith(`${path}/`)) return true;
  return false;
}

/** What a walk over a folder on the disk would find. */
function isSeen(path: string): boolean {
  return isRecipeName(path) && path.split('/').every(part => !part.startsWith('.') && part !== 'node_modules');
}

function folderOf(uri: string): string {
  return uri.slice(0, uri.lastIndexOf('/') + 1);
}

function gitNone(named: string, { says }: GitTrouble): NoSource {
  return none(`${named}: ${says}`);
}

function none(says: string): NoSource {
  return { kind: 'none', says };
}
