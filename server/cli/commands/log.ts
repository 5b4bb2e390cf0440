// `tidemark log`: writes down a reading or a top-up. It shows the entry, and with --write puts it into the file.

import { formatDate } from '../../../schema/date.ts';
import type { Recording, RecordingPart } from '../../../schema/recording.ts';
import { record } from '../../answers/record/record.ts';
import { replaceFile } from '../../host/replace-file.ts';
import { find } from '../../recipe/use.ts';
import { addedLines } from '../../reports/added-lines.ts';
import { textOf } from '../../syntax/document.ts';
import { cautionsFor, cautionText } from '../../words/cautions.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { LogOptions } from '../args-bench.ts';
import { openOne } from '../open-one.ts';
import { complain, type ExitCode, exit, type Io } from '../output.ts';

export async function log(asked: LogOptions & { readonly file: string }, io: Io): Promise<ExitCode> {
  const recording = recordingOf(asked, formatDate(io.today()));
  if (typeof recording === 'string') return refuse(io, recording);
  const opened = await openOne(asked, io);
  if (opened === undefined) return exit.trouble;
  const { snapshot, input } = opened;
  if (asked.write && input.fromStdin)
    return refuse(io, 'standard input cannot be written to; leave out --write to see the entry.');
  const recorded = record(snapshot, recording);
  if (recorded.kind === 'refused') {
    for (const { about, says } of recorded.complaints) complain(io, `${optionOf[about]}${says}`);
    return exit.trouble;
  }
  const { line, text } = addedLines(textOf(snapshot.document), recorded.change);
  for (const says of recorded.findings) complain(io, `note: ${says}`);
  for (const says of cautionsOf(snapshot, recording)) complain(io, says);
  if (!asked.write) {
    io.out.write(`${input.name}, line ${line}:\n${text}`);
    return exit.clean;
  }
  const trouble = replaceFile(input.path, textOf(snapshot.document), recorded.text);
  if (trouble !== undefined) return refuse(io, `${input.name}: ${trouble}`);
  complain(io, `${input.name}: line ${line} written.`);
  return exit.clean;
}

/** What to mind with every acid and base whose amount is written down. */
function cautionsOf({ scope }: Snapshot, recording: Recording): readonly string[] {
  const added = recording.kind === 'batch' ? (recording.add ?? []) : [];
  return added.flatMap(({ name }) => {
    const adjuster = find(scope, 'adjusters', name);
    return adjuster === undefined ? [] : [`caution with ${name}: ${cautionText(cautionsFor(adjuster.value))}`];
  });
}

/** What is to be recorded, or why the options do not fit together. */
function recordingOf(asked: LogOptions, today: string): Recording | string {
  const { planting, batch, pH, EC, level, note, topUp: volume, from, water, on } = asked;
  if (planting !== undefined && batch !== undefined)
    return 'an entry is about a --planting or a --batch, not about both.';
  if (batch !== undefined) {
    const stray = Object.entries({ on, level, 'top-up': volume, from, water, note }).find(
      ([, value]) => value !== undefined,
    );
    if (stray !== undefined)
      return `--${stray[0]} belongs to a --planting; a reading of a batch has a pH, an EC and what was added.`;
    const add = asked.add.map(readAdded);
    const wrong = add.find(one => typeof one === 'string');
    if (wrong !== undefined) return `--add: \`${wrong}\` does not say what was added and how much, as in 'down 4 mL'.`;
    return { kind: 'batch', batch, pH, EC, add: add.filter(one => typeof one !== 'string') };
  }
  if (planting === undefined) return 'say what it is about: --planting NAME, or --batch NAME for a reading of a batch.';
  if (asked.add.length > 0) return '--add belongs to a --batch; write --top-up for what went into the containers.';
  if (volume === undefined && (from ?? water) !== undefined)
    return 'say how much went into each container: --top-up VOLUME.';
  if (volume !== undefined && (from ?? water) === undefined)
    return 'say what it was topped up with: --from BATCH or --water NAME.';
  const entry = { kind: 'planting', planting, on: on ?? today, pH, EC, level, note } as const;
  return volume === undefined ? entry : { ...entry, topUp: { volume, batch: from, water } };
}

/** `down 4 mL` as name and amount; the text itself where it is not both. */
function readAdded(written: string): { readonly name: string; readonly amount: string } | string {
  const found = /^\s*(?<name>[a-z][a-z0-9-]*)[\s=:]+(?<amount>\S.*)$/u.exec(written)?.groups;
  return found?.name === undefined || found.amount === undefined ? written : { name: found.name, amount: found.amount };
}

const optionOf: Readonly<Record<RecordingPart, string>> = {
  planting: '--planting: ',
  batch: '--batch: ',
  on: '--on: ',
  pH: '--pH: ',
  EC: '--EC: ',
  level: '--level: ',
  volume: '--top-up: ',
  from: '--from: ',
  water: '--water: ',
  note: '--note: ',
  add: '--add: ',
  entry: '',
};

function refuse(io: Io, says: string): ExitCode {
  complain(io, says);
  return exit.trouble;
}
