// Writes a reading or a top-up into a recipe: the smallest edit that adds one entry, after the entry has been read by the schema as
// the file will be, and after the edit has been seen to say nothing else. The command line and the editor both record through here.

import { parseDate } from '../../../schema/date.ts';
import type { Edit } from '../../../schema/edit.ts';
import type { Path } from '../../../schema/place.ts';
import type { Recording, RecordingComplaint } from '../../../schema/recording.ts';
import { equal } from '../../recipe/equal.ts';
import { type Recipe, readRecipe } from '../../recipe/recipe.ts';
import { type Document, openDocument, type TextChange, textOf } from '../../syntax/document.ts';
import { textEdits, withChanges } from '../../syntax/edit.ts';
import { findingMessage } from '../../words/finding.ts';
import { type Snapshot, takeSnapshot } from '../../workspace/snapshot.ts';
import { complaintsOf } from './complaints.ts';
import { itemText, listAlone } from './item-text.ts';

export type Recorded =
  | {
      readonly kind: 'recorded';
      readonly change: TextChange;
      /** The file after it. */
      readonly text: string;
      /** What the findings say of the new entry, such as that it stands before an older one. */
      readonly findings: readonly string[];
    }
  | { readonly kind: 'refused'; readonly complaints: readonly [RecordingComplaint, ...RecordingComplaint[]] };

export function record(snapshot: Snapshot, recording: Recording): Recorded {
  const [first, ...others] = complaintsOf(snapshot, recording);
  if (first !== undefined) return { kind: 'refused', complaints: [first, ...others] };
  const list = listOf(recording);
  const place = placeByDay(snapshot.recipe.log, recording);
  return (
    (place === undefined ? undefined : recordAt(snapshot, recording, list, place)) ??
    recordAt(snapshot, recording, list) ??
    misfit(list, itemText(recording))
  );
}

/** Writes the entry before another one, or last; undefined where the text leaves no place for it there. */
function recordAt(snapshot: Snapshot, recording: Recording, list: Path, before?: number): Recorded | undefined {
  const append = { kind: 'append', to: list, text: itemText(recording) } as const;
  const edit: Edit = before === undefined ? append : { ...append, before };
  const [change, ...more] = textEdits(snapshot.document, [edit]);
  if (change === undefined || more.length > 0) return undefined;
  const text = withChanges(textOf(snapshot.document), [change]);
  const document = openDocument(text, snapshot.document.entries);
  const reading = readRecipe(document, snapshot.recipe);
  if (!saysOnly(snapshot.recipe, reading.recipe, recording, before)) return undefined;
  return { kind: 'recorded', change, text, findings: findingsOf(snapshot, document, reading, list, before) };
}

/** The number of the entry before which a log that is in order stays so; undefined where that is its end, or it is in none. */
function placeByDay(log: Recipe['log'], recording: Recording): number | undefined {
  const day = recording.kind === 'planting' ? parseDate(recording.on) : undefined;
  if (day?.kind !== 'read') return undefined;
  const days = log.map(entry => entry?.on);
  const isInOrder = days.every((on, at) => on !== undefined && (days[at - 1] ?? on) <= on);
  const place = days.findIndex(on => on !== undefined && day.value < on);
  return isInOrder && place !== -1 ? place : undefined;
}

function listOf(recording: Recording): Path {
  return recording.kind === 'planting' ? ['log'] : ['batches', recording.batch, 'readings'];
}

function misfit(list: Path, item: string): Recorded {
  const says = `the YAML of this file leaves no place for it under ${list.join(' › ')}; write there by hand: - ${item}`;
  return { kind: 'refused', complaints: [{ about: 'entry', says }] };
}

/** Whether the recipe after an edit is the one before with the new entry at its place in its list, and nothing else. */
function saysOnly(before: Recipe, after: Recipe, recording: Recording, place = before.log.length): boolean {
  const wanted = openDocument(`recipe: 1\n${listAlone(recording)}`);
  const alone = readRecipe(wanted).recipe;
  if (recording.kind === 'planting') {
    const log = before.log.toSpliced(place, 0, ...alone.log);
    return equal({ ...before, log }, after) && alone.log.length === 1;
  }
  const { batch } = recording;
  const own = before.sections.batches.get(batch);
  const added = alone.sections.batches.get(batch)?.readings ?? [];
  if (own === undefined || added.length !== 1) return false;
  const { batches } = after.sections;
  const now = batches.get(batch);
  const others = (of: Recipe) => [...of.sections.batches].filter(([name]) => name !== batch);
  return (
    equal({ ...own, readings: undefined }, { ...now, readings: undefined }) &&
    equal([...(own.readings ?? []), ...added], now?.readings) &&
    equal(others(before), others(after)) &&
    equal({ ...before, sections: { ...before.sections, batches } }, after)
  );
}

function findingsOf(
  { uri, scope, documentOf, recipe }: Snapshot,
  document: Document,
  reading: ReturnType<typeof readRecipe>,
  list: Path,
  place: number | undefined,
): readonly string[] {
  const used = { lenders: scope.lenders, findings: [], asked: [] };
  const after = takeSnapshot(uri, document, reading, { ...scope, recipe: reading.recipe }, used, documentOf);
  const lists = reading.recipe;
  const last =
    list.length === 1 ? lists.log.length - 1 : (lists.sections.batches.get(String(list[1]))?.readings?.length ?? 0) - 1;
  const at = [...list, place ?? last];
  return after.findings.flatMap(({ finding }) =>
    at.every((key, index) => finding.at.path[index] === key) ? [findingMessage(finding, recipe.show)] : [],
  );
}
