// All that is known of one file at one moment: its text, its values, its plan and its findings. The one argument of every answer
// and report; nothing in it changes.

import type { Finding } from '../../schema/findings.ts';
import { checkPlan } from '../checks/checks.ts';
import { withoutEchoes } from '../checks/echoes.ts';
import { lazily } from '../plan/lazy.ts';
import { memo } from '../plan/memo.ts';
import { type Plan, planOf } from '../plan/plan.ts';
import type { Reading, Recipe } from '../recipe/recipe.ts';
import type { Scope, Used } from '../recipe/use.ts';
import type { Document } from '../syntax/document.ts';
import { type Located, locate, locateNotes, withoutBrokenKeys } from './located.ts';

export interface Snapshot {
  readonly uri: string;
  readonly document: Document;
  readonly recipe: Recipe;
  readonly scope: Scope;
  readonly plan: Plan;
  /** In the order of the text. */
  readonly findings: readonly Located[];
  /** The documents of this and of used files, as far as they are known. */
  readonly documentOf: (uri: string) => Document | undefined;
}

const plans = memo(planOf);
const checks = memo(checkPlan);

export function takeSnapshot(
  uri: string,
  document: Document,
  reading: Reading,
  scope: Scope,
  used: Used,
  documentOf: (uri: string) => Document | undefined,
): Snapshot {
  const place = (finding: Finding): Located => locate(document, finding);
  // Many questions are about names and texts alone: what has to be computed is computed for those that ask for it.
  return lazily(
    { plan: () => plans(scope), findings: findAll },
    { uri, document, recipe: reading.recipe, scope, documentOf },
  );

  function findAll(): readonly Located[] {
    const syntax = locateNotes(document);
    const unread = [...syntax.map(({ finding }) => finding), ...reading.notes, ...used.findings];
    return [
      ...syntax,
      ...withoutBrokenKeys(document, syntax, reading.notes.map(place)),
      ...[...used.findings, ...withoutEchoes(unread, checks(plans(scope)))].map(place),
    ].sort((a, b) => a.range.from - b.range.from || a.range.to - b.range.to);
  }
}
