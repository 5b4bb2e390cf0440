// What is wrong with a recording before it is written: names that the recipe does not have, and values that the schema refuses, in
// the schema's own words.

import type { Finding } from '../../../schema/findings.ts';
import { nearest } from '../../../schema/nearest.ts';
import type { Path } from '../../../schema/place.ts';
import type { Recording, RecordingComplaint, RecordingPart } from '../../../schema/recording.ts';
import { type SectionName, sectionNames } from '../../../schema/section-names.ts';
import { readRecipe } from '../../recipe/recipe.ts';
import { namesIn } from '../../recipe/use.ts';
import { openDocument } from '../../syntax/document.ts';
import { findingMessage } from '../../words/finding.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { listAlone } from './item-text.ts';

export function complaintsOf(snapshot: Snapshot, recording: Recording): readonly RecordingComplaint[] {
  return [
    ...nameComplaints(snapshot, recording),
    ...contentComplaints(recording),
    ...valueComplaints(snapshot, recording),
  ];
}

function nameComplaints(snapshot: Snapshot, recording: Recording): readonly RecordingComplaint[] {
  if (recording.kind === 'batch') {
    return [
      ...missingName(snapshot, 'batch', ['batches'], recording.batch),
      ...(recording.add ?? []).flatMap(({ name }) => missingName(snapshot, 'add', ['adjusters', 'feeds'], name)),
    ];
  }
  const { batch, water } = recording.topUp ?? {};
  return [
    ...missingName(snapshot, 'planting', ['plantings'], recording.planting),
    ...missingName(snapshot, 'from', ['batches'], batch),
    ...missingName(snapshot, 'water', ['waters'], water),
  ];
}

/** Plantings and batches are the recipe's own: only they can be written to. */
function missingName(
  { scope, recipe }: Snapshot,
  about: RecordingPart,
  sections: readonly [SectionName, ...SectionName[]],
  name: string | undefined,
): readonly RecordingComplaint[] {
  const isOwn = about === 'planting' || about === 'batch';
  const names = isOwn ? [...recipe.sections[sections[0]].keys()] : namesIn(scope, sections);
  if (name === undefined || names.includes(name)) return [];
  const near = nearest(name, names);
  const kinds = sections.map(section => sectionNames[section]).join(' or ');
  return [{ about, says: `there is no ${kinds} named ${name}.${near === undefined ? '' : ` Did you mean ${near}?`}` }];
}

/** An entry that says nothing, or a top-up whose solution is not said. */
function contentComplaints(recording: Recording): readonly RecordingComplaint[] {
  if (recording.kind === 'batch') {
    const { add, pH, EC } = recording;
    return (add ?? []).length === 0 && pH === undefined && EC === undefined
      ? [{ about: 'entry', says: 'there is nothing to record: give a pH, an EC or what was added.' }]
      : [];
  }
  const { pH, EC, level, topUp, note } = recording;
  if ([pH, EC, level, topUp, note].every(part => part === undefined)) {
    return [{ about: 'entry', says: 'there is nothing to record: give a pH, an EC, a level, a top-up or a note.' }];
  }
  if (topUp === undefined || (topUp.batch === undefined) !== (topUp.water === undefined)) return [];
  return [{ about: 'from', says: 'a top-up comes from one batch or is one plain water.' }];
}

function valueComplaints({ recipe }: Snapshot, recording: Recording): readonly RecordingComplaint[] {
  const { notes } = readRecipe(openDocument(`recipe: 1\n${listAlone(recording)}`));
  const base: Path = recording.kind === 'planting' ? ['log', 0] : ['batches', recording.batch, 'readings', 0];
  return notes.flatMap(note =>
    base.every((key, index) => note.at.path[index] === key)
      ? [{ about: partOf(note, base), says: findingMessage(note, recipe.show) }]
      : [],
  );
}

function partOf({ at }: Finding, base: Path): RecordingPart {
  const [key, inner] = at.path.slice(base.length);
  if (key === 'top-up') return inner === 'batch' ? 'from' : inner === 'water' ? 'water' : 'volume';
  return parts.find(part => part === key) ?? 'entry';
}

const parts: readonly RecordingPart[] = ['planting', 'batch', 'on', 'pH', 'EC', 'level', 'note', 'add'];
