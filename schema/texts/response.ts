// A known effect of an adjuster in place of its composition: `-0.6 pH at 0.3 mL/L`.

import { invalid, type Parsed, read, shifted } from '../parsed.ts';
import { type AnyQuantity, parseQuantity } from '../quantity.ts';

export interface Response {
  /** By how much the pH moves; below zero for an acid. Never zero. */
  readonly pH: number;
  /** The amount per volume that moves it so. Above zero. */
  readonly at: AnyQuantity<'volume-per-volume' | 'mass-per-volume'>;
}

export function parseResponse(text: string): Parsed<Response> {
  const parts = /^(?<change>.*?)(?<joint>\s+(?:at|per|with|for)\s+|\s*@\s*)(?<rate>.*)$/u.exec(text);
  const { change = '', joint = '', rate = '' } = parts?.groups ?? {};
  if (parts === null) {
    return invalid(text, 0, text.length, 'a response says what moves the pH by how much, as in `-0.6 pH at 0.3 mL/L`');
  }
  if (joint.trim() !== 'at') {
    return invalid(text, change.length, change.length + joint.length, 'the amount follows the word `at`', ' at ');
  }
  const moved = parseQuantity(change, ['pH']);
  if (moved.kind === 'complaint') return moved;
  const { from, to } = moved.numberSlice;
  if (moved.value.value === 0) return invalid(text, from, to, 'a pH that does not move tells nothing');
  const at = parseQuantity(rate, ['volume-per-volume', 'mass-per-volume'], { aboveZero: true });
  if (at.kind === 'complaint') return shifted(at, change.length + joint.length);
  return read({ pH: moved.value.value, at: at.value });
}
