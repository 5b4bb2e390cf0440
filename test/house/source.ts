// The checkout as the house tests see it: its files, and a source text without its comments and the insides of its strings, so
// that a rule about code is not tripped by words.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export const root = join(import.meta.dirname, '..', '..');

/** Folders that are made by tools, at any depth. */
const made = new Set(['node_modules', 'dist', '.git', '.vscode-test', 'shots', 'coverage']);

/** Every file of the checkout below a folder, by its path from the root. */
export function filesIn(folder: string): readonly string[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap(entry => {
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    if (made.has(entry.name)) return [];
    return entry.isDirectory() ? filesIn(path) : entry.isFile() ? [path] : [];
  });
}

/** The folders directly inside a folder. */
export function foldersIn(folder: string): readonly string[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap(entry =>
    entry.isDirectory() && !made.has(entry.name) ? [entry.name] : [],
  );
}

export function textOf(path: string): string {
  return readFileSync(join(root, path), 'utf8');
}

/** A slash that begins a regular expression stands behind one of these, or behind `return`. */
const beforeExpression = /(?:^|[(,=:[!&|?{};+<>~^%*-]|\breturn|\btypeof|\bcase)\s*$/;

/** A TypeScript text with comments, strings and regular expressions emptied; line ends stay. */
export function bareCode(text: string): string {
  let bare = '';
  let at = 0;
  /** For each open `${`, the depth of braces inside it. */
  const holes: number[] = [];
  while (at < text.length) {
    const char = text.charAt(at);
    const two = text.slice(at, at + 2);
    if (two === '//') at = endOr(text, text.indexOf('\n', at));
    else if (two === '/*') at = take(endOr(text, text.indexOf('*/', at) + 2));
    else if (char === '/' && beforeExpression.test(bare.slice(-40))) at = regexEnd(text, at);
    else if (char === "'" || char === '"') at = stringEnd(text, at, char);
    else if (char === '`') at = template(at + 1);
    else if (char === '}' && holes[holes.length - 1] === 0) {
      holes.pop();
      at = template(at + 1);
    } else {
      if (holes.length > 0 && (char === '{' || char === '}')) {
        holes[holes.length - 1] = (holes[holes.length - 1] ?? 0) + (char === '{' ? 1 : -1);
      }
      bare += char;
      at += 1;
    }
  }
  return bare;

  /** Skips to `end`, keeping the line ends between. */
  function take(end: number): number {
    bare += text.slice(at, end).replace(/[^\n]/g, '');
    return end;
  }

  /** From inside a template: to behind its end, or into the next hole. */
  function template(from: number): number {
    let end = from;
    while (end < text.length && text.charAt(end) !== '`' && text.slice(end, end + 2) !== '${') {
      end += text.charAt(end) === '\\' ? 2 : 1;
    }
    at = from;
    take(end);
    if (text.charAt(end) === '`') {
      bare += "''";
      return end + 1;
    }
    holes.push(0);
    return end + 2;
  }
}

function endOr(text: string, end: number): number {
  return end < 1 ? text.length : end;
}

function stringEnd(text: string, from: number, quote: string): number {
  let at = from + 1;
  while (at < text.length && text.charAt(at) !== quote) at += text.charAt(at) === '\\' ? 2 : 1;
  return at + 1;
}

function regexEnd(text: string, from: number): number {
  let at = from + 1;
  let inClass = false;
  while (at < text.length && (inClass || text.charAt(at) !== '/') && text.charAt(at) !== '\n') {
    const char = text.charAt(at);
    if (char === '[') inClass = true;
    if (char === ']') inClass = false;
    at += char === '\\' ? 2 : 1;
  }
  return at + 1;
}

/** What a TypeScript text imports or re-exports, in order. */
export function importsOf(text: string): readonly string[] {
  const found = text.matchAll(
    /^(?:import|export)\b[^'"`;]*?\bfrom\s+['"]([^'"]+)['"]|^import\s+['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]|\brequire\(\s*['"]([^'"]+)['"]/gm,
  );
  return [...found].flatMap(([, ...groups]) => groups.find(group => group !== undefined) ?? []);
}
