// What can be done at a place: the fixes of the findings there, other ways to write what stands there, and all sure fixes of the
// file at once.

import { placeAt } from '../../syntax/cursor.ts';
import type { TextChange } from '../../syntax/document.ts';
import type { Range } from '../../syntax/tree.ts';
import type { Located } from '../../workspace/located.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { FileEdits } from '../navigate/rename.ts';
import { addEntryActions } from './add-entry.ts';
import { addMissingActions } from './add-missing.ts';
import { convertUnitActions } from './convert-unit.ts';
import { extractEntryActions } from './extract-entry.ts';
import { fixActions } from './fix.ts';
import { fixAllAction } from './fix-all.ts';
import { insertAdjustmentActions } from './insert-adjustment.ts';
import { moveEntryActions } from './move-entry.ts';
import { rewriteDoseActions } from './rewrite-dose.ts';
import { writeFormulationActions } from './write-formulation.ts';

export interface Action {
  readonly kind: 'fix' | 'rewrite' | 'fix-all';
  readonly title: string;
  readonly edits: readonly TextChange[];
  /** What it changes in other files. */
  readonly elsewhere?: readonly FileEdits[];
  /** The one to take when asked to "just fix it". */
  readonly preferred: boolean;
  /** The finding that it mends. */
  readonly mends?: Located;
  /** A name that it makes up, for its writer to change. */
  readonly names?: string;
}

/** The actions for a selection, or for a cursor where it is empty. */
export function actions(snapshot: Snapshot, at: Range): readonly Action[] {
  const cursor = placeAt(snapshot.document, at.from);
  const rewrites =
    cursor === undefined || cursor.on === 'blank'
      ? []
      : [
          ...rewriteDoseActions(snapshot, cursor),
          ...writeFormulationActions(snapshot, cursor),
          ...convertUnitActions(snapshot, cursor),
          ...insertAdjustmentActions(snapshot, cursor),
          ...addMissingActions(snapshot, cursor),
          ...moveEntryActions(snapshot, cursor),
        ];
  return [
    ...fixActions(snapshot, at),
    ...addEntryActions(snapshot, at),
    ...extractEntryActions(snapshot, at),
    ...rewrites,
    ...fixAllAction(snapshot),
  ];
}
