// Keystrokes as a grower makes them: one letter or digit in and out again, at the end of a random word of one kind.

import type { Random } from './random.ts';

/** Where letters are typed. */
export const kinds = {
  comment: /# [^\n]*?(?=\n)/gu,
  number: /(?<=\d)(?= (?:mL|L|cm|mg|%|d|°C)\b)/gu,
  name: /(?<=water: |container: |target: )\S+?(?=[\s,}]|$)/gmu,
  key: /(?<=\n {4})[a-z-]+(?=:)/gu,
} as const;

export type Kind = keyof typeof kinds;

export interface Keystroke {
  readonly kind: Kind;
  readonly at: number;
  readonly letter: string;
}

/** Seeded keystrokes of each kind in turn. */
export function keystrokesIn(text: string, count: number, random: Random): readonly Keystroke[] {
  const places = Object.entries(kinds).map(([kind, pattern]) => ({
    kind: kind as Kind,
    ends: [...text.matchAll(pattern)].map(found => found.index + found[0].length),
  }));
  return Array.from({ length: count }, (_, index) => {
    const { kind, ends } = places[index % places.length] ?? { kind: 'comment', ends: [0] };
    return { kind, at: random.of(ends), letter: kind === 'number' ? '1' : 'x' };
  });
}
