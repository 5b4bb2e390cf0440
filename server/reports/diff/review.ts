// What a change to recipes does: what is computed before and after, why, and which findings come and go. A value; the printers beside
// this file decide how it looks.

import type { Rename } from '../../plan/change.ts';
import { changesBetween } from '../../plan/change.ts';
import type { Fact, FactGroup } from '../../plan/fact.ts';
import { factsOf } from '../../plan/facts.ts';
import type { ChangedPlace } from '../../plan/written.ts';
import { textOf } from '../../syntax/document.ts';
import { cautionsFor } from '../../words/cautions.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { type Cause, causeOf, type Sided } from './causes.ts';
import { type FindingChanges, findingChanges, findingsIn } from './finding-changes.ts';
import { type Shown, shownChange } from './shown.ts';

export interface Review {
  /** The two sides as the reader named them. */
  readonly before: string;
  readonly after: string;
  readonly files: readonly FileReview[];
  /** Recipes that are the same on both sides, with all that they use. */
  readonly untouched: number;
}

export interface FileReview {
  /** The new name where there is one. */
  readonly file: string;
  /** The old name, where it is another one. */
  readonly was: string | undefined;
  /** `unread`: one side could not be read, so nothing is compared. */
  readonly state: 'compared' | 'added' | 'removed' | 'unread';
  /** What a reader must know of the comparison, such as why a side could not be read. */
  readonly notes: readonly string[];
  readonly rows: readonly Row[];
  readonly causes: readonly Cause[];
  readonly renames: readonly Rename[];
  /** What changes nowhere that can be seen; of a file that is new or gone, all it comes to. */
  readonly unchanged: readonly Fact[];
  readonly findings: FindingChanges;
  readonly isTextChanged: boolean;
  /** To be said with the amounts of acid or base in the rows. */
  readonly cautions: readonly string[];
}

export interface Row extends Shown {
  readonly group: FactGroup;
  readonly name: string;
  readonly what: string;
  /** Numbers of causes, counted from 0. */
  readonly because: readonly number[];
}

/** One recipe on one side. */
export type Side =
  | (Sided & { readonly kind: 'recipe'; readonly file: string })
  | { readonly kind: 'absent' }
  | { readonly kind: 'unread'; readonly file: string; readonly says: string };

export interface Pair {
  readonly before: Side;
  readonly after: Side;
  /** The old name, where the recipe was moved. */
  readonly was?: string;
}

export function review(before: string, after: string, pairs: readonly Pair[], untouched = 0): Review {
  return { before, after, files: pairs.map(fileReview), untouched };
}

function fileReview({ before, after, was }: Pair): FileReview {
  const old = unreadable(before, 'before');
  const now = unreadable(after, 'after');
  const file = after.kind !== 'absent' ? after.file : before.kind !== 'absent' ? before.file : '';
  const names = { file, was };
  if (old !== undefined || now !== undefined) {
    return { ...empty, ...names, state: 'unread', notes: [old, now].flatMap(says => says ?? []), isTextChanged: true };
  }
  if (before.kind === 'recipe' && after.kind === 'recipe') return { ...names, ...compared(before, after) };
  const only = after.kind === 'recipe' ? after : before;
  if (only.kind !== 'recipe') return { ...empty, ...names, state: 'unread' };
  const { snapshot } = only;
  const own = findingsIn(snapshot, only.file);
  const isNew = after.kind === 'recipe';
  return {
    ...empty,
    ...names,
    state: isNew ? 'added' : 'removed',
    notes: hiddenBySyntax(snapshot, isNew ? 'after' : 'before'),
    unchanged: factsOf(snapshot.plan),
    findings: { ...empty.findings, appear: isNew ? own : [], disappear: isNew ? [] : own },
    isTextChanged: true,
  };
}

const empty = {
  notes: [],
  rows: [],
  causes: [],
  renames: [],
  unchanged: [],
  findings: { appear: [], change: [], disappear: [], stay: 0 },
  isTextChanged: false,
  cautions: [],
} as const satisfies Partial<FileReview>;

function compared(
  before: Side & Sided,
  after: Side & Sided & { readonly file: string },
): Omit<FileReview, 'file' | 'was'> {
  const { changes, renames, same } = changesBetween(before.snapshot.plan, after.snapshot.plan);
  const reader = after.snapshot.recipe.show;
  const causes: Cause[] = [];
  const numbers = new Map<string, number>();
  const numberOf = (place: ChangedPlace): number => {
    const key = JSON.stringify([place.side, place.path]);
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, causes.length);
    causes.push(causeOf(place, before, after));
    return causes.length - 1;
  };
  const rows: Row[] = [];
  const unseen: Fact[] = [];
  const cautions = new Set<string>();
  for (const change of changes) {
    const shown = shownChange(change, reader);
    if (shown === undefined) {
      unseen.push(change.fact);
      continue;
    }
    const { group, name, what, adjuster } = change.fact;
    rows.push({ group, name, what, ...shown, because: change.because.map(numberOf).sort((a, b) => a - b) });
    if (adjuster === undefined) continue;
    const { hazards, sentences } = cautionsFor(adjuster);
    for (const says of [...hazards.map(hazard => hazard.says), ...sentences]) cautions.add(says);
  }
  return {
    state: 'compared',
    notes: [...hiddenBySyntax(before.snapshot, 'before'), ...hiddenBySyntax(after.snapshot, 'after')],
    rows,
    causes,
    renames,
    unchanged: [...same, ...unseen],
    findings: findingChanges(findingsIn(before.snapshot, after.file), findingsIn(after.snapshot, after.file)),
    isTextChanged: textOf(before.snapshot.document) !== textOf(after.snapshot.document),
    cautions: [...cautions],
  };
}

/** Why a side cannot be compared at all; undefined where it can, or is not there. */
function unreadable(side: Side, which: 'before' | 'after'): string | undefined {
  if (side.kind === 'absent') return undefined;
  if (side.kind === 'unread') return `${which}: ${side.file} cannot be read: ${side.says}`;
  const reason = side.snapshot.findings.map(({ finding }) => wholeFile[finding.code]).find(says => says !== undefined);
  return reason === undefined ? undefined : `${which}: ${side.file} cannot be read: ${reason}`;
}

/** The findings after which nothing that is computed of a file would mean anything. */
const wholeFile: Readonly<Record<string, string>> = {
  'not-yaml': 'it is not a text file',
  'conflict-marker': 'it holds conflict markers of a merge',
  'file-too-large': 'it is too large',
  'version-unsupported': 'it is written in a version of the format that is not known here',
};

/** What broken lines hide is missing from the comparison, which must not look like a change. */
function hiddenBySyntax({ findings }: Snapshot, which: 'before' | 'after'): readonly string[] {
  const broken = findings.filter(({ finding: { code } }) => code === 'yaml-invalid' || code === 'tab-indent').length;
  if (broken === 0) return [];
  const places = broken === 1 ? 'one place' : `${broken} places`;
  return [`${which}: the text is not valid YAML in ${places}; what stands there counts as not written`];
}
