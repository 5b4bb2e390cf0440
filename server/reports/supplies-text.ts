// What a plan uses, as a list to go shopping with.

import { type Day, formatDate } from '../../schema/date.ts';
import { numberOf } from '../plan/figure.ts';
import { seasonOf } from '../plan/season.ts';
import type { Supply } from '../plan/supplies.ts';
import { amountText, type Reader } from '../words/amount.ts';
import { cautionsFor } from '../words/cautions.ts';
import { moneyText } from '../words/season.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { missingText } from './plan-text/rows.ts';
import type { Block } from './print/page.ts';
import { caution, paragraph, table } from './print/page.ts';
import type { Paint } from './print/paint.ts';
import { printable } from './print/terminal.ts';
import { blockLines } from './print/text.ts';
import { adjusterOf, totalCosts } from './supplies-cost.ts';

export function suppliesText(snapshot: Snapshot, file: string, paint: Paint): string {
  const { plan, recipe } = snapshot;
  const supplies = [...seasonOf(plan).supplies.values()];
  const heading = paint.strong(printable(`Supplies: ${recipe.title ?? file}`));
  if (supplies.length === 0) return `${heading}\n  No batch uses a feed or an adjuster.\n`;
  const costs = totalCosts(supplies);
  const priced = supplies.filter(({ cost }) => cost !== undefined).length;
  const open = priced === supplies.length ? '' : `, for ${priced} of ${supplies.length} supplies`;
  const blocks = [
    supplyTable(supplies, recipe.show),
    ...(costs.length === 0 ? [] : [paragraph(`Together ${costs.map(moneyText).join(' and ')}${open}.`)]),
    ...supplies.flatMap(unknownOf),
    ...cautionsOf(supplies),
  ];
  return `${[heading, ...blocks.flatMap(blockLines)].map(line => line.trimEnd()).join('\n')}\n`;
}

function supplyTable(supplies: readonly Supply[], reader: Reader): Block {
  const columns = [
    { name: 'supply' },
    { name: 'uses', align: 'right' },
    { name: 'packages', align: 'right' },
    { name: 'cost', align: 'right' },
    { name: 'first package ends' },
  ] as const;
  return table(
    'What the plan uses',
    columns,
    supplies.map(supply => supplyRow(supply, reader)),
  );
}

function supplyRow({ of, uses, packages, cost, firstPackageEnds }: Supply, reader: Reader): readonly string[] {
  const pack = of.value.package;
  const count = numberOf(packages);
  const packText = pack === undefined ? 'size not written' : amountText(pack, reader);
  return [
    of.name,
    uses.kind === 'known' ? amountText(uses.quantity, reader) : 'not known',
    count === undefined ? packText : `${count} × ${packText}`,
    cost === undefined ? '' : moneyText(cost),
    endText(count, firstPackageEnds),
  ];
}

/** Without its days a plan does not tell when the first of several packages ends. */
function endText(count: number | undefined, ends: Day | undefined): string {
  if (ends !== undefined) return formatDate(ends);
  if (count === undefined) return '';
  return count > 1 ? 'not known' : 'lasts';
}

/** What is missing for a use that is not known. */
function unknownOf({ of, uses }: Supply): readonly Block[] {
  return uses.kind === 'known' ? [] : [paragraph(`${of.name} is not known: ${missingText(uses.wants)}.`)];
}

function cautionsOf(supplies: readonly Supply[]): readonly Block[] {
  return supplies
    .filter(({ kind }) => kind === 'adjuster')
    .map(supply => {
      const { hazards, sentences } = cautionsFor(adjusterOf(supply));
      return caution(supply.of.name, [...hazards.map(({ says }) => says), ...sentences]);
    });
}
