// A name for each finding that stays when lines move, so that a service can tell the findings of today from those of yesterday.

import type { FileReport } from './reported.ts';

/** For each finding of a report, in its order: what it is and where in the recipe, without lines and without wording. */
export function fingerprints({ fromRoot, findings }: FileReport): readonly string[] {
  const seen = new Map<string, number>();
  return findings.map(({ code, path }) => {
    const place = `${code}\n${fromRoot}\n${path}`;
    const nth = seen.get(place) ?? 0;
    seen.set(place, nth + 1);
    return hash(nth === 0 ? place : `${place}\n${nth}`);
  });
}

/** FNV-1a of 64 bits (Fowler, Noll, Vo), as 16 hexadecimal digits; signs beyond Latin-1 count as two bytes. */
export function hash(text: string): string {
  let value = 0xcbf29ce484222325n;
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    for (const byte of unit > 0xff ? [unit & 0xff, unit >> 8] : [unit])
      value = BigInt.asUintN(64, (value ^ BigInt(byte)) * 0x100000001b3n);
  }
  return value.toString(16).padStart(16, '0');
}
