// A solution as lines: its pH now and after standing in air, its EC, each against the target, and what may cloud it. Apart from the
// batch, because a batch has it twice and a water has it too.

import type { Range } from '../../../schema/range.ts';
import { cloudingOf } from '../../plan/clouding.ts';
import { driftInAir, driftOf } from '../../plan/difference.ts';
import type { Figure } from '../../plan/figure.ts';
import type { SolutionFigures } from '../../plan/solution.ts';
import { type Standing, standing } from '../../plan/standing.ts';
import type { Target } from '../../recipe/seen.ts';
import { type Reader, rangeText } from '../../words/amount.ts';
import { cloudingText } from '../../words/clouding.ts';
import { figureText, type Lines, row } from './rows.ts';

export interface Described {
  readonly figures: SolutionFigures;
  readonly inAir: SolutionFigures;
}

export function solutionLines({ figures, inAir }: Described, target: Target | undefined, reader: Reader): Lines {
  if (figures.pH.kind === 'unknown') return [row('pH and EC', figureText(figures.pH, reader), 2)];
  return [
    row('pH', against(figures.pH, target?.pH, reader), 2),
    row('pH in air', against(inAir.pH, target?.pH, reader), 2),
    ...driftLines({ figures, inAir }),
    row('EC at 25 °C', against(figures.EC, target?.EC, reader), 2),
    ...cloudLines(figures),
  ];
}

/** A figure, and where it stands to a band. */
export function against<D extends Range['dimension']>(
  figure: Figure<D>,
  band: Range<D> | undefined,
  reader: Reader,
): string {
  const text = figureText(figure, reader);
  if (figure.kind === 'unknown' || band === undefined) return text;
  return `${text}, ${standings[standing(figure, band)]} the band ${rangeText(band, reader)}`;
}

const standings: Readonly<Record<Standing, string>> = { below: 'below', in: 'in', above: 'above' };

/** Why the pH does not stay, where a meter would show it. */
export function driftLines({ figures, inAir }: Described): Lines {
  const drift = driftOf(driftInAir({ inAir: inAir.pH, now: figures.pH }));
  if (drift === 'climbs') return [row('', 'as it stands, CO₂ leaves it and the pH climbs: measure again then', 2)];
  return drift === 'falls' ? [row('', 'as it stands, it takes up CO₂ and the pH falls: measure again then', 2)] : [];
}

export function cloudLines(figures: SolutionFigures): Lines {
  const cloud = cloudingText(cloudingOf(figures));
  return cloud === undefined ? [] : [row('clouding', cloud, 2)];
}
