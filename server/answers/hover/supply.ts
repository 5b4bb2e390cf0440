// What the whole plan uses of a feed or adjuster: amount, packages, cost, and the day on which the first package is used up.

import { formatDate } from '../../../schema/date.ts';
import type { Plan } from '../../plan/plan.ts';
import { seasonOf } from '../../plan/season.ts';
import type { Reader } from '../../words/amount.ts';
import { figureText, wantsText } from '../../words/figure.ts';
import { moneyText } from '../../words/season.ts';
import { lines } from './blocks.ts';

/** Undefined where the plan uses none of it, and where nothing is to be added to what is said above. */
export function supplyLine(name: string, plan: Plan, reader: Reader, said: string | undefined): string | undefined {
  const supply = seasonOf(plan).supplies.get(name);
  if (supply === undefined) return undefined;
  const { uses, packages, cost, firstPackageEnds } = supply;
  if (uses.kind === 'unknown') return `Over the plan: ${wantsText(uses.wants)}`;
  if (packages.kind === 'unknown' && said?.includes(figureText(uses, reader)) === true) return undefined;
  const count =
    packages.kind === 'known'
      ? `, ${figureText(packages, reader)} ${isOne(packages.quantity.value) ? 'package' : 'packages'}`
      : '';
  return lines(
    `Over the plan: ${figureText(uses, reader)}${count}${cost === undefined ? '' : `, ${moneyText(cost)}`}.`,
    firstPackageEnds === undefined ? undefined : `The first package is used up on ${formatDate(firstPackageEnds)}.`,
  );
}

function isOne(count: number): boolean {
  return count === 1;
}
