// A recording as one line of YAML: `{ on: 2027-03-01, planting: berry, pH: 6.2 }`.

import type { Recording } from '../../../schema/recording.ts';
import { writtenKey } from '../../syntax/write.ts';

export function itemText(recording: Recording): string {
  return flowMap(recording.kind === 'planting' ? logPairs(recording) : readingPairs(recording));
}

/** A file with nothing but the entry. */
export function listAlone(recording: Recording): string {
  const item = itemText(recording);
  return recording.kind === 'planting'
    ? `log:\n- ${item}\n`
    : `batches:\n  ${JSON.stringify(recording.batch)}:\n    readings:\n    - ${item}\n`;
}

type Pairs = readonly (readonly [string, string | undefined])[];

function logPairs({ on, planting, pH, EC, level, topUp, note }: Extract<Recording, { kind: 'planting' }>): Pairs {
  return [
    ['on', asText(on)],
    ['planting', asText(planting)],
    ['pH', asNumber(pH)],
    ['EC', asText(EC)],
    ['level', asText(level)],
    ['top-up', topUp && topUpText(topUp)],
    ['note', asText(note)],
  ];
}

function topUpText({ batch, water, volume }: NonNullable<Extract<Recording, { kind: 'planting' }>['topUp']>): string {
  return flowMap([
    ['batch', asText(batch)],
    ['water', asText(water)],
    ['volume', asText(volume)],
  ]);
}

function readingPairs({ add, pH, EC }: Extract<Recording, { kind: 'batch' }>): Pairs {
  const added = (add ?? []).map(({ name, amount }) => [writtenKey(name), asText(amount)] as const);
  return [
    ['add', added.length === 0 ? undefined : flowMap(added)],
    ['pH', asNumber(pH)],
    ['EC', asText(EC)],
  ];
}

function flowMap(pairs: Pairs): string {
  const written = pairs.flatMap(([key, text]) => (text === undefined ? [] : [`${key}: ${text}`]));
  return `{ ${written.join(', ')} }`;
}

/** A number as it is written; what is none is put in quotes, so that the schema says what it wants. */
function asNumber(text: string | undefined): string | undefined {
  const written = text?.trim();
  return written === undefined || /^\d+(?:\.\d+)?$/u.test(written) ? written : JSON.stringify(written);
}

/** A text as YAML, in quotes where it would be taken for something else. */
function asText(text: string | undefined): string | undefined {
  if (text === undefined) return undefined;
  const written = text.trim();
  // `12` and `true` would be no texts; a quantity and a date begin with a digit and are.
  const isOther = /^(?:[-+.]?[\d.][\d.eExXoOa-fA-F_+]*|true|false|null|~|yes|no|on|off)?$/iu.test(written);
  return isOther ? JSON.stringify(written) : writtenKey(written);
}
