// Versions of the format: brings the text of a recipe from an old one to the newest, a step a version, and changes only what it must.
// Version 1 is the first and the newest, so the table of steps is empty; the way along it is tried with another table.

import type { Edit } from '../../schema/edit.ts';
import { valueAt } from '../../schema/place.ts';
import { type Document, openDocument, textOf } from '../syntax/document.ts';
import { textEdits, withChanges } from '../syntax/edit.ts';
import { type Tree, treeAt } from '../syntax/tree.ts';

/** The version that this Tidemark reads. */
export const newestVersion = 1;

/** A step from one version to the next. */
export interface Migration {
  readonly from: number;
  readonly to: number;
  /** What it changes, as a sentence. */
  readonly says: string;
  /** All but the version itself, which is written by the way along the table. */
  edits(document: Document): readonly Edit[];
}

const migrations: readonly Migration[] = [];

export type Migrated =
  | { readonly kind: 'newest' }
  | { readonly kind: 'migrated'; readonly text: string; readonly from: number; readonly says: readonly string[] }
  /** Written for a later Tidemark. */
  | { readonly kind: 'later'; readonly version: number }
  /** `recipe:` is missing, or is no whole number above zero. */
  | { readonly kind: 'unversioned' };

export function migrate(document: Document, table = migrations, newest = newestVersion): Migrated {
  const from = versionOf(document);
  if (from === undefined) return { kind: 'unversioned' };
  if (from > newest) return { kind: 'later', version: from };
  if (from === newest) return { kind: 'newest' };
  const says: string[] = [];
  let at = document;
  for (let version = from; version < newest; ) {
    const step = table.find(one => one.from === version && one.to > version);
    if (step === undefined) throw new Error(`no way from version ${version} of the format`);
    const edits: Edit[] = [...step.edits(at), { kind: 'replace', at: valueAt(['recipe']), text: String(step.to) }];
    at = openDocument(withChanges(textOf(at), textEdits(at, edits)));
    says.push(step.says);
    version = step.to;
  }
  return { kind: 'migrated', text: textOf(at), from, says };
}

function versionOf(document: Document): number | undefined {
  const written = document.entries.map(({ tree }): Tree | undefined => treeAt(tree, ['recipe'])).find(Boolean);
  const version = written?.kind === 'scalar' ? written.value : undefined;
  return typeof version === 'number' && Number.isInteger(version) && version > 0 ? version : undefined;
}
