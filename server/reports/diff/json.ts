// A review for programs, version 1: raw numbers with their unit, and the texts that people are shown beside them. The order is that of
// the recipes, and does not depend on the machine.

import type { DiffJson } from '../../../schema/diff-json.ts';
import { findingJson } from '../findings/json.ts';
import { countsOf } from './headline.ts';
import type { FileReview, Review, Row } from './review.ts';

export function reviewJson(review: Review): string {
  const json: DiffJson = {
    formatVersion: 1,
    before: review.before,
    after: review.after,
    counts: countsOf(review),
    untouched: review.untouched,
    files: review.files.map(fileJson),
  };
  return `${JSON.stringify(json, null, 2)}\n`;
}

function fileJson(file: FileReview): DiffJson['files'][number] {
  const { appear, change, disappear, stay } = file.findings;
  return {
    file: file.file,
    was: file.was ?? null,
    state: file.state,
    textChanged: file.isTextChanged,
    notes: [...file.notes],
    renames: [...file.renames],
    changes: file.rows.map(rowJson),
    causes: file.causes.map(({ path, side, file: name, line, before, after }) => ({
      path: [...path],
      side,
      file: name,
      line,
      before: before ?? null,
      after: after ?? null,
    })),
    unchanged: file.unchanged.length,
    findings: {
      appear: appear.map(findingJson),
      change: change.map(({ before, after }) => ({ before: findingJson(before), after: findingJson(after) })),
      disappear: disappear.map(findingJson),
      stay,
    },
    cautions: [...file.cautions],
  };
}

/** `because` counts into `causes`, from 0. */
function rowJson({
  group,
  name,
  what,
  raw,
  before,
  after,
  change,
  because,
}: Row): DiffJson['files'][number]['changes'][number] {
  return {
    group,
    name,
    what,
    ...raw,
    shown: { before: before ?? null, after: after ?? null, change: change ?? null },
    because: [...because],
  };
}
