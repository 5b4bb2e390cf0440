// How much of a batch is mixed: a volume, or `as needed` for the fills that it serves.

import { nearest } from '../nearest.ts';
import { invalid, type Parsed, read } from '../parsed.ts';
import { parseQuantity, type Quantity } from '../quantity.ts';

export type BatchVolume =
  | { readonly kind: 'volume'; readonly volume: Quantity<'volume'> }
  /** The sum of the fills that the batch serves, plus spare. */
  | { readonly kind: 'as-needed' };

export function parseBatchVolume(text: string): Parsed<BatchVolume> {
  const written = text.trim().replace(/\s+/gu, ' ');
  if (written === 'as needed') return read({ kind: 'as-needed' });
  if (written !== '' && !/\d|[½¼¾⅓⅔⅛]/u.test(written)) {
    const from = text.length - text.trimStart().length;
    const near = nearest(written, ['as needed', 'as-needed', 'needed']);
    const why = 'a batch has a volume such as `20 L`, or is mixed `as needed`';
    return invalid(text, from, text.trimEnd().length, why, near === undefined ? undefined : 'as needed');
  }
  const volume = parseQuantity(text, ['volume'], { aboveZero: true });
  return volume.kind === 'complaint' ? volume : read({ kind: 'volume', volume: volume.value });
}
