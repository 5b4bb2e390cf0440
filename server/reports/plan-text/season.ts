// What a whole plan asks for over time as lines: the tasks, a day and a task on each, and the supplies.

import { formatDate } from '../../../schema/date.ts';
import type { Season } from '../../plan/season.ts';
import { costsOf, type Supply } from '../../plan/supplies.ts';
import type { Task } from '../../plan/timeline.ts';
import { amountText, type Reader } from '../../words/amount.ts';
import { moneyText } from '../../words/season.ts';
import { figureText, type Lines, row } from './rows.ts';

export function tasksText({ tasks }: Season, reader: Reader): Lines {
  return tasks.length === 0 ? [] : ['Tasks', ...tasks.map(task => taskLine(task, reader))];
}

function taskLine({ date, until, what, perContainer }: Task, reader: Reader): string {
  const each = perContainer === undefined ? '' : `: ${amountText(perContainer, reader)} in each`;
  const wait = until === undefined ? '' : `, until ${formatDate(until)}`;
  return row(formatDate(date), `${what}${each}${wait}`);
}

export function suppliesText({ supplies }: Season, reader: Reader): Lines {
  if (supplies.size === 0) return [];
  const costs = costsOf(supplies.values());
  return [
    'Supplies',
    ...[...supplies].map(([name, supply]) => supplyLine(name, supply, reader)),
    ...(costs.length === 0 ? [] : [row('cost in all', `${costs.map(moneyText).join(' and ')}${openText(supplies)}`)]),
  ];
}

/** `green  120 mL: 1 package of 1 L, 18 EUR`. */
function supplyLine(name: string, { of, uses, packages, cost, firstPackageEnds }: Supply, reader: Reader): string {
  const holds = of.value.package;
  const packs =
    packages.kind === 'unknown' || holds === undefined
      ? []
      : [`${figureText(packages, reader)} × ${amountText(holds, reader)}`];
  const parts = [
    figureText(uses, reader),
    ...packs,
    ...(cost === undefined ? [] : [moneyText(cost)]),
    ...(firstPackageEnds === undefined ? [] : [`the first is not enough from ${formatDate(firstPackageEnds)}`]),
  ];
  return row(name, parts.join(', '));
}

/** Of how many supplies the cost is known, where it is not all. */
function openText(supplies: Season['supplies']): string {
  const priced = [...supplies.values()].filter(({ cost }) => cost !== undefined).length;
  return priced === supplies.size ? '' : `, for ${priced} of ${supplies.size}`;
}
