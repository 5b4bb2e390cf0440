// How far a container is filled at the start: `to net cup`, `5 mm into net cup`, or a level such as `12 cm`.

import { nearest } from '../nearest.ts';
import { type Complaint, invalid, type Parsed, read } from '../parsed.ts';
import { parseQuantity, type Quantity } from '../quantity.ts';

export type Fill =
  /** Just to the bottom of the net cup. */
  | { readonly kind: 'to-net-cup' }
  /** So far above the bottom of the net cup. */
  | { readonly kind: 'into-net-cup'; readonly depth: Quantity<'length'> }
  /** So far above the floor of the container. */
  | { readonly kind: 'level'; readonly level: Quantity<'length'> };

export function parseFill(text: string): Parsed<Fill> {
  const written = text.trim().replace(/\s+/gu, ' ');
  if (written === 'to net cup') return read({ kind: 'to-net-cup' });
  const into = /^(?<depth>.*?)(?<words>\s+into\s+net\s+cup)\s*$/u.exec(text);
  if (into !== null) {
    const depth = parseQuantity(into.groups?.depth ?? '', ['length']);
    return depth.kind === 'complaint' ? depth : read({ kind: 'into-net-cup', depth: depth.value });
  }
  return /^[\d½¼¾⅛⅜⅝⅞+\-.]/u.test(written) ? parseLevel(text) : otherWords(text, written);
}

function parseLevel(text: string): Parsed<Fill> {
  const phrase = /^(?<number>.*?[\d½¼¾⅛⅜⅝⅞]\s*[^\s\d]+)(?<words>\s+[^\d]*\S)\s*$/u.exec(text);
  const words = phrase?.groups?.words ?? '';
  if (/cup|net/iu.test(words)) {
    const from = phrase?.groups?.number?.length ?? 0;
    // A level below the cup's bottom leaves the plug dry, and the depth into the cup is what was meant far more often.
    const instead = /below|under|beneath/iu.test(words) ? undefined : ' into net cup';
    const why = 'a depth is written `into net cup`, counted from the bottom of the cup up';
    return invalid(text, from, from + words.length, why, instead);
  }
  const level = parseQuantity(text, ['length']);
  return level.kind === 'complaint' ? level : read({ kind: 'level', level: level.value });
}

function otherWords(text: string, written: string): Complaint {
  const from = text.indexOf(text.trim());
  const to = from + text.trim().length;
  const near = nearest(written, ['to net cup', 'to the net cup', 'to net-cup', 'net cup']);
  const why = 'a fill is `to net cup`, a depth such as `5 mm into net cup`, or a level such as `12 cm`';
  return invalid(text, from, to, why, near === undefined ? undefined : 'to net cup');
}
