// Reads recipes from the disk: the one place that turns paths and bytes into text, and that decides how far `use` may reach.

import { existsSync, readFileSync, realpathSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Files, FileText } from '../workspace/files.ts';

/** A file's text, or why it cannot be read, for the one who named it. */
export type DiskText =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'none'; readonly why: 'absent' | 'unreadable' | 'directory'; readonly says: string };

/**
 * Files by their URIs. With a root, what lies outside it is refused, and links that lead out of it too; without one, who asks
 * decides what may be read.
 */
export function diskFiles(root?: string): Files {
  const realRoot = root === undefined ? undefined : real(resolve(root));
  return {
    read: uri => Promise.resolve(readByUri(uri, realRoot)),
  };
}

function readByUri(uri: string, root: string | undefined): FileText {
  const path = pathOf(uri);
  if (path === undefined) return { kind: 'none', why: 'unreadable' };
  if (root !== undefined && !isBelow(root, real(path))) return { kind: 'none', why: 'outside' };
  const read = readDisk(path);
  if (read.kind === 'text') return read;
  return { kind: 'none', why: read.why === 'absent' ? 'absent' : 'unreadable' };
}

export function readDisk(path: string): DiskText {
  try {
    return { kind: 'text', text: textOfBytes(readFileSync(path)) };
  } catch (error) {
    const code = codeOf(error);
    if (code === 'ENOENT' || code === 'ENOTDIR') return none('absent', 'there is no such file');
    if (code === 'EISDIR') return none('directory', 'it is a folder, and a recipe file is wanted');
    if (code === 'EACCES' || code === 'EPERM') return none('unreadable', 'reading it is not permitted');
    return none('unreadable', `it cannot be read (${code ?? String(error)})`);
  }
}

/** The URI of a path, spelt as `use` spells those of the files it names, so that one file has one URI. */
export function uriOf(path: string): string {
  const { pathname } = pathToFileURL(path);
  return `file://${pathname
    .split('/')
    .map(part => encodeURIComponent(decodeURIComponent(part)))
    .join('/')}`;
}

function none(why: 'absent' | 'unreadable' | 'directory', says: string): DiskText {
  return { kind: 'none', why, says };
}

/**
 * Bytes as UTF-8, a byte order mark kept. Where they are not UTF-8, the first wrong byte becomes a pair of replacement
 * characters, which the syntax takes as the sign that a file is not text.
 */
export function textOfBytes(bytes: Uint8Array): string {
  const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
  if (!text.includes('\uFFFD') || isUtf8(bytes)) return text;
  return text.replace('\uFFFD', '\uFFFD\uFFFD');
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

/**
 * The folder that `use` may not leave: the repository round the file; without one the current folder, if the file is in it;
 * else the file's own folder.
 */
export function rootOf(file: string, cwd: string): string {
  const own = dirname(resolve(cwd, file));
  return repositoryAbove(own) ?? (isBelow(resolve(cwd), own) ? resolve(cwd) : own);
}

/** The nearest folder with a repository in it, from an absolute path upwards; found without git. */
export function repositoryAbove(path: string): string | undefined {
  for (let folder = path; ; folder = dirname(folder)) {
    if (existsSync(join(folder, '.git'))) return folder;
    if (dirname(folder) === folder) return undefined;
  }
}

function isBelow(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way === '' || (way !== '..' && !way.startsWith(`..${sep}`) && resolve(folder, way) === path);
}

/** The path with all links followed; of what is not there, the nearest folder that is. */
function real(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    const above = dirname(path);
    return above === path ? path : join(real(above), path.slice(above.endsWith(sep) ? above.length : above.length + 1));
  }
}

/** The path of a file's URI; undefined for a URI of another kind. */
export function pathOf(uri: string): string | undefined {
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}

function codeOf(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : undefined;
}
