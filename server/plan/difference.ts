// How far two pH are apart: a measured one from its prediction, and fresh solution from the same after standing in air.

import { type Figure, formula } from './figure.ts';

export const beyondPrediction = formula({
  id: 'pH-beyond-prediction',
  says: 'how far the meter is from what was predicted',
  statement: 'difference = measured − predicted',
  source: 'tidemark-design',
  takes: { measured: 'pH', predicted: 'pH' },
  gives: 'pH',
  evaluate: ({ measured, predicted }) => measured - predicted,
});

export const driftInAir = formula({
  id: 'pH-drift-in-air',
  says: 'how far the pH moves as the solution stands in air',
  statement: 'drift = pH in air − pH now',
  source: 'tidemark-design',
  takes: { inAir: 'pH', now: 'pH' },
  gives: 'pH',
  evaluate: ({ inAir, now }) => inAir - now,
});

/** Which way the pH goes as a solution stands in air; `holds` where no meter would show it. */
export type Drift = 'climbs' | 'falls' | 'holds' | 'unknown';

/** About what a hand meter shows. */
const felt_pH = 0.1;

export function driftOf(drift: Figure<'pH'>): Drift {
  if (drift.kind === 'unknown') return 'unknown';
  const { value } = drift.quantity;
  return Math.abs(value) < felt_pH ? 'holds' : value > 0 ? 'climbs' : 'falls';
}
