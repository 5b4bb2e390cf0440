// The recipe`…` template: a small recipe with a cursor and with the findings it should give, written as a reader would see them.

import type { Snapshot } from '../server/workspace/snapshot.ts';
import { Workspace } from '../server/workspace/workspace.ts';

/** A finding that is marked under its line: `#   ^^^^ code: part of its message`. */
export interface Mark {
  readonly line: number;
  /** Columns of the line, `to` exclusive. */
  readonly from: number;
  readonly to: number;
  readonly code: string;
  readonly says: string;
}

export interface MarkedFile {
  readonly uri: string;
  /** Without `$0`; the marks stay, they are comments. */
  readonly text: string;
  readonly marks: readonly Mark[];
}

export interface MarkedRecipe {
  /** The recipe itself first, then the files beside it. */
  readonly files: readonly [MarkedFile, ...MarkedFile[]];
  /** Where `$0` stood, with the file it stood in. */
  readonly cursor: { readonly uri: string; readonly offset: number } | undefined;
  /** From the first `$0` to the second, where there are two. */
  readonly selection: { readonly uri: string; readonly from: number; readonly to: number } | undefined;
  /** All files opened in a workspace of their own. */
  readonly workspace: () => Workspace;
  /** What is known of the file with the cursor, or of the recipe itself. */
  readonly snapshot: (uri?: string) => Snapshot;
}

/**
 * A recipe from a template: dedented; `$0` marks the cursor and `$0…$0` a selection; a line `#-- shelf.grow.yaml` starts another
 * file; comments of carets under a line are the findings expected there.
 */
export function recipe(strings: TemplateStringsArray, ...values: readonly (string | number)[]): MarkedRecipe {
  const text = strings.reduce((before, part, index) => `${before}${values[index - 1] ?? ''}${part}`);
  return markedRecipe(dedent(text));
}

/** The same from text that stands at its own indentation, as an example file does. */
export function markedRecipe(text: string, name = 'recipe.grow.yaml'): MarkedRecipe {
  const parts = text.split(/^#-- *(\S+) *\r?\n/mu);
  const named: { name: string; text: string }[] =
    parts[0] === '' && parts.length > 1 ? [] : [{ name, text: parts[0] ?? '' }];
  for (let at = 1; at < parts.length; at += 2) named.push({ name: parts[at] ?? '', text: parts[at + 1] ?? '' });
  const cursors: { uri: string; offset: number }[] = [];
  const [first, ...others] = named.map(file => readFile(`file:///${file.name}`, file.text, cursors));
  if (first === undefined) throw new Error('a recipe without a file');
  const files = [first, ...others] as const;
  const [start, end] = cursors;
  if (cursors.length > 2) throw new Error('more than two `$0`');
  const workspace = (): Workspace => {
    const made = new Workspace();
    for (const file of files) made.open(file.uri, file.text);
    for (const uri of made.wanted()) made.arrived(uri, { kind: 'none', why: 'absent' });
    return made;
  };
  return {
    files,
    cursor: start,
    selection:
      start === undefined || end === undefined ? undefined : { uri: start.uri, from: start.offset, to: end.offset },
    workspace,
    snapshot: (uri = start?.uri ?? first.uri) => {
      const taken = workspace().snapshot(uri);
      if (taken === undefined) throw new Error(`no file ${uri}`);
      return taken;
    },
  };
}

function readFile(uri: string, marked: string, cursors: { uri: string; offset: number }[]): MarkedFile {
  const pieces = marked.split('$0');
  let offset = 0;
  for (const piece of pieces.slice(0, -1)) {
    offset += piece.length;
    cursors.push({ uri, offset });
  }
  const text = pieces.join('');
  return { uri, text, marks: marksOf(text) };
}

/** The marks of a text. A mark is about the nearest line above it that is none. */
export function marksOf(text: string): readonly Mark[] {
  const marks: Mark[] = [];
  let about = 0;
  for (const [line, content] of text.split(/\r?\n/u).entries()) {
    const caret = /^(?<before>\s*#\s*)(?<carets>\^+)\s*(?<rest>.*)$/u.exec(content)?.groups;
    const arrow = /^#(?<shaft><-*)\s*(?<rest>.*)$/u.exec(content)?.groups;
    const found = caret ?? arrow;
    if (found === undefined) {
      about = line;
      continue;
    }
    const [, code = '', says = ''] = /^([a-z0-9-]+)(?:: *(.*))?$/u.exec((found.rest ?? '').trim()) ?? [];
    const from = caret?.before?.length ?? 0;
    marks.push({ line: about, from, to: from + (caret?.carets ?? arrow?.shaft ?? '').length, code, says });
  }
  return marks;
}

/** Whether a line holds a mark rather than text. */
export function isMark(line: string): boolean {
  return /^\s*#\s*\^+/u.test(line) || /^#<-*/u.test(line);
}

/** A text less the indentation that all its lines share. */
export function dedent(text: string): string {
  const lines = text.replace(/^[ \t]*\n/u, '').split('\n');
  if (lines[lines.length - 1]?.trim() === '') lines[lines.length - 1] = '';
  const indents = lines.filter(line => line.trim() !== '').map(line => /^ */u.exec(line)?.[0].length ?? 0);
  const by = Math.min(...indents, Number.MAX_SAFE_INTEGER);
  return lines.map(line => line.slice(Math.min(by, line.length))).join('\n');
}
