// A review in one sentence, the words for what it is about, and whether anything changed at all: the same in every print.

import { pathText } from '../../words/figure.ts';
import type { FileReview, Review, Row } from './review.ts';

export interface Counts {
  readonly changed: number;
  readonly unchanged: number;
  readonly appear: number;
  readonly change: number;
  readonly disappear: number;
  readonly added: number;
  readonly removed: number;
  readonly unread: number;
}

export function countsOf({ files }: Review): Counts {
  const sum = (count: (file: FileReview) => number): number => files.reduce((total, file) => total + count(file), 0);
  const inState = (state: FileReview['state']): number => files.filter(file => file.state === state).length;
  return {
    changed: sum(({ rows }) => rows.length),
    unchanged: sum(({ state, unchanged }) => (state === 'compared' ? unchanged.length : 0)),
    appear: sum(({ findings }) => findings.appear.length),
    change: sum(({ findings }) => findings.change.length),
    disappear: sum(({ findings }) => findings.disappear.length),
    added: inState('added'),
    removed: inState('removed'),
    unread: inState('unread'),
  };
}

/** Whether a reader would see any difference: in a value, a finding, or a recipe that is there on one side only. */
export function isChanged(review: Review): boolean {
  const { changed, appear, change, disappear, added, removed, unread } = countsOf(review);
  return changed + appear + change + disappear + added + removed + unread > 0;
}

/** `6 values change, 121 stay the same; 1 finding appears.` */
export function headline(review: Review): string {
  const counts = countsOf(review);
  const findings = [
    clause(counts.appear, 'finding appears', 'findings appear'),
    clause(counts.change, 'finding changes', 'findings change'),
    clause(counts.disappear, 'finding disappears', 'findings disappear'),
  ].filter(part => part !== '');
  const recipes = [
    clause(counts.added, 'recipe is new', 'recipes are new'),
    clause(counts.removed, 'recipe is gone', 'recipes are gone'),
    clause(counts.unread, 'recipe cannot be compared', 'recipes cannot be compared'),
    clause(review.untouched, 'recipe is untouched', 'recipes are untouched'),
  ].filter(part => part !== '');
  return `${[valuesClause(review, counts), findings.join(', '), recipes.join(', ')].filter(part => part !== '').join('; ')}.`;
}

/** Recipes that are on one side only have no values that change. */
function valuesClause({ files }: Review, { changed, unchanged }: Counts): string {
  if (files.length > 0 && files.every(({ state }) => state !== 'compared')) return '';
  const stay = unchanged === 0 ? '' : `, ${unchanged} stay${unchanged === 1 ? 's' : ''} the same`;
  if (changed === 0) return `No value changes${stay}`;
  return `${changed} ${changed === 1 ? 'value changes' : 'values change'}${stay}`;
}

function clause(count: number, one: string, many: string): string {
  return count === 0 ? '' : `${count} ${count === 1 ? one : many}`;
}

/** What is said of a recipe as a whole, a sentence each. */
export function remarksOn(file: FileReview): readonly string[] {
  const { state, was, isTextChanged, rows, findings, renames, notes, unchanged } = file;
  const values = `${unchanged.length} ${unchanged.length === 1 ? 'value' : 'values'} computed`;
  const quiet = rows.length + findings.appear.length + findings.change.length + findings.disappear.length === 0;
  return [
    ...(was === undefined ? [] : [`It was ${was}.`]),
    ...(state === 'added' ? [`This recipe is new: ${values}.`] : []),
    ...(state === 'removed' ? [`This recipe is gone: ${values} before.`] : []),
    ...renames.map(({ group, before, after }) => `The ${group} ${before} is now called ${after}.`),
    ...(state === 'compared' && isTextChanged && quiet && renames.length === 0
      ? [
          unchanged.length === 0
            ? 'The text changed; nothing is computed in this file itself.'
            : 'The text changed; nothing that is computed from it did.',
        ]
      : []),
    ...notes.map(note => `${note.slice(0, 1).toUpperCase()}${note.slice(1)}.`),
  ];
}

/** Recipes of which there is something to say. */
export function toldFiles({ files }: Review): readonly FileReview[] {
  return files.filter(
    file =>
      file.state !== 'compared' ||
      file.rows.length > 0 ||
      file.isTextChanged ||
      file.was !== undefined ||
      file.findings.appear.length + file.findings.change.length + file.findings.disappear.length > 0,
  );
}

/** `batch opening`; a task is told with what it is about. */
export function ofWhat({ group, name }: Pick<Row, 'group' | 'name'>): string {
  return group === 'task' ? `tasks of ${name}` : `${group} ${name}`;
}

/** `error batch-too-small at batches › opening: …`. */
export function findingLine({ severity, code, path, message }: FileReview['findings']['appear'][number]): string {
  const at = path === '' ? '' : ` at ${pathText(path.split('/'))}`;
  return `${severity} ${code}${at}: ${message}`;
}

/** Where nothing is known, or nothing is, a dash says so. */
export function cell(text: string | undefined): string {
  return text ?? '—';
}

export const estimates = 'Computed values are estimates; labels and meters decide.';
