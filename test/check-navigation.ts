// Checks where names lead: definition, references, highlights and renaming, each drawn in the texts of all files concerned.

import { type Assertion, expect } from 'vitest';
import { definition } from '../server/answers/navigate/definition.ts';
import { highlights } from '../server/answers/navigate/highlight.ts';
import { type Readers, references } from '../server/answers/navigate/references.ts';
import { rename, renameable } from '../server/answers/navigate/rename.ts';
import { textOf } from '../server/syntax/document.ts';
import { withChanges } from '../server/syntax/edit.ts';
import type { Range } from '../server/syntax/tree.ts';
import type { Workspace } from '../server/workspace/workspace.ts';
import { drawRanges } from './draw.ts';
import type { MarkedRecipe } from './recipe.ts';

/** The line of the declaration with its name in brackets, or `nothing`. */
export function checkDefinition(recipe: MarkedRecipe): Assertion<string> {
  const { workspace, snapshot, offset } = asked(recipe);
  const found = definition(snapshot, offset);
  if (found === undefined) return expect('nothing');
  const { uri, target } = found;
  const text = textIn(workspace, uri);
  return expect(`${nameOf(uri)}: ${target === undefined ? 'the file' : lineWith(text, target.nameRange)}`);
}

/** A line for each place, the name in brackets. */
export function checkReferences(recipe: MarkedRecipe): Assertion<string> {
  const { workspace, snapshot, offset } = asked(recipe);
  const found = references(snapshot, offset, readersIn(workspace));
  const lines = found.map(
    ({ uri, role, range }) => `${nameOf(uri)} ${role}: ${lineWith(textIn(workspace, uri), range)}`,
  );
  return expect(lines.join('\n'));
}

/** The text with the marked places in brackets, `=` before the one that declares. */
export function checkHighlights(recipe: MarkedRecipe): Assertion<string> {
  const { snapshot, offset } = asked(recipe);
  const found = highlights(snapshot, offset);
  const labelled = found.map(({ range, role }) => (role === 'declaration' ? { range, label: '=' } : { range }));
  return expect(drawRanges(textOf(snapshot.document), labelled));
}

/** All files after renaming, or why not. */
export function checkRename(recipe: MarkedRecipe, name: string): Assertion<string> {
  const { workspace, snapshot, offset } = asked(recipe);
  const before = renameable(snapshot, offset);
  const renamed = rename(snapshot, offset, name, readersIn(workspace));
  if (renamed.kind === 'refused') return expect(renamed.why);
  expect(before.kind).toBe('name');
  const files = recipe.files.map(({ uri, text }) => {
    const edits = renamed.files.find(file => file.uri === uri)?.edits ?? [];
    return `#-- ${nameOf(uri)}\n${withChanges(text, edits)}`;
  });
  return expect(files.join(''));
}

/** What is known of a file and of its users, as the protocol gives it. */
export function readersIn(workspace: Workspace): Readers {
  return uri => [uri, ...workspace.usersOf(uri)].flatMap(one => workspace.snapshot(one) ?? []);
}

function asked(recipe: MarkedRecipe) {
  const { cursor } = recipe;
  if (cursor === undefined) throw new Error('no `$0` in the recipe');
  const workspace = recipe.workspace();
  const snapshot = workspace.snapshot(cursor.uri);
  if (snapshot === undefined) throw new Error(`no file ${cursor.uri}`);
  return { workspace, snapshot, offset: cursor.offset };
}

function textIn(workspace: Workspace, uri: string): string {
  const document = workspace.documentOf(uri);
  return document === undefined ? '' : textOf(document);
}

function lineWith(text: string, range: Range): string {
  const drawn = drawRanges(text, [{ range }]);
  const from = drawn.lastIndexOf('\n', range.from) + 1;
  return drawn.slice(from, drawn.indexOf('\n', range.from)).trim();
}

function nameOf(uri: string): string {
  return uri.slice(uri.lastIndexOf('/') + 1);
}
