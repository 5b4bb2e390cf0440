// A batch larger than its mixing vessel is mixed in equal loads.

import type { Tool } from '../recipe/seen.ts';
import type { Sourced } from '../recipe/use.ts';
import { assumed, type Figure, formula, given, givenOr } from './figure.ts';

/** How many loads a batch takes; one where no vessel is named. */
export function loadsOf(volume: Figure<'volume'>, vessel: Sourced<Tool> | undefined): Figure<'number'> {
  if (vessel === undefined) return oneLoad;
  const at = (key: string) => {
    const path = [...vessel.path, key];
    const part = { kind: 'value' } as const;
    return vessel.file === undefined ? { path, part } : { file: vessel.file, path, part };
  };
  const holds = givenOr(vessel.value.holds, at('holds'), `what ${vessel.name} holds`);
  const fill = vessel.value.fill === undefined ? usualFill : given(vessel.value.fill, at('fill'));
  return loads({ volume, holds, fill });
}

const oneLoad = assumed({ dimension: 'number', value: 1 }, 'one load, where no vessel is named', 'tidemark-design');

/** What is measured once, as in one load or one container. */
export const measuredOnce = assumed({ dimension: 'number', value: 1 }, 'measured by itself', 'tidemark-design');

/** Room to stir: a vessel is filled to 95 % where the recipe does not say otherwise. */
export const usualFill = assumed({ dimension: 'fraction', value: 0.95 }, 'room left to stir', 'tidemark-design');

export const loads = formula({
  id: 'loads',
  says: 'the number of equal loads',
  statement: 'loads = volume ÷ (holds × fill), rounded up',
  source: 'tidemark-design',
  takes: { volume: 'volume', holds: 'volume', fill: 'fraction' },
  gives: 'number',
  // Division noise must not cost a load: twelve litres fit twelve litres.
  evaluate: ({ volume, holds, fill }) => Math.max(1, Math.ceil(volume / (holds * fill) - 1e-9)),
});

export const perLoadVolume = formula({
  id: 'load-volume',
  says: 'the volume of one load',
  statement: 'load = volume ÷ loads',
  source: 'tidemark-design',
  takes: { volume: 'volume', loads: 'number' },
  gives: 'volume',
  evaluate: ({ volume, loads: count }) => volume / count,
});

export const perLoadDose = {
  volume: formula({
    id: 'load-dose-by-volume',
    says: 'the dose for one load',
    statement: 'dose of a load = dose ÷ loads',
    source: 'tidemark-design',
    takes: { dose: 'volume', loads: 'number' },
    gives: 'volume',
    evaluate: ({ dose, loads: count }) => dose / count,
  }),
  mass: formula({
    id: 'load-dose-by-mass',
    says: 'the dose for one load',
    statement: 'dose of a load = dose ÷ loads',
    source: 'tidemark-design',
    takes: { dose: 'mass', loads: 'number' },
    gives: 'mass',
    evaluate: ({ dose, loads: count }) => dose / count,
  }),
};
