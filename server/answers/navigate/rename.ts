// Another name for an entry: in its own file and wherever other files refer to it, or the reason why not.

import type { Edit } from '../../../schema/edit.ts';
import { sectionNames } from '../../../schema/section-names.ts';
import { allReferences } from '../../recipe/names.ts';
import { isName } from '../../recipe/read.ts';
import { hasName, nameOfFile } from '../../recipe/use.ts';
import { type TextChange, textOf } from '../../syntax/document.ts';
import { textEdits } from '../../syntax/edit.ts';
import type { Range } from '../../syntax/tree.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { type Entity, entityAt, entityOf, type Occurrence, occurrencesIn } from './entity.ts';
import { filesOf, type Readers } from './references.ts';

export interface FileEdits {
  readonly uri: string;
  readonly edits: readonly TextChange[];
}

export type Renamed =
  | { readonly kind: 'renamed'; readonly files: readonly FileEdits[] }
  | { readonly kind: 'refused'; readonly why: string };

export type Renameable =
  | { readonly kind: 'name'; readonly range: Range; readonly name: string }
  | { readonly kind: 'refused'; readonly why: string };

/** Whether what stands at an offset can be renamed. */
export function renameable(snapshot: Snapshot, offset: number): Renameable {
  const found = entityAt(snapshot, offset);
  if (found === undefined) return { kind: 'refused', why: 'Only the names of entries can be changed.' };
  return { kind: 'name', range: found.range, name: found.entity.name };
}

export function rename(snapshot: Snapshot, offset: number, name: string, readers: Readers): Renamed {
  const found = entityAt(snapshot, offset);
  if (found === undefined) return { kind: 'refused', why: 'Only the names of entries can be changed.' };
  const { entity } = found;
  if (entity.name === name) return { kind: 'renamed', files: [] };
  if (!isName(name)) {
    return {
      kind: 'refused',
      why: `“${name}” cannot be a name: one begins with a small letter and goes on with small letters, digits and hyphens.`,
    };
  }
  const files = filesOf(snapshot, entity, readers);
  for (const file of files) {
    const why = clash(file, entity, name);
    if (why !== undefined) return { kind: 'refused', why };
  }
  const edits: FileEdits[] = [];
  for (const file of files) {
    const occurrences = occurrencesIn(file, entity);
    if (occurrences.some(occurrence => !isWrittenOut(file, occurrence, entity.name))) {
      const why = `${nameOfFile(file.uri)} writes “${entity.name}” through a YAML alias; write it out first.`;
      return { kind: 'refused', why };
    }
    const changes = textEdits(
      file.document,
      occurrences.map(occurrence => editFor(occurrence, entity.name, name)),
    );
    if (changes.length > 0) edits.push({ uri: file.uri, edits: changes });
  }
  return { kind: 'renamed', files: edits };
}

/** Why a name would mean something else in a file, or something else would come to mean it. */
function clash({ uri, scope, recipe }: Snapshot, { section, name, file }: Entity, wanted: string): string | undefined {
  if (hasName(scope, section, wanted)) {
    return `${nameOfFile(uri)} knows another “${wanted}” among its ${section}.`;
  }
  for (const { name: written, refers } of allReferences(recipe)) {
    if (written !== name) continue;
    const meant = entityOf(scope, refers, name);
    if (meant?.section !== section || meant.file !== file) continue;
    const other = refers.find(one => one !== section && hasName(scope, one, wanted));
    if (other !== undefined) {
      return `${nameOfFile(uri)} refers to it where the ${sectionNames[other]} “${wanted}” could be meant as well.`;
    }
  }
  return undefined;
}

/** A key or value that is an alias says the name without writing it. */
function isWrittenOut({ document }: Snapshot, { range }: Occurrence, name: string): boolean {
  return textOf(document).slice(range.from, range.to) === name;
}

function editFor({ path, part }: Occurrence, before: string, name: string): Edit {
  if (part.kind === 'key') return { kind: 'rename', path, key: name };
  // The slice leaves the quotes that may stand round it.
  return { kind: 'replace', at: { path, part: { kind: 'slice', from: 0, to: before.length } }, text: name };
}
